"""Answers of Open-Meteo (JSON), by day or by hour."""

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta
from typing import Any

from combwright.sources.days import Day, Read, gather
from combwright.sources.hours import Instant, Stretch, sun_from_radiation_h, to_days
from combwright.sources.json_text import number, parsed, part
from combwright.sources.problems import WeatherProblem
from combwright.sources.units import ours
from combwright.terms.errors import SourceError

ATTRIBUTION = "Weather data by Open-Meteo.com, CC BY 4.0"
# how we call them, and the names the service has used
_DAILY = {
    "t_max_c": ("temperature_2m_max",),
    "t_min_c": ("temperature_2m_min",),
    "rain_mm": ("precipitation_sum",),
    "sun_h": ("sunshine_duration",),
    "light": ("shortwave_radiation_sum",),
    "wind_m_s": ("wind_speed_10m_mean", "windspeed_10m_mean"),
}
_HOURLY = {
    "warm": ("temperature_2m",),
    "wind": ("wind_speed_10m", "windspeed_10m"),
    "cloud": ("cloud_cover", "cloudcover"),
    "rain": ("precipitation",),
    "sun": ("sunshine_duration",),
    "light": ("shortwave_radiation",),
}


def read_open_meteo(text: str, name: str) -> Read:
    """Read the days of an answer.

    Daily values are used where temperatures and rain are among them; else hours are summed up.
    Units are read from the answer. A null is a missing value.
    """
    data = parsed(text, name)
    if isinstance(data, list):
        if len(data) != 1:
            raise SourceError(
                f"The answer holds {len(data)} places.", where=name, remedy="Ask for one place."
            )
        data = data[0]
    if isinstance(data, dict) and data.get("error"):
        raise SourceError(f"The service says: {data.get('reason', 'no reason')}.", where=name)
    latitude = number(part(data, "latitude", name), name)
    if latitude is None:
        raise SourceError("The latitude is missing.", where=name)
    problems: list[WeatherProblem] = []
    daily = data.get("daily", {})
    if all(_series(data, "daily", names, name) for names in list(_DAILY.values())[:3]):
        days = _from_days(data, daily, latitude, name)
    else:
        days = _from_hours(data, latitude, problems, name)
    return gather(list(days), name, ATTRIBUTION, problems)


def _series(data: Any, block: str, names: Sequence[str], where: str) -> list[float | None]:  # noqa: ANN401
    """Give one series in our unit, empty where the answer does not hold it."""
    held = data.get(block)
    key = next((one for one in names if isinstance(held, dict) and one in held), None)
    if key is None:
        return []
    unit = str(part(data.get(f"{block}_units"), key, where))
    values, times = held[key], part(held, "time", where)
    if not isinstance(values, list) or len(values) != len(times):
        raise SourceError(f"“{key}” has not one value for each time.", where=where)
    return [ours(number(one, f"{where}, {key}"), unit, f"{where}, {key}") for one in values]


def _times(data: Any, block: str, where: str) -> list[datetime]:  # noqa: ANN401
    """Give the times in the place's own hours; none carries an offset."""
    offset = timedelta(seconds=number(data.get("utc_offset_seconds", 0), where) or 0)
    return [_time(one, offset, where) for one in data[block]["time"]]


def _time(said: object, offset: timedelta, where: str) -> datetime:
    try:
        if isinstance(said, int):
            return datetime.fromtimestamp(said, UTC).replace(tzinfo=None) + offset
        return datetime.fromisoformat(str(said)).replace(tzinfo=None)
    except (ValueError, OverflowError, OSError) as error:
        raise SourceError(f"“{said}” is no time.", where=where) from error


def _from_days(data: Any, daily: Any, latitude: float, where: str) -> Iterator[Day]:  # noqa: ANN401
    times = _times(data, "daily", where)
    columns = {
        quantity: _series(data, "daily", names, where) or [None] * len(daily["time"])
        for quantity, names in _DAILY.items()
    }
    wind = columns["wind_m_s"]
    if not any(one is not None for one in wind):
        wind = _mean_wind(data, times, where)
    for at, time in enumerate(times):
        sun, light = columns["sun_h"][at], columns["light"][at]
        if sun is None and light is not None:
            sun = sun_from_radiation_h(time.date(), latitude, light)
        warm, cold, rain = (columns[key][at] for key in ("t_max_c", "t_min_c", "rain_mm"))
        yield Day(time.date(), warm, cold, rain, sun, wind[at])


def _mean_wind(data: Any, days: list[datetime], where: str) -> list[float | None]:  # noqa: ANN401
    """Give the mean of the hourly wind, for answers whose daily part has the strongest only."""
    hourly = _series(data, "hourly", _HOURLY["wind"], where)
    times = _times(data, "hourly", where) if hourly else []
    means: list[float | None] = []
    for day in days:
        of_day = [
            value
            for time, value in zip(times, hourly, strict=True)
            if value is not None and time.date() == day.date()
        ]
        means.append(sum(of_day) / len(of_day) if of_day else None)
    return means


def _from_hours(
    data: Any,  # noqa: ANN401
    latitude: float,
    problems: list[WeatherProblem],
    where: str,
) -> Iterator[Day]:
    part(data, "hourly", where)
    columns = {key: _series(data, "hourly", names, where) for key, names in _HOURLY.items()}
    if not columns["warm"] or not columns["rain"]:
        raise SourceError(
            "The answer has neither daily nor hourly temperatures and rain.",
            where=where,
            remedy="Ask for temperature_2m and precipitation.",
        )
    times = _times(data, "hourly", where)
    nothing: list[float | None] = [None] * len(times)
    of = {key: values or nothing for key, values in columns.items()}
    moments = [
        Instant(time, warm, wind, None if cloud is None else cloud / 100)
        for time, warm, wind, cloud in zip(times, of["warm"], of["wind"], of["cloud"], strict=True)
    ]
    # sums and means are those of the hour before the time they stand at
    hour = timedelta(hours=1)
    steps = [
        Stretch(time - hour, time, rain, sun_h=sun, radiation_w_m2=light)
        for time, rain, sun, light in zip(times, of["rain"], of["sun"], of["light"], strict=True)
    ]
    return to_days(moments, steps, latitude, problems)

"""Point forecasts of MET Norway (Locationforecast 2.0, JSON)."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from typing import Any

from combwright.sources.days import Read, gather
from combwright.sources.hours import Instant, Stretch, to_days
from combwright.sources.json_text import number, parsed, part
from combwright.sources.problems import WeatherProblem
from combwright.terms.errors import SourceError

ATTRIBUTION = "Weather forecast from MET Norway, CC BY 4.0"
_SPANS = (("next_1_hours", 1), ("next_6_hours", 6))


def read_met_norway(text: str, name: str) -> Read:
    """Read the days of a forecast.

    Precipitation looks forward from its time. There is no sunshine in it: the clear share of the
    sky by day stands in. Days are those of the place's solar time, to the hour.
    """
    data = parsed(text, name)
    place = part(part(data, "geometry", name), "coordinates", name)
    series = part(part(data, "properties", name), "timeseries", name)
    if not isinstance(place, list) or len(place) < len(("lon", "lat")):
        raise SourceError("The place has no coordinates.", where=name)
    longitude, latitude = (number(one, name) or 0.0 for one in place[:2])
    ahead = timedelta(hours=round(longitude / 15))
    times = [_time(part(one, "time", name), name) + ahead for one in series]
    moments = [_moment(one, at, name) for one, at in zip(series, times, strict=True)]
    steps = list(_steps(series, times, name))
    problems: list[WeatherProblem] = []
    days = list(to_days(moments, steps, latitude, problems))
    return gather(days, name, ATTRIBUTION, problems)


def _time(said: object, where: str) -> datetime:
    try:
        return datetime.fromisoformat(str(said)).astimezone(UTC).replace(tzinfo=None)
    except ValueError as error:
        raise SourceError(f"“{said}” is no time.", where=where) from error


def _moment(entry: Any, at: datetime, where: str) -> Instant:  # noqa: ANN401
    details = part(part(part(entry, "data", where), "instant", where), "details", where)
    values = (
        number(details.get(key), where)
        for key in ("air_temperature", "wind_speed", "cloud_area_fraction")
    )
    warm, wind, cloud = values
    return Instant(at, warm, wind, None if cloud is None else cloud / 100)


def _steps(series: Any, times: list[datetime], where: str) -> Iterator[Stretch]:  # noqa: ANN401
    """Give what is said of the time ahead, as far as the next entry does not say it better."""
    ends = [*(late for _, late in pairwise(times)), None]
    for entry, at, following in zip(series, times, ends, strict=True):
        for key, hours in _SPANS:
            span = entry["data"].get(key)
            until = at + timedelta(hours=hours)
            if span is None or (following is not None and until > following):
                continue
            details = span.get("details", {})
            rain, warm, cold = (
                number(details.get(one), where)
                for one in (
                    "precipitation_amount",
                    "air_temperature_max",
                    "air_temperature_min",
                )
            )
            yield Stretch(at, until, rain, warm, cold)
            break

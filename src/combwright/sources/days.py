"""The one gate for days of weather: what is possible, what is missing, what follows on what."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise
from types import MappingProxyType

import numpy as np

from combwright.sources.problems import WeatherProblem
from combwright.terms.dated import dated
from combwright.terms.errors import SourceError
from combwright.terms.weather import DailyWeather
from combwright.weather.climate import Climate
from combwright.weather.months import calendar_days, smooth

QUANTITIES = ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")
NEEDED = ("t_max_c", "t_min_c", "rain_mm")
LIMITS = MappingProxyType(
    {
        "t_max_c": (-50.0, 55.0, "°C"),
        "t_min_c": (-60.0, 45.0, "°C"),
        "rain_mm": (0.0, 500.0, "mm"),
        "sun_h": (0.0, 24.0, "h"),
        "wind_m_s": (0.0, 60.0, "m/s"),
    }
)
WET_FROM_MM = 0.2


@dataclass(frozen=True, slots=True)
class Day:
    """One day as a source gives it; ``None`` where it says nothing."""

    on: date
    t_max_c: float | None = None
    t_min_c: float | None = None
    rain_mm: float | None = None
    sun_h: float | None = None
    wind_m_s: float | None = None
    line: int | None = None


@dataclass(frozen=True, slots=True)
class Read:
    """What could be read, in order of days, and all that could not.

    A day is in it when temperatures and rain are known; sunshine and wind may be unknown.
    """

    days: tuple[Day, ...]
    problems: tuple[WeatherProblem, ...]
    source: str
    attribution: str = ""

    def unknown(self, quantity: str) -> int:
        """How many days have no value of a quantity."""
        return sum(getattr(day, quantity) is None for day in self.days)


def gather(
    days: Iterable[Day],
    source: str,
    attribution: str = "",
    problems: Iterable[WeatherProblem] = (),
) -> Read:
    """Let the days through that are possible and complete, and report the others.

    Examples
    --------
    >>> read = gather([Day(date(2026, 5, 1), 9, 12, 0), Day(date(2026, 5, 3), 15, 7, 0)], "notes")
    >>> print(*read.problems, sep="; ")
    The highest temperature, 9 °C, is below the lowest, 12 °C (1 May 2026).

    """
    found: dict[date, Day] = {}
    said = list(problems)
    for day in days:
        wrong = list(_wrong(day))
        if not wrong and day.on in found:
            wrong = [
                WeatherProblem(f"{dated(day.on)} comes twice.", "The first is used.", day.line)
            ]
        said += wrong
        if not wrong:
            found[day.on] = day
    if not found:
        first = f" {said[0]}" if said else ""
        raise SourceError(f"No day of weather could be read.{first}", where=source)
    ordered = tuple(found[on] for on in sorted(found))
    return Read(ordered, (*said, *_gaps(ordered)), source, attribution)


def _wrong(day: Day) -> Iterator[WeatherProblem]:
    for quantity in QUANTITIES:
        value = getattr(day, quantity)
        low, high, unit = LIMITS[quantity]
        if value is None and quantity in NEEDED:
            yield WeatherProblem(
                f"{dated(day.on)} has no value, so the day is left out.", "", day.line, quantity
            )
        elif value is not None and not low <= value <= high:
            yield WeatherProblem(
                f"{value:g} {unit} is not possible, so {dated(day.on)} is left out.",
                f"It must lie between {low:g} and {high:g} {unit}.",
                day.line,
                quantity,
            )
    if day.t_max_c is not None and day.t_min_c is not None and day.t_max_c < day.t_min_c:
        yield WeatherProblem(
            f"The highest temperature, {day.t_max_c:g} °C, is below the lowest, "
            f"{day.t_min_c:g} °C ({dated(day.on)}).",
            "Are the columns swapped?",
            day.line,
        )


def _gaps(days: tuple[Day, ...]) -> Iterator[WeatherProblem]:
    for before, after in pairwise(days):
        missing = (after.on - before.on).days - 1
        if missing:
            first, last = before.on + timedelta(days=1), after.on - timedelta(days=1)
            span = dated(first) if missing == 1 else f"{dated(first)} to {dated(last)}"
            yield WeatherProblem(
                f"{span}: {missing} day{'s' * (missing > 1)} missing; none was made up."
            )


def runs(read: Read, usual: Climate | None = None) -> tuple[DailyWeather, ...]:
    """Give the stretches of consecutive days.

    The usual climate's sunshine and wind stand in where a day has none; without it such days are
    left out. Temperatures and rain are never made up.
    """
    filled = [day for day in (_filled(day, usual) for day in read.days) if day is not None]
    stretches: list[list[Day]] = []
    for day in filled:
        if stretches and day.on - stretches[-1][-1].on == timedelta(days=1):
            stretches[-1].append(day)
        else:
            stretches.append([day])
    return tuple(_weather(stretch) for stretch in stretches)


def _filled(day: Day, usual: Climate | None) -> Day | None:
    if day.sun_h is not None and day.wind_m_s is not None:
        return day
    if usual is None:
        return None
    at, wet = calendar_days(day.on, 1)[0], int((day.rain_mm or 0.0) >= WET_FROM_MM)
    sun = float(smooth(usual.sun_h)[wet, at]) if day.sun_h is None else day.sun_h
    wind = float(smooth(usual.wind_m_s)[at]) if day.wind_m_s is None else day.wind_m_s
    return Day(day.on, day.t_max_c, day.t_min_c, day.rain_mm, sun, wind, day.line)


def _weather(stretch: list[Day]) -> DailyWeather:
    columns = (
        np.array([[getattr(day, quantity) for day in stretch]], dtype=np.float64)
        for quantity in QUANTITIES
    )
    return DailyWeather(stretch[0].on, *columns)

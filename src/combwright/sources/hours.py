"""From hours, or longer steps, to days; a day that is not covered is reported, never guessed."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import pairwise
from typing import TypeVar

import numpy as np

from combwright.science.flight.sun import ANGSTROM_A, ANGSTROM_B, daylight_h, extraterrestrial_mj
from combwright.sources.days import Day
from combwright.sources.problems import WeatherProblem
from combwright.terms.dated import dated

LONGEST_GAP_H = 6.0  # between temperatures; a longer one may hide the warmest hour
LEAST_HOURS = 22.5  # of rain; the day on which clocks go forward has 23

Known = TypeVar("Known")


@dataclass(frozen=True, slots=True)
class Instant:
    """What is known at a time, in the place's own hours."""

    at: datetime
    temperature_c: float | None = None
    wind_m_s: float | None = None
    cloud: float | None = None


@dataclass(frozen=True, slots=True)
class Stretch:
    """What is known of the time between two moments."""

    begins: datetime
    ends: datetime
    rain_mm: float | None = None
    t_max_c: float | None = None
    t_min_c: float | None = None
    sun_h: float | None = None
    radiation_w_m2: float | None = None

    @property
    def hours(self) -> float:
        """How long it is."""
        return (self.ends - self.begins).total_seconds() / 3600


def to_days(
    moments: Iterable[Instant],
    steps: Iterable[Stretch],
    latitude_deg: float,
    problems: list[WeatherProblem],
) -> Iterator[Day]:
    """Sum up the days that are covered from midnight to midnight.

    The latitude turns radiation or cloud into sunshine; days not covered are added to ``problems``.
    """
    seen = _by_date(moments, lambda one: one.at)
    # a step belongs to the day of its middle
    spans = _by_date(steps, lambda one: one.begins + (one.ends - one.begins) / 2)
    for on in sorted(seen):
        if _covered(on, seen[on], spans.get(on, [])):
            yield _day(on, seen[on], spans[on], latitude_deg)
        else:
            problems.append(
                WeatherProblem(f"{dated(on)} is not covered from midnight to midnight; left out.")
            )


def sun_from_radiation_h(on: date, latitude_deg: float, radiation_mj: float) -> float:
    r"""Sunshine that goes with a day's global radiation.

    .. math:: n = N\, \mathrm{clip}\left(\frac{H / R_a - a}{b}, 0, 1\right)

    References
    ----------
    .. [1] The Ångström-Prescott formula turned round; :mod:`combwright.science.flight.sun`.

    Examples
    --------
    >>> sun_from_radiation_h(date(2025, 6, 21), 53.35, 5.0)
    0.0

    """
    day = min(on.timetuple().tm_yday, 365)
    outside = float(extraterrestrial_mj(day, latitude_deg))
    if outside <= 0:
        return 0.0
    share = (radiation_mj / outside - ANGSTROM_A.value) / ANGSTROM_B.value
    return float(np.clip(share, 0, 1) * daylight_h(day, latitude_deg))


def _by_date(items: Iterable[Known], when: Callable[[Known], datetime]) -> dict[date, list[Known]]:
    found: dict[date, list[Known]] = {}
    for one in items:
        found.setdefault(when(one).date(), []).append(one)
    return found


def _covered(on: date, moments: Sequence[Instant], steps: Sequence[Stretch]) -> bool:
    start = datetime.combine(on, datetime.min.time())
    known = [one.at for one in moments if one.temperature_c is not None]
    known += [at for one in steps if one.t_max_c is not None for at in (one.begins, one.ends)]
    times = [start, *sorted(known), start + timedelta(days=1)]
    widest = max(after - before for before, after in pairwise(times))
    rain = sum(one.hours for one in steps if one.rain_mm is not None)
    return widest <= timedelta(hours=LONGEST_GAP_H) and rain >= LEAST_HOURS


def _day(
    on: date, moments: Sequence[Instant], steps: Sequence[Stretch], latitude_deg: float
) -> Day:
    warm = [one.temperature_c for one in moments if one.temperature_c is not None]
    wind = [one.wind_m_s for one in moments if one.wind_m_s is not None]
    return Day(
        on,
        max([*warm, *(one.t_max_c for one in steps if one.t_max_c is not None)]),
        min([*warm, *(one.t_min_c for one in steps if one.t_min_c is not None)]),
        sum(one.rain_mm for one in steps if one.rain_mm is not None),
        _sun(on, moments, steps, latitude_deg),
        sum(wind) / len(wind) if wind else None,
    )


def _sun(
    on: date, moments: Sequence[Instant], steps: Sequence[Stretch], latitude_deg: float
) -> float | None:
    """Give the sunshine: as it is said, else from radiation, else from the cloud by day."""
    said = [(one.sun_h, one.hours) for one in steps if one.sun_h is not None]
    if sum(hours for _, hours in said) >= LEAST_HOURS:
        return sum(sun for sun, _ in said)
    light = [(one.radiation_w_m2, one.hours) for one in steps if one.radiation_w_m2 is not None]
    if sum(hours for _, hours in light) >= LEAST_HOURS:
        mj = sum(watts * hours * 3600 / 1e6 for watts, hours in light)
        return sun_from_radiation_h(on, latitude_deg, mj)
    return _sun_from_cloud(on, moments, latitude_deg)


def _sun_from_cloud(on: date, moments: Sequence[Instant], latitude_deg: float) -> float | None:
    """Give the daylight times the clear share of the sky (judgement), solar noon near 12 h."""
    possible = float(daylight_h(min(on.timetuple().tm_yday, 365), latitude_deg))
    clear = [
        1 - one.cloud
        for one in moments
        if one.cloud is not None and abs(one.at.hour + one.at.minute / 60 - 12) <= possible / 2
    ]
    return possible * sum(clear) / len(clear) if clear else None

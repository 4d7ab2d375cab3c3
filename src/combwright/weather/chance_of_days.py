"""The luck of the weather: random numbers by month, whatever period is asked for."""

from datetime import date, timedelta
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from combwright.terms.streams import stream
from combwright.weather.climate import Climate
from combwright.weather.month_spread import correlation

Floats = NDArray[np.float64]
LONGEST_MONTH = 31


class Chance(NamedTuple):
    """Random numbers of consecutive days."""

    occurrence: Floats  # uniform, [day, scenario]
    amount: Floats  # gamma of the month's shape, [day, scenario]
    residual: Floats  # normal, [quantity, day, scenario]
    wind: Floats  # normal, [day, scenario]
    month: (
        Floats  # normal, alike within a month, correlated as residuals, [quantity, day, scenario]
    )
    rain_month: Floats  # normal, alike within a month, [day, scenario]


def chance(first: date, days: int, scenarios: int, seed: int, place: Climate) -> Chance:
    """Draw the luck of some days.

    A month is always drawn whole, and scenario by scenario, so that neither the period nor the
    number of scenarios changes what a date gets.
    """
    root = np.asarray(np.linalg.cholesky(correlation(place)), dtype=np.float64)
    parts = [
        _month(
            year, month, slice(start, stop), scenarios, seed, place.amount_shape[month - 1], root
        )
        for year, month, start, stop in _months(first, days)
    ]
    if not parts:
        none = np.empty((0, scenarios))
        return Chance(
            none, none, np.empty((3, 0, scenarios)), none, np.empty((3, 0, scenarios)), none
        )
    return Chance(*(np.concatenate(each, axis=-2) for each in zip(*parts, strict=True)))


def _months(first: date, days: int) -> list[tuple[int, int, int, int]]:
    """Give year, month, first and last (not included) day of each month of a period."""
    found, day, left = [], first, days
    while left > 0:
        following = (day.replace(day=1) + timedelta(days=LONGEST_MONTH + 1)).replace(day=1)
        here = min(left, (following - day).days)
        found.append((day.year, day.month, day.day - 1, day.day - 1 + here))
        day, left = following, left - here
    return found


def _month(
    year: int, month: int, days: slice, scenarios: int, seed: int, shape: float, root: Floats
) -> Chance:
    def of(process: str) -> np.random.Generator:
        return stream(seed, "weather", process, year, month)

    size = (scenarios, LONGEST_MONTH)
    normal = of("residuals").standard_normal((*size, 3))[:, days]
    whole = of("months").standard_normal((scenarios, 4))
    count = normal.shape[1]
    alike = np.broadcast_to((whole[:, :3] @ root.T).T[:, None, :], (3, count, scenarios))
    return Chance(
        of("wet days").random(size)[:, days].T,
        of("rain").standard_gamma(shape, size)[:, days].T,
        normal.transpose(2, 1, 0),
        of("wind").standard_normal(size)[:, days].T,
        alike,
        np.broadcast_to(whole[:, 3], (count, scenarios)),
    )

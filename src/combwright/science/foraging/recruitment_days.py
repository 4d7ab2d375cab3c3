"""The 2011 model of Khoury and others, day by day."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from combwright.science.foraging.recruitment import (
    HALF_ECLOSION_BEES,
    LAYING,
    PUBLISHED,
    Recruitment,
    rates,
)
from combwright.terms.ranges import within

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Bees:
    """The adult bees of a colony on a day."""

    hive_bees: float
    foragers: float

    @property
    def total(self) -> float:
        """All adult bees."""
        return self.hive_bees + self.foragers


def trajectory(
    hive_bees: float,
    foragers: float,
    day: float,
    death_rate: float,
    model: Recruitment = PUBLISHED,
) -> Bees:
    """Hive bees and foragers on a later day.

    Parameters
    ----------
    hive_bees, foragers
        Numbers on day 0. [bees]
    day
        The day asked for. [days]
    death_rate
        Death of foragers. [per day]
    model
        The constants.

    Returns
    -------
    Bees
        Hive bees and foragers. [bees]

    References
    ----------
    .. [1] Khoury et al. 2011, integrated with LSODA (computed).

    Examples
    --------
    >>> bees = trajectory(16_000, 8_000, 200, 0.24)
    >>> round(bees.hive_bees), round(bees.foragers)
    (6774, 2083)

    """
    from scipy.integrate import solve_ivp

    start = within([hive_bees, foragers], 0, 1e6, "The number of bees", "bees")
    m = float(within(death_rate, 0.001, 10, "The death of foragers", "per day"))

    def change(_: float, bees: Floats) -> Floats:
        return np.asarray(rates(bees[0], bees[1], m, model))

    end = float(within(day, 0, 20_000, "The day", "days"))
    run = solve_ivp(change, (0.0, end), start, method="LSODA", rtol=1e-9, atol=1e-9)
    return Bees(float(run.y[0, -1]), float(run.y[1, -1]))


def days_until_below(
    bees: float, hive_bees: float, foragers: float, death_rate: float, within_days: int = 1000
) -> int | None:
    """First whole day on which a declining colony has fewer bees than asked.

    Parameters
    ----------
    bees
        The number to fall below. [bees]
    hive_bees, foragers
        Numbers on day 0. [bees]
    death_rate
        Death of foragers. [per day]
    within_days
        How long to look. [days]

    Returns
    -------
    int or None
        The day, or None if it is not reached. [days]

    References
    ----------
    .. [1] Khoury et al. 2011, integrated (computed).

    Examples
    --------
    >>> days_until_below(10_000, 16_000, 8_000, 0.40)
    24

    """
    low, high = 0, within_days
    if trajectory(hive_bees, foragers, high, death_rate).total >= bees:
        return None
    while high - low > 1:
        middle = (low + high) // 2
        if trajectory(hive_bees, foragers, middle, death_rate).total < bees:
            high = middle
        else:
            low = middle
    return high


def daily_steps(
    hive_bees: float,
    foragers: float,
    days: int,
    death_rate: float,
    *,
    laying: float = LAYING.value,
    half_eclosion_bees: float = HALF_ECLOSION_BEES.value,
) -> Bees:
    """Hive bees and foragers after whole-day steps, as the model is often taught.

    Parameters
    ----------
    hive_bees, foragers
        Numbers on day 0. [bees]
    days
        Steps to take. [days]
    death_rate
        Death of foragers. [per day]
    laying
        Laying rate. [eggs/day]
    half_eclosion_bees
        Bees at which half of the eggs become bees. [bees]

    Returns
    -------
    Bees
        Hive bees and foragers. [bees]

    References
    ----------
    .. [1] Khoury et al. 2011, Euler steps of one day, as in a university's coursework (read).

    Examples
    --------
    >>> bees = daily_steps(1, 1, 10, 0.4, laying=1000, half_eclosion_bees=80)
    >>> round(bees.hive_bees), round(bees.foragers)
    (5104, 1148)

    """
    model = Recruitment(laying=laying, half_eclosion_bees=half_eclosion_bees)
    hive, out = np.asarray(hive_bees, float), np.asarray(foragers, float)
    for _ in range(int(within(days, 0, 10_000, "The steps", "days"))):
        more_hive, more_out = rates(hive, out, death_rate, model)
        hive, out = hive + more_hive, out + more_out
    return Bees(float(hive), float(out))

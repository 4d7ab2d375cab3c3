"""A colony under the 2013 model of Khoury and others, day by day, with sealed brood as a delay."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from combwright.science.foraging import with_food as model
from combwright.science.foraging.recruitment import INHIBITION
from combwright.terms.ranges import within

STEPS_PER_DAY = 20


@dataclass(frozen=True, slots=True)
class ForagingDay:
    """The colony on the day asked for."""

    hive_bees: float
    foragers: float
    open_brood: float
    food_g: float


def _change(state: NDArray[np.float64], sealed: float, m: float) -> NDArray[np.float64]:
    """Rates of hive bees, foragers, open brood and food; ``sealed`` was sealed 12 days ago."""
    hive, out, brood, food = (float(part) for part in state)
    factor = model.food_factor(max(food, 0.0))
    started = hive * (
        model.RECRUITMENT.value
        + model.HUNGER_RECRUITMENT.value * (1 - factor)
        - INHIBITION.value * out / (hive + out)
    )
    seals = brood / model.OPEN_BROOD_DAYS.value
    eaten = model.ADULT_EATS.value * (out + hive) + model.BROOD_EATS.value * brood
    return np.array(
        [
            sealed - started,
            started - m * out,
            model.LAYING.value * factor * hive / (hive + model.HALF_CARE_BEES.value) - seals,
            model.GATHERED.value * out - eaten,
        ]
    )


def run(
    day: float,
    death_rate: float,
    *,
    hive_bees: float = 16_000.0,
    foragers: float = 8_000.0,
    open_brood: float = 0.0,
    food_g: float = 0.0,
) -> ForagingDay:
    r"""Hive bees, foragers, open brood and food on a later day.

    .. math::
       \dot B &= L s(f) \tfrac{H}{H + \nu} - \varphi B \\
       \dot H &= \varphi B(t - \tau) - H R, \quad \dot F = H R - m F \\
       \dot f &= c F - \gamma_A (F + H) - \gamma_B B \\
       R &= \alpha_{min} + \alpha_{max} (1 - s(f)) - \sigma F / (F + H)

    Parameters
    ----------
    day
        The day asked for. [days]
    death_rate
        Death of foragers :math:`m`. [per day]
    hive_bees, foragers, open_brood
        The colony on day 0, which has no sealed brood. [bees, cells]
    food_g
        Stored food on day 0. [g]

    Returns
    -------
    ForagingDay
        The colony on that day.

    Notes
    -----
    Runge-Kutta of order 4, 20 steps a day, in which the delayed brood between two steps is their
    mean. Food counts as none where the balance would take it below zero.

    References
    ----------
    .. [1] D. S. Khoury, A. B. Barron and M. R. Myerscough, PLoS ONE 8:e59084, 2013,
       doi:10.1371/journal.pone.0059084 (form from memory, values read second-hand).

    Examples
    --------
    >>> colony = run(100, 0.154)
    >>> round(colony.hive_bees, -1), round(colony.foragers, -1)
    (28310.0, 9930.0)

    """
    m = float(within(death_rate, 0.001, 2, "The death of foragers", "per day"))
    steps = round(float(within(day, 0, 3000, "The day", "days")) * STEPS_PER_DAY)
    start = within([hive_bees, foragers, open_brood, food_g], 0, 1e6, "The start")
    within(start[:2].sum(), 1, 1e6, "The number of adult bees", "bees")
    h, lag = 1 / STEPS_PER_DAY, round(model.SEALED_DAYS.value * STEPS_PER_DAY)
    seals = np.zeros(lag + steps + 2)  # brood sealed a day, from 12 days before the start
    state = start.copy()
    for step in range(steps):
        seals[lag + step] = state[2] / model.OPEN_BROOD_DAYS.value
        before, after = seals[step], seals[step + 1]
        middle = (before + after) / 2
        k1 = _change(state, before, m)
        k2 = _change(state + h / 2 * k1, middle, m)
        k3 = _change(state + h / 2 * k2, middle, m)
        k4 = _change(state + h * k3, after, m)
        state = state + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
    return ForagingDay(*(float(part) for part in state))

"""Where the fate of a colony changes in the 2013 model of Khoury and others."""

from collections.abc import Callable
from math import sqrt

from combwright.science.foraging.with_food import (
    ADULT_EATS,
    EATEN_PER_BEE_REARED_G,
    GATHERED,
    HALF_FOOD_G,
    critical_food_factor,
    food_needed,
)
from combwright.terms.ranges import within


def critical_store_g(death_rate: float) -> float:
    """Give the stored food below which a colony cannot last.

    Parameters
    ----------
    death_rate
        Death of foragers. [per day]

    Returns
    -------
    float
        Stored food. [g]

    References
    ----------
    .. [1] A. Fritzler, bachelor thesis, TUM, 2026 (read): 313 g at 0.154 per day.

    Examples
    --------
    >>> round(critical_store_g(0.154))
    313

    """
    factor = critical_food_factor(death_rate)
    return HALF_FOOD_G.value * sqrt(factor / max(1 - factor, 1e-12))


def _limit(need: Callable[[float], float], multiplier: float) -> float:
    from scipy.optimize import brentq

    gathered = GATHERED.value * float(within(multiplier, 0.2, 20, "The food multiplier"))
    return float(brentq(lambda m: need(m) - gathered, 0.002, 2.0))


def piling_limit(multiplier: float = 1.0) -> float:
    """Death rate of foragers above which food no longer piles up.

    Parameters
    ----------
    multiplier
        Factor on the food that a forager gathers. [-]

    Returns
    -------
    float
        Death rate. [per day]

    References
    ----------
    .. [1] Khoury et al. 2013; worked out here (computed).

    Examples
    --------
    >>> round(piling_limit(), 4)
    0.401

    """
    return _limit(lambda m: food_needed(m, 1.0), multiplier)


def life_limit(multiplier: float = 1.0) -> float:
    """Death rate of foragers above which no colony lasts.

    Parameters
    ----------
    multiplier
        Factor on the food that a forager gathers. [-]

    Returns
    -------
    float
        Death rate. [per day]

    References
    ----------
    .. [1] Khoury et al. 2013; worked out here (computed). The 2026 thesis: three times 0.154.

    Examples
    --------
    >>> round(life_limit(), 4)
    0.4624

    """
    return _limit(lambda m: food_needed(m, critical_food_factor(m)), multiplier)


def multiplier_limits(death_rate: float) -> tuple[float, float, float]:
    """Give the food multipliers at which a colony's fate changes.

    Parameters
    ----------
    death_rate
        Death of foragers. [per day]

    Returns
    -------
    tuple[float, float, float]
        Below the first, food stops piling up; below the second, no balance exists; below the
        third, a forager does not even feed itself and the bee that replaces it.

    References
    ----------
    .. [1] A. Fritzler, bachelor thesis, TUM, 2026 (read): 0.518, 0.415 and 0.319 at 0.154.

    Examples
    --------
    >>> [round(limit, 3) for limit in multiplier_limits(0.154)]
    [0.518, 0.415, 0.319]

    """
    least = ADULT_EATS.value + EATEN_PER_BEE_REARED_G * death_rate
    needs = (
        food_needed(death_rate, 1.0),
        food_needed(death_rate, critical_food_factor(death_rate)),
        least,
    )
    piles, lives, feeds = (need / GATHERED.value for need in needs)
    return piles, lives, feeds

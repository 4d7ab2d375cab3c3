"""Foraging with stored food and brood: the model of Khoury and others, 2013, as published.

Stored food slows recruitment and lets brood live; sealed brood is a delay. A toy model: it shows
three regimes (food piles up, a balance, death), it does not forecast a colony.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from combwright.science.foraging.recruitment import foragers_per_hive_bee
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Regime = Literal["food piles up", "balance", "dies"]

_CODE = "Khoury, Barron & Myerscough 2013, PLoS ONE 8:e59084; values read in a student program"
LAYING = Parameter(2000.0, "eggs/day", 1000.0, 3000.0, _CODE, "read")
OPEN_BROOD_DAYS = Parameter(9.0, "days", 8.0, 9.0, _CODE, "read")
SEALED_DAYS = Parameter(12.0, "days", 11.0, 13.0, _CODE, "read")
HALF_CARE_BEES = Parameter(5000.0, "hive bees", 1000.0, 10_000.0, _CODE, "read")
HALF_FOOD_G = Parameter(500.0, "g", 100.0, 2000.0, _CODE, "read")
GATHERED = Parameter(0.1, "g/forager/day", 0.02, 0.3, _CODE, "read")
ADULT_EATS = Parameter(0.007, "g/bee/day", 0.004, 0.011, _CODE, "read")
BROOD_EATS = Parameter(
    0.018, "g/open brood/day", 0.0066, 0.0326, _CODE + "; Russell 2013 uses 0.0326", "read"
)
RECRUITMENT = Parameter(0.25, "per day", 0.05, 1.0, _CODE, "read")
HUNGER_RECRUITMENT = Parameter(0.25, "per day more", 0.05, 1.0, _CODE, "read")
EATEN_PER_BEE_REARED_G = BROOD_EATS.value * OPEN_BROOD_DAYS.value


def food_factor(food_g: float) -> float:
    r"""Share of brood that stored food lets live, also how far food holds back recruitment.

    .. math:: s = \frac{f^2}{f^2 + b^2}

    Parameters
    ----------
    food_g
        Stored food :math:`f`. [g]

    Returns
    -------
    float
        0 without food, 1 with plenty.

    References
    ----------
    .. [1] D. S. Khoury, A. B. Barron and M. R. Myerscough, PLoS ONE 8:e59084, 2013,
       doi:10.1371/journal.pone.0059084 (form from memory, confirmed in a 2026 thesis by
       A. Fritzler, TUM, read).

    Examples
    --------
    >>> food_factor(500)
    0.5

    """
    return food_g**2 / (food_g**2 + HALF_FOOD_G.value**2)


def ratio_at(death_rate: float, factor: float) -> float:
    """Foragers per hive bee in balance when food stands at a factor.

    Parameters
    ----------
    death_rate
        Death of foragers. [per day]
    factor
        Food factor, 0 to 1. [-]

    Returns
    -------
    float
        Ratio. [-]

    References
    ----------
    .. [1] Khoury et al. 2013; the balance is worked out here (computed).

    Examples
    --------
    >>> round(ratio_at(0.154, 1.0), 4)
    0.3529

    """
    recruitment = RECRUITMENT.value + HUNGER_RECRUITMENT.value * (1 - factor)
    return float(foragers_per_hive_bee(death_rate, recruitment))


def food_needed(death_rate: float, factor: float) -> float:
    r"""Food each forager must bring to keep the stores level.

    .. math:: c^* = \gamma_A (1 + 1/J) + \frac{\gamma_B}{\varphi} m

    Parameters
    ----------
    death_rate
        Death of foragers :math:`m`. [per day]
    factor
        Food factor that sets the ratio :math:`J`. [-]

    Returns
    -------
    float
        Food. [g/forager/day]

    References
    ----------
    .. [1] Khoury et al. 2013; worked out here (computed).

    Examples
    --------
    >>> round(food_needed(0.154, 1.0) / GATHERED.value, 3)
    0.518

    """
    eaten = ADULT_EATS.value * (1 + 1 / ratio_at(death_rate, factor))
    return eaten + EATEN_PER_BEE_REARED_G * death_rate


def _hive_bees(death_rate: float, factor: float) -> float:
    grown = LAYING.value * factor / (death_rate * ratio_at(death_rate, factor))
    return grown - HALF_CARE_BEES.value


@dataclass(frozen=True, slots=True)
class FoodBalance:
    """Where a colony settles; where food piles up its store has no end and is not given."""

    regime: Regime
    hive_bees: float
    foragers: float
    open_brood: float
    food_g: float | None
    food_gain_g_per_day: float


def critical_food_factor(death_rate: float) -> float:
    """Food factor below which no colony lasts: the brood cared for no longer pays the dead.

    Parameters
    ----------
    death_rate
        Death of foragers. [per day]

    Returns
    -------
    float
        Factor, 0 to 1; 1 when even plenty of food does not save the colony.

    References
    ----------
    .. [1] Khoury et al. 2013; worked out here (computed).

    Examples
    --------
    >>> round(critical_food_factor(0.154), 4)
    0.2817

    """
    from scipy.optimize import brentq

    if _hive_bees(death_rate, 1.0) <= 0:
        return 1.0
    return float(brentq(lambda factor: _hive_bees(death_rate, factor), 1e-6, 1.0))


def food_balance(death_rate: float, multiplier: float = 1.0) -> FoodBalance:
    r"""Where the colony settles, by regime.

    .. math:: H = \frac{L s}{m J} - \nu, \qquad F = J H, \qquad B = m F / \varphi

    Parameters
    ----------
    death_rate
        Death of foragers :math:`m`. [per day]
    multiplier
        Factor on the food that a forager gathers. [-]

    Returns
    -------
    FoodBalance
        Numbers in balance, stored food, and its gain where it piles up.

    References
    ----------
    .. [1] Khoury et al. 2013 (three regimes from memory); closed form computed.

    Examples
    --------
    >>> round(food_balance(0.154).food_gain_g_per_day), food_balance(0.5).regime
    (541, 'dies')

    """
    from scipy.optimize import brentq

    m = float(within(death_rate, 0.001, 2, "The death of foragers", "per day"))
    gathered = GATHERED.value * float(within(multiplier, 0, 20, "The food multiplier"))
    lowest = critical_food_factor(m)
    if gathered >= food_needed(m, 1.0) and lowest < 1:
        return _settled("food piles up", m, 1.0, gathered)
    if lowest == 1 or gathered <= food_needed(m, lowest):
        return FoodBalance("dies", 0.0, 0.0, 0.0, 0.0, 0.0)
    factor = brentq(lambda factor: food_needed(m, factor) - gathered, lowest, 1.0)
    return _settled("balance", m, float(factor), gathered)


def _settled(regime: Regime, m: float, factor: float, gathered: float) -> FoodBalance:
    hive = _hive_bees(m, factor)
    foragers = ratio_at(m, factor) * hive
    gain = foragers * (gathered - food_needed(m, factor))
    food = HALF_FOOD_G.value * float(np.sqrt(factor / (1 - factor))) if factor < 1 else None
    return FoodBalance(
        regime=regime,
        hive_bees=hive,
        foragers=foragers,
        open_brood=m * foragers * OPEN_BROOD_DAYS.value,
        food_g=food,
        food_gain_g_per_day=gain if regime == "food piles up" else 0.0,
    )

"""Food: what bees and brood eat, what a year takes, what nectar costs to ripen.

Sources disagree, often because they count different things; they stand side by side here.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Floats = NDArray[np.float64]

_RORTAIS = "Rortais et al. 2005, Apidologie 36:71-83, doi:10.1051/apido:2004071"
_HRASSNIGG = "Hrassnigg & Crailsheim 2005, Apidologie 36:255-277, read second-hand"
_HARBO = "Harbo 1983, J. Econ. Entomol., broodless, Louisiana winter, abstract"

# Sugar by role, in mg a bee a day.
SUGAR_MG_PER_DAY: Mapping[str, Parameter] = {
    "brood-attending bee": Parameter(42.0, "mg/day", 34.0, 50.0, _RORTAIS, "from memory"),
    "wax-producing bee": Parameter(18.0, "mg/day", 18.0, 18.0, _RORTAIS, "from memory"),
    "nectar forager": Parameter(80.0, "mg/day", 32.0, 128.0, _RORTAIS, "from memory"),
    "pollen forager": Parameter(13.0, "mg/day", 10.4, 15.6, _RORTAIS, "from memory"),
    "winter bee": Parameter(
        8.8, "mg/day", 8.8, 8.8, _RORTAIS + ": 792 mg in 90 days", "from memory"
    ),
    "caged bee": Parameter(
        4.0, "mg/day", 4.0, 4.0, "Barker & Lehner 1974, bare survival, read second-hand", "read"
    ),
    "adult in models": Parameter(7.0, "mg/day", 7.0, 7.0, "Khoury 2013, read second-hand", "read"),
}
# What sources say a worker costs to rear, in mg; the larger ones count nurses and heat.
LARVA_FOOD_MG: Mapping[str, Parameter] = {
    "Rortais 2005": Parameter(59.4, "mg sugar", 59.4, 59.4, _RORTAIS, "read"),
    "Khoury 2013": Parameter(
        162.0, "mg food", 162.0, 162.0, "0.018 g a day for 9 days, read second-hand", "read"
    ),
    "Russell 2013": Parameter(
        293.4, "mg food", 293.4, 293.4, "0.0326 g a day, taken for 9 days", "computed"
    ),
    "popular": Parameter(200.0, "mg honey", 200.0, 200.0, "popular pages", "read"),
}
POLLEN_MG_PER_BEE = Parameter(156.0, "mg", 125.0, 187.5, _HRASSNIGG, "read")
NURSE_POLLEN_MG_PER_DAY = Parameter(6.5, "mg/day", 6.0, 12.0, _RORTAIS, "from memory")
HONEY_SUGAR = Parameter(0.80, "share", 0.76, 0.84, "honey holds over 80 % sugar at most", "read")
EVAPORATION_MJ_PER_KG = Parameter(
    2.42, "MJ/kg water", 2.38, 2.50, "latent heat near 35 °C", "computed"
)
HONEY_MJ_PER_KG = Parameter(13.0, "MJ/kg", 12.5, 13.5, "energy of honey sugar", "computed")

# A colony's year.
POLLEN_KG_PER_YEAR: Mapping[str, Parameter] = {
    "Seeley 2019": Parameter(20.0, "kg", 20.0, 20.0, "wild colony, read second-hand", "read"),
    "McLellan 1978": Parameter(30.0, "kg", 30.0, 30.0, "J. Appl. Ecol. 15, abstract", "read"),
    "Danish estimate": Parameter(32.5, "kg", 30.0, 35.0, "EU pollen-monitoring page", "read"),
}
HONEY_KG_PER_YEAR = Parameter(
    60.0, "kg", 48.0, 72.0, "Seeley 2019, read second-hand: 25 in winter, 35 in summer", "read"
)
WINTER_HONEY_KG = Parameter(
    25.0, "kg", 7.0, 25.0, "Ithaca (read second-hand); mild Sweden uses 7 kg in 180 days", "read"
)
SUMMER_HONEY_KG = Parameter(35.0, "kg", 28.0, 42.0, "Seeley 2019, read second-hand", "read")
COLONY_WINTER_G_PER_DAY = Parameter(
    39.0,
    "g/day",
    26.0,
    52.0,
    "Norrström et al. 2021, PLoS ONE 16:e0258398: weight lost at a mean of 3.5 °C, abstract",
    "read",
)
# Honey a bee a day in a broodless winter cluster, by its size: (bees, mg, one standard deviation).
HARBO_WINTER = ((4400, 6.7, 1.5), (8900, 4.5, 1.7), (34_000, 4.2, 0.7))


def pollen_kg(bees_reared: ArrayLike, mg_per_bee: float = POLLEN_MG_PER_BEE.value) -> Floats:
    """Pollen needed to rear so many bees.

    Parameters
    ----------
    bees_reared
        Workers brought to emergence. [bees]
    mg_per_bee
        Pollen for each, eaten mostly by its nurses; 125 to 187.5 in the literature. [mg]

    Returns
    -------
    Floats
        Pollen. [kg]

    References
    ----------
    .. [1] N. Hrassnigg and K. Crailsheim, Apidologie 36:255-277, 2005 (read second-hand).

    Examples
    --------
    >>> [float(pollen_kg(164_500, mg).round(1)) for mg in (125, 187.5)]
    [20.6, 30.8]

    """
    bees = within(bees_reared, 0, 1e6, "The number of bees reared", "bees")
    return np.asarray(bees * within(mg_per_bee, 1, 500, "Pollen per bee", "mg") / 1e6)


def larva_food_mg(grams_per_day: float, open_days: float) -> float:
    """Food that one brood cell takes, from a model's daily rate.

    Parameters
    ----------
    grams_per_day
        Food per open cell. [g/day]
    open_days
        Days that the model counts the cell as open. [days]

    Returns
    -------
    float
        Food. [mg]

    References
    ----------
    .. [1] Khoury et al. 2013: 0.018 g a day for 9 days (read second-hand); compare
       ``LARVA_FOOD_MG``.

    Examples
    --------
    >>> round(larva_food_mg(0.018, 9))
    162

    """
    rate = within(grams_per_day, 0, 1, "Food per cell", "g a day")
    return float(1000 * rate * within(open_days, 0, 12, "Open days", "days"))


def winter_honey_mg_per_bee(bees: ArrayLike) -> Floats:
    """Honey that a bee of a broodless winter cluster eats in a day; small clusters eat more.

    Parameters
    ----------
    bees
        Size of the cluster. [bees]

    Returns
    -------
    Floats
        Honey, interpolated on the logarithm of the size; held level beyond 4 400 and
        34 000 bees. [mg/bee/day]

    References
    ----------
    .. [1] J. R. Harbo, J. Econ. Entomol., 1983 (abstract read): 6.7, 4.5 and 4.2 mg at 4 400,
       8 900 and 34 000 bees in a Louisiana winter. Rortais 2005 gives 11 mg (from memory).

    Examples
    --------
    >>> winter_honey_mg_per_bee([4400, 34_000]).tolist()
    [6.7, 4.2]

    """
    size = within(bees, 100, 100_000, "The size of the cluster", "bees")
    sizes, honey, _ = (np.array(column) for column in zip(*HARBO_WINTER, strict=True))
    return np.asarray(np.interp(np.log(size), np.log(sizes), honey))


def winter_honey_g_per_day(bees: float) -> float:
    """Honey that a broodless winter cluster eats in a day.

    Parameters
    ----------
    bees
        Size of the cluster. [bees]

    Returns
    -------
    float
        Honey. [g/day]

    References
    ----------
    .. [1] Harbo 1983, see ``winter_honey_mg_per_bee``; compare ``COLONY_WINTER_G_PER_DAY``.

    Examples
    --------
    >>> round(winter_honey_g_per_day(8900))
    40

    """
    return float(winter_honey_mg_per_bee(bees)) * bees / 1000


@dataclass(frozen=True, slots=True)
class Ripening:
    """What it takes to make one kilogram of honey."""

    nectar_kg: float
    water_out_kg: float
    energy_mj: float
    energy_share: float


def ripening(nectar_sugar: float, honey_sugar: float = HONEY_SUGAR.value) -> Ripening:
    r"""Nectar, water and heat for one kilogram of honey.

    .. math:: n = s_h / s_n, \qquad w = n - 1, \qquad E = 2.42\, w, \qquad share = E / 13

    Parameters
    ----------
    nectar_sugar
        Sugar in the nectar by mass. [-]
    honey_sugar
        Sugar in the honey by mass. [-]

    Returns
    -------
    Ripening
        Nectar and water [kg], heat of evaporation [MJ], and that heat as a share of the honey's
        energy: an upper bound, as dry air does part of the work.

    References
    ----------
    .. [1] Mass balance (computed); D. Mitchell, J. R. Soc. Interface 16:20180879, 2019 (author's
       summary read): over 50 % at 20 % sugar, 30 kg of water for 10 kg of honey.

    Examples
    --------
    >>> at_20 = ripening(0.20)
    >>> at_20.nectar_kg, at_20.water_out_kg, round(at_20.energy_share, 2)
    (4.0, 3.0, 0.56)

    """
    remedy = "Give 40 % as 0.4."
    honey = float(within(honey_sugar, 0.7, 0.9, "The sugar fraction of honey", remedy=remedy))
    sugar = float(within(nectar_sugar, 0.05, honey, "The sugar fraction of nectar", remedy=remedy))
    nectar = honey / sugar
    energy = EVAPORATION_MJ_PER_KG.value * (nectar - 1)
    return Ripening(nectar, nectar - 1, energy, energy / HONEY_MJ_PER_KG.value)

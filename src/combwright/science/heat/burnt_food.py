"""Heat as food: what a cluster makes, and the honey or sugar that watts burn."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

HONEY_KJ_PER_G = Parameter(
    13.4, "kJ/g", 12.3, 13.9, "physical heat of honey at 18 % water: 0.82 x 16.3 kJ/g", "computed"
)
SUGAR_KJ_PER_G = Parameter(
    16.5, "kJ/g", 16.4, 17.0, "combustion of sucrose 16.48-16.49; labels use 17", "from memory"
)
OXYGEN_J_PER_ML = 21.1  # carbohydrate burnt, oxycalorific equivalent, from memory
SECONDS_A_DAY = 86_400.0


def cluster_watts(bees_kg: ArrayLike) -> NDArray[np.float64]:
    r"""Heat of a cluster on a night at 2 °C.

    .. math:: \dot V_{O_2} = 22.69\, m^{-0.479}

    with m in grams and oxygen in mL for each gram and hour, at 21.1 J/mL.

    Parameters
    ----------
    bees_kg
        Mass of the bees. [kg]

    Returns
    -------
    NDArray[np.float64]
        Heat. [W]

    Notes
    -----
    Measured from 5 g to 1.2 kg; above that it is extrapolated, to 4 kg at most.

    References
    ----------
    .. [1] E. E. Southwick, J. Comp. Physiol. B 156:143 (1985), doi 10.1007/BF00692937.
       Equation read, units from memory and checked for size.

    Examples
    --------
    >>> float(cluster_watts(1.2).round(2))
    5.35

    """
    remedy = "A kilogram is some 8 000 to 9 000 bees."
    grams = 1000 * within(bees_kg, 0.005, 4, "The mass of bees", "kg", remedy=remedy)
    return np.asarray(22.69 * grams**-0.479 * grams * OXYGEN_J_PER_ML / 3600)


def food_g_per_day(
    watts: ArrayLike, kj_per_g: ArrayLike = HONEY_KJ_PER_G.value
) -> NDArray[np.float64]:
    """Food that a heat takes in a day, honey unless another energy is given.

    Parameters
    ----------
    watts
        Heat. [W]
    kj_per_g
        Energy of the food: honey 13.4, sugar 16.5. [kJ/g]

    Returns
    -------
    NDArray[np.float64]
        Food. [g/d]

    References
    ----------
    .. [1] Energy of sucrose from memory, of honey computed from it.

    Examples
    --------
    >>> float(food_g_per_day(10).round(1))
    64.5

    """
    power = within(watts, 0, 500, "The heat", "W")
    return power * SECONDS_A_DAY / 1000 / _energy(kj_per_g)


def syrup_g_per_day(watts: ArrayLike, sugar_fraction: ArrayLike = 0.6) -> NDArray[np.float64]:
    """Syrup that a heat takes in a day.

    Parameters
    ----------
    watts
        Heat. [W]
    sugar_fraction
        Sugar in the syrup by mass. [-]

    Returns
    -------
    NDArray[np.float64]
        Syrup. [g/d]

    References
    ----------
    .. [1] Energy of sucrose, from memory. What drying the syrup costs is not counted.

    Examples
    --------
    >>> float(syrup_g_per_day(10).round())
    87.0

    """
    return food_g_per_day(watts, SUGAR_KJ_PER_G.value) / _fraction(sugar_fraction)


def watts_of_food(
    food_kg: ArrayLike,
    days: ArrayLike,
    *,
    sugar_fraction: ArrayLike = 0.8,
    kj_per_g: ArrayLike = 17.0,
) -> NDArray[np.float64]:
    """Heat that stores gave which were eaten over so many days.

    Parameters
    ----------
    food_kg
        Stores eaten. [kg]
    days
        In how many days. [d]
    sugar_fraction
        Sugar in them by mass. [-]
    kj_per_g
        Energy of the sugar; the food label's 17 unless another is given. [kJ/g]

    Returns
    -------
    NDArray[np.float64]
        Mean heat. [W]

    References
    ----------
    .. [1] A Czech project with hives on scales reckons 1 to 1.5 kg a month as 5 to 8 W. Read.

    Examples
    --------
    >>> float(watts_of_food(1.0, 30).round(2))
    5.25

    """
    food = within(food_kg, 0, 200, "The food", "kg")
    length = within(days, 0.01, 400, "The number of days", "d")
    energy = food * _fraction(sugar_fraction) * _energy(kj_per_g)
    return energy * 1e6 / (length * SECONDS_A_DAY)


def honey_for_degree_days_kg(
    loss_w_per_k: ArrayLike, kelvin_days: ArrayLike
) -> NDArray[np.float64]:
    """Honey that holds a loss against a sum of degrees below a temperature.

    Parameters
    ----------
    loss_w_per_k
        Conductance of what is held warm. [W/K]
    kelvin_days
        Sum over days of the degrees below the temperature held. [K d]

    Returns
    -------
    NDArray[np.float64]
        Honey. [kg]

    Notes
    -----
    With a whole box held at 18 °C this is an upper bound: clustered bees heat themselves, not
    the box.

    References
    ----------
    .. [1] Energy of honey, computed.

    Examples
    --------
    >>> float(honey_for_degree_days_kg(2.4, 2050.06).round(1))
    31.7

    """
    loss = within(loss_w_per_k, 0, 20, "The conductance", "W/K")
    total = within(kelvin_days, 0, 20_000, "The sum of degrees", "K d")
    return loss * total * SECONDS_A_DAY / (HONEY_KJ_PER_G.value * 1e6)


def bees_per_conductance(bees_kg: ArrayLike, loss_w_per_k: ArrayLike) -> NDArray[np.float64]:
    """Mass of bees for each W/K of their home; above about 2 they need not cluster.

    Parameters
    ----------
    bees_kg
        Mass of the bees. [kg]
    loss_w_per_k
        Conductance of the home. [W/K]

    Returns
    -------
    NDArray[np.float64]
        The ratio: below 0.8 in wooden hives, above 5 in trees. [kg K/W]

    References
    ----------
    .. [1] D. Mitchell, Int. J. Biometeorol. 60:629 (2016), doi 10.1007/s00484-015-1057-z.
       Abstract read.

    Examples
    --------
    >>> float(bees_per_conductance(1.6, 2.4).round(3))
    0.667

    """
    mass = within(bees_kg, 0, 10, "The mass of bees", "kg")
    return mass / within(loss_w_per_k, 0.01, 20, "The conductance", "W/K")


def _energy(kj_per_g: ArrayLike) -> NDArray[np.float64]:
    return within(kj_per_g, 5, 20, "The energy of the food", "kJ/g")


def _fraction(sugar_fraction: ArrayLike) -> NDArray[np.float64]:
    given = np.asarray(sugar_fraction, dtype=np.float64)
    looks = "Give percent as a share, such as 0.6 for 60 %." if (given > 1).any() else ""
    return within(given, 0.05, 1, "The sugar fraction", remedy=looks)

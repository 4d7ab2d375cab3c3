"""Heat as food: the honey or sugar that watts burn, and the bees for each of them."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.data_files import parameter
from combwright.terms.ranges import within

HONEY_KJ_PER_G = parameter("science/heat", "honey_kj_per_g")
SUGAR_KJ_PER_G = parameter("science/heat", "sugar_kj_per_g")
SECONDS_A_DAY = 86_400.0


def food_g_per_day(
    watts: ArrayLike, kj_per_g: ArrayLike = HONEY_KJ_PER_G.value
) -> NDArray[np.float64]:
    """Food that a heat takes in a day, honey unless another energy is given.

    ``kj_per_g``: energy of the food: honey 13.4, sugar 16.5 [kJ/g].

    References
    ----------
    .. [1] Energy of sucrose from memory, of honey computed from it.

    Examples
    --------
    >>> float(food_g_per_day(10).round(1))
    64.5

    """
    power = within(watts, 0, 500, "The heat", "W")
    energy = within(kj_per_g, 5, 20, "The energy of the food", "kJ/g")
    return power * SECONDS_A_DAY / 1000 / energy


def bees_per_conductance(bees_kg: ArrayLike, loss_w_per_k: ArrayLike) -> NDArray[np.float64]:
    """Mass of bees for each W/K of their home; above about 2 they need not cluster.

    It is below 0.8 in wooden hives, above 5 in trees. [kg K/W]

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

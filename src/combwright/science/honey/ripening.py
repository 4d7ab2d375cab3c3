"""From nectar or syrup to ripe honey: masses of sugar and water, and the heat it takes."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.honey.moisture import water_within
from combwright.science.syrup.fed_sugar import SUCROSE_HEAT_MJ_PER_KG
from combwright.science.syrup.strength import fraction_within
from combwright.science.syrup.water import evaporation_heat_mj_per_kg
from combwright.terms.ranges import within


def nectar_kg(
    honey_kg: ArrayLike, nectar_sugar: ArrayLike, honey_water_percent: ArrayLike = 18.0
) -> NDArray[np.float64]:
    r"""Nectar that a mass of honey is made of, by the balance of sugar.

    .. math:: m_n = m_h (1 - W / 100) / s_n

    Parameters
    ----------
    honey_kg
        Ripe honey. [kg]
    nectar_sugar
        Sugar in the nectar or syrup by mass, 0.05 to 0.8. [kg/kg]
    honey_water_percent
        Water in the honey, 11 to 30. [g per 100 g]

    Returns
    -------
    NDArray[np.float64]
        Nectar. [kg]

    Examples
    --------
    >>> float(nectar_kg(10, 0.2, 20))
    40.0

    """
    honey = within(honey_kg, 0.0, 1e6, "The honey", "kg")
    solids = 1.0 - water_within(honey_water_percent) / 100.0
    nectar = honey * solids / fraction_within(nectar_sugar, 0.05, 0.8)
    return np.asarray(nectar, dtype=np.float64)


def water_to_evaporate_kg(
    honey_kg: ArrayLike, nectar_sugar: ArrayLike, honey_water_percent: ArrayLike = 18.0
) -> NDArray[np.float64]:
    """Water that leaves while nectar becomes honey.

    Parameters
    ----------
    honey_kg, nectar_sugar, honey_water_percent
        As for `nectar_kg`. [kg, kg/kg, g per 100 g]

    Returns
    -------
    NDArray[np.float64]
        Water; below zero if the nectar holds less than the honey. [kg]

    Examples
    --------
    >>> float(water_to_evaporate_kg(10, 0.2, 20))
    30.0

    """
    nectar = nectar_kg(honey_kg, nectar_sugar, honey_water_percent)
    return np.asarray(nectar - np.asarray(honey_kg, dtype=np.float64), dtype=np.float64)


def ripening_heat_mj(water_kg: ArrayLike, temperature_c: ArrayLike = 34.0) -> NDArray[np.float64]:
    """Heat to evaporate water; an upper bound on what bees pay, since warm air helps.

    Parameters
    ----------
    water_kg
        Water that leaves. [kg]
    temperature_c
        Temperature at which it evaporates, 0 to 45. [°C]

    Returns
    -------
    NDArray[np.float64]
        Heat. [MJ]

    Examples
    --------
    >>> float(ripening_heat_mj(30).round(1))
    72.6

    """
    water = within(water_kg, 0.0, 1e6, "The water to evaporate", "kg")
    return np.asarray(water * evaporation_heat_mj_per_kg(temperature_c), dtype=np.float64)


def share_of_sugar_burned(
    nectar_sugar: ArrayLike, honey_water_percent: ArrayLike = 18.0
) -> NDArray[np.float64]:
    """Heat of ripening as a share of the heat in the sugar, at 34 °C; an upper bound.

    Parameters
    ----------
    nectar_sugar, honey_water_percent
        As for `nectar_kg`. [kg/kg, g per 100 g]

    Returns
    -------
    NDArray[np.float64]
        Share, 0 to 1.

    Examples
    --------
    >>> float(share_of_sugar_burned(0.2).round(3))
    0.555

    """
    water = np.maximum(water_to_evaporate_kg(1.0, nectar_sugar, honey_water_percent), 0.0)
    sugar = 1.0 - water_within(honey_water_percent) / 100.0
    share = ripening_heat_mj(water) / (sugar * SUCROSE_HEAT_MJ_PER_KG.value)
    return np.asarray(share, dtype=np.float64)


def water_given_off_kg(
    honey_kg: ArrayLike, honey_water_percent: ArrayLike = 18.0
) -> NDArray[np.float64]:
    r"""Water that leaves the hive as vapour when bees eat honey.

    .. math:: m = m_h \left(\frac{W}{100} + 0.6 \left(1 - \frac{W}{100}\right)\right)

    Parameters
    ----------
    honey_kg
        Honey eaten. [kg]
    honey_water_percent
        Water in it, 11 to 30. [g per 100 g]

    Returns
    -------
    NDArray[np.float64]
        Water: what the honey held, and what burning its hexoses makes. [kg]

    References
    ----------
    .. [1] C₆H₁₂O₆ + 6 O₂ = 6 CO₂ + 6 H₂O, molar masses 180.16 and 18.015 g/mol: 0.600; computed.

    Examples
    --------
    >>> float(water_given_off_kg(10).round(2))
    6.72

    """
    honey = within(honey_kg, 0.0, 1e6, "The honey", "kg")
    held = water_within(honey_water_percent) / 100.0
    return np.asarray(honey * (held + 0.6 * (1.0 - held)), dtype=np.float64)

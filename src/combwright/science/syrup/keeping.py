"""When syrup crystallises, freezes and spoils."""

from typing import Literal

import numpy as np
from numpy.polynomial.polynomial import polyval
from numpy.typing import ArrayLike, NDArray

from combwright.science.syrup.inverse import inverse
from combwright.science.syrup.strength import fraction_within
from combwright.terms.data_files import parameter
from combwright.terms.temperatures import celsius

VAVRINECZ = (64.447, 0.08222, 1.6169e-3, -1.558e-6, -4.63e-8)
NORRISH_SUCROSE = parameter("science/syrup", "norrish_sucrose")
MOLAR_RATIO = 342.3 / 18.015
MANY_YEASTS_ABOVE = parameter("science/syrup", "many_yeasts_above")
COMMON_YEASTS_ABOVE = parameter("science/syrup", "common_yeasts_above")
Keeps = Literal["days", "weeks", "months"]


def solubility_fraction(temperature_c: ArrayLike) -> NDArray[np.float64]:
    r"""Sugar in a saturated sucrose solution.

    .. math:: 100 w = 64.447 + 0.08222 t + 1.6169 \cdot 10^{-3} t^2
       - 1.558 \cdot 10^{-6} t^3 - 4.63 \cdot 10^{-8} t^4

    References
    ----------
    .. [1] G. Vavrinecz, 1962, as adopted by ICUMSA; from memory, confirmed within 0.12 % by a
       handbook page that was read.

    Examples
    --------
    >>> float(solubility_fraction(20).round(4))
    0.6672

    """
    t = celsius(temperature_c, "The temperature", 0.0, 100.0)
    return np.asarray(polyval(t, VAVRINECZ) / 100.0, dtype=np.float64)


def saturation_temperature_c(sugar_fraction: ArrayLike) -> NDArray[np.float64]:
    """Temperature below which syrup can crystallise: the inverse of `solubility_fraction`.

    ``sugar_fraction``: sugar by mass, 0.64447 to 0.82; weaker syrup freezes before it crystallises
    [kg/kg].

    Examples
    --------
    >>> float(saturation_temperature_c(2 / 3).round(1))
    19.6

    """
    w = fraction_within(sugar_fraction, VAVRINECZ[0] / 100.0, 0.82)
    return inverse(solubility_fraction, w, 0.0, 100.0)


def water_activity(sugar_fraction: ArrayLike) -> NDArray[np.float64]:
    r"""Water activity of a sucrose solution.

    .. math:: a_w = x_w \exp(-6.47 x_s^2)

    References
    ----------
    .. [1] R. S. Norrish, J. Food Technology 1, 25-39, 1966; the form read in Baeza and others
       2010, doi:10.1007/s11947-007-0052-8; the constant from memory.

    Examples
    --------
    >>> float(water_activity(0.65).round(3))
    0.865

    """
    w = fraction_within(sugar_fraction)
    water = 1.0 - w
    x_water = water / (water + w / MOLAR_RATIO)
    activity = x_water * np.exp(-NORRISH_SUCROSE.value * (1.0 - x_water) ** 2)
    return np.asarray(activity, dtype=np.float64)


def _ice_to_water_pressure(temperature_c: NDArray[np.float64]) -> NDArray[np.float64]:
    """Vapour pressure of ice over that of supercooled water, from the heat of fusion."""
    heat, heat_capacity, gas, melting = 6008.0, 38.0, 8.314, 273.15
    cold = melting / (temperature_c + melting)
    log_ratio = -heat / (gas * melting) * (cold - 1.0) + heat_capacity / gas * (
        cold - 1.0 - np.log(cold)
    )
    return np.asarray(np.exp(log_ratio), dtype=np.float64)


def freezing_c(sugar_fraction: ArrayLike) -> NDArray[np.float64]:
    r"""Temperature at which ice begins to form in syrup, good to half a degree.

    Ice and solution are in balance where

    .. math:: \ln a_w = -\frac{\Delta H}{R} \left(\frac1T - \frac1{T_0}\right)
       + \frac{\Delta C_p}{R} \left(\frac{T_0}{T} - 1 - \ln \frac{T_0}{T}\right)

    References
    ----------
    .. [1] R. A. Robinson and R. H. Stokes, *Electrolyte Solutions*, 2nd edition, 1959
       (heat of fusion 6.008 kJ/mol, change of heat capacity 38 J/(mol K)); from memory.

    Examples
    --------
    >>> float(freezing_c(0.5).round(1))
    -6.9

    """
    activity = water_activity(fraction_within(sugar_fraction, 0.0, 0.7))
    return inverse(_ice_to_water_pressure, activity, -40.0, 0.0)


def keeps_for(sugar_fraction: float) -> Keeps:
    """Say how long clean syrup keeps in the warm: an order of magnitude, never "for ever".

    Above a water activity of 0.91 many yeasts and bacteria grow, above 0.87 the common yeasts;
    below it only sugar-loving yeasts, which no liquid syrup stops.

    Examples
    --------
    >>> keeps_for(0.5), keeps_for(0.615), keeps_for(2 / 3)
    ('days', 'weeks', 'months')

    """
    activity = float(water_activity(sugar_fraction))
    if activity > MANY_YEASTS_ABOVE.value:
        return "days"
    return "weeks" if activity > COMMON_YEASTS_ABOVE.value else "months"

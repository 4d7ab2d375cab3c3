"""Moist air: dew point, vapour, and what a cold wall does to it."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.syrup.inverse import inverse
from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

Floats = NDArray[np.float64]

SEA_LEVEL_PA = 101325.0
TRIPLE_POINT_C = 0.01
COLDEST_C = -100.0  # the formulas hold from here


def dew_point_c(temperature_c: ArrayLike, humidity: ArrayLike) -> Floats:
    """Temperature at which the vapour in the air begins to settle.

    Parameters
    ----------
    temperature_c
        Air temperature, -40 to 60. [°C]
    humidity
        Relative humidity, a share above 0 and up to 1; 50 % is 0.5.

    Returns
    -------
    Floats
        Dew point. [°C]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals 2017, chapter 1: where the saturation pressure is
       the vapour pressure; psychrolib and CoolProp agree in the tests (computed).

    Examples
    --------
    >>> dew_point_c([20, 35], [0.50, 0.65]).round(1).tolist()
    [9.3, 27.4]

    """
    vapour = _moist(humidity) * saturation_pa(temperature_c)
    return np.minimum(inverse(_saturation, vapour, COLDEST_C, 60), _warm(temperature_c))


def saturation_pa(temperature_c: ArrayLike) -> Floats:
    r"""Vapour pressure of saturated air, over ice below zero.

    .. math:: \ln p = C_1 / T + C_2 + C_3 T + C_4 T^2 + C_5 T^3 + C_6 T^4 + C_7 \ln T

    Parameters
    ----------
    temperature_c
        Air temperature, -40 to 60. [°C]

    Returns
    -------
    Floats
        Vapour pressure. [Pa]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals 2017, chapter 1, eqs. 5 and 6 (Hyland
       and Wexler 1983); coefficients read in the package psychrolib, which the tests hold it to.

    Examples
    --------
    >>> float(saturation_pa(20).round())
    2339.0

    """
    return _saturation(_warm(temperature_c))


def water_g_per_kg(
    temperature_c: ArrayLike, humidity: ArrayLike, pressure_pa: ArrayLike = SEA_LEVEL_PA
) -> Floats:
    r"""Vapour in the air, by the mass of the dry air.

    .. math:: W = 0.621945\, p_v / (p - p_v)

    Parameters
    ----------
    temperature_c
        Air temperature, -40 to 60. [°C]
    humidity
        Relative humidity, a share above 0 and up to 1.
    pressure_pa
        Pressure of the air. [Pa]

    Returns
    -------
    Floats
        Vapour. [g/kg of dry air]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals 2017, chapter 1, eq. 20 (read in psychrolib). Leaving
       out the interaction of vapour and air makes it 0.4 % less than CoolProp.

    Examples
    --------
    >>> float(water_g_per_kg(20, 0.5).round(2))
    7.26

    """
    pressure = within(
        pressure_pa, 50e3, 110e3, "The pressure", "Pa", remedy="1013 hPa are 101300 Pa."
    )
    vapour = _moist(humidity) * saturation_pa(temperature_c)
    return np.asarray(1000 * 0.621945 * vapour / (pressure - vapour))


def humidity_from_dew_point(temperature_c: ArrayLike, dew_point: ArrayLike) -> Floats:
    """Relative humidity of air whose dew point is known.

    Parameters
    ----------
    temperature_c
        Air temperature, -40 to 60. [°C]
    dew_point
        Dew point, not above the air temperature. [°C]

    Returns
    -------
    Floats
        Relative humidity, a share from 0 to 1.

    References
    ----------
    .. [1] The ratio of two saturation pressures (computed).

    Examples
    --------
    >>> float(humidity_from_dew_point(20, 9.27).round(2))
    0.5

    """
    warm = _warm(temperature_c)
    dew = celsius(dew_point, "The dew point", COLDEST_C, 60)
    within(warm - dew, 0, 160, "The air above its dew point", "K")
    return np.asarray(_saturation(dew) / _saturation(warm))


def condensing(temperature_c: ArrayLike, humidity: ArrayLike, surface_c: ArrayLike) -> Floats:
    """Share of the vapour that a surface can take out of the air, 0 where it stays dry.

    Parameters
    ----------
    temperature_c
        Air temperature, -40 to 60. [°C]
    humidity
        Relative humidity, a share above 0 and up to 1.
    surface_c
        Temperature of the surface. [°C]

    Returns
    -------
    Floats
        Share, 0 to 1.

    References
    ----------
    .. [1] The saturation pressure at the surface against the vapour pressure of the air
       (computed).

    Examples
    --------
    >>> condensing(34, 0.5, [25, 5]).round(2).tolist()
    [0.0, 0.67]

    """
    moist = _moist(humidity) * saturation_pa(temperature_c)
    return np.asarray(np.maximum(1 - saturation_pa(surface_c) / moist, 0))


def _warm(temperature_c: ArrayLike) -> Floats:
    return celsius(temperature_c, "The air temperature", -40, 60)


def _moist(humidity: ArrayLike) -> Floats:
    return within(humidity, 0.01, 1, "The relative humidity", remedy="Give 50 % as 0.5.")


def _saturation(temperature_c: Floats) -> Floats:
    t = temperature_c + 273.15
    ice = (
        -5.6745359e3 / t
        + 6.3925247
        - 9.677843e-3 * t
        + 6.2215701e-7 * t**2
        + 2.0747825e-9 * t**3
        - 9.484024e-13 * t**4
        + 4.1635019 * np.log(t)
    )
    water = (
        -5.8002206e3 / t
        + 1.3914993
        - 4.8640239e-2 * t
        + 4.1764768e-5 * t**2
        - 1.4452093e-8 * t**3
        + 6.5459673 * np.log(t)
    )
    return np.asarray(np.exp(np.where(temperature_c <= TRIPLE_POINT_C, ice, water)))

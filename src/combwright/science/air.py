"""Moist air: dew point, vapour, and what a cold wall does to it."""

from types import ModuleType

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

Floats = NDArray[np.float64]

SEA_LEVEL_PA = 101325.0


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
    .. [1] ASHRAE Handbook Fundamentals 2017, chapter 1, as in the package psychrolib; checked
       against CoolProp in the tests (computed).

    Examples
    --------
    >>> dew_point_c([20, 35], [0.50, 0.65]).round(1).tolist()
    [9.3, 27.4]

    """
    warm, moist = _warm(temperature_c), _moist(humidity)
    return _array(_psychrometry().GetTDewPointFromRelHum(warm, moist))


def saturation_pa(temperature_c: ArrayLike) -> Floats:
    """Vapour pressure of saturated air, over ice below zero.

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
    .. [1] ASHRAE Handbook Fundamentals 2017, chapter 1, eqs. 5 and 6 (psychrolib; computed).

    Examples
    --------
    >>> float(saturation_pa(20).round())
    2339.0

    """
    return _array(_psychrometry().GetSatVapPres(_warm(temperature_c)))


def water_g_per_kg(
    temperature_c: ArrayLike, humidity: ArrayLike, pressure_pa: ArrayLike = SEA_LEVEL_PA
) -> Floats:
    """Vapour in the air, by the mass of the dry air.

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
    .. [1] ASHRAE Handbook Fundamentals 2017, chapter 1, eq. 20 (psychrolib; computed). Leaving
       out the interaction of vapour and air makes it 0.4 % less than CoolProp.

    Examples
    --------
    >>> float(water_g_per_kg(20, 0.5).round(2))
    7.26

    """
    pressure = within(
        pressure_pa, 50e3, 110e3, "The pressure", "Pa", remedy="1013 hPa are 101300 Pa."
    )
    warm, moist = _warm(temperature_c), _moist(humidity)
    return _array(1000 * _psychrometry().GetHumRatioFromRelHum(warm, moist, pressure))


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
    dew = celsius(dew_point, "The dew point", -60, 60)
    within(warm - dew, 0, 120, "The air above its dew point", "K")
    return _array(np.minimum(saturation_pa(np.maximum(dew, -40)) / saturation_pa(warm), 1.0))


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


def _array(found: ArrayLike) -> Floats:
    return np.asarray(found, dtype=np.float64)


def _psychrometry() -> ModuleType:
    """Give psychrolib, set to SI units; it takes half a second to load, so only when asked for."""
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    return psychrolib  # type: ignore[no-any-return]

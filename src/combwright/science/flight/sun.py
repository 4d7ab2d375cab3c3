"""The sun: what reaches the top of the air, what reaches the ground.

Days of the year, J in the formulas, count from 1 January = 1; latitudes are positive to the north.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.data_files import parameter
from combwright.terms.ranges import within

ANGSTROM_A = parameter("science/flight", "angstrom_a")
ANGSTROM_B = parameter("science/flight", "angstrom_b")


def declination_rad(day_of_year: ArrayLike) -> NDArray[np.float64]:
    r"""Declination of the sun.

    .. math:: \delta = 0.409 \sin\left(\frac{2 \pi J}{365} - 1.39\right)

    References
    ----------
    .. [1] R. G. Allen, L. S. Pereira, D. Raes and M. Smith, "Crop evapotranspiration", FAO
       Irrigation and Drainage Paper 56, Rome, 1998, eq. 24 (from memory; its worked example
       is reproduced).

    Examples
    --------
    >>> float(declination_rad(246).round(3))
    0.12

    """
    j = within(day_of_year, 1, 366, "The day of the year")
    return np.asarray(0.409 * np.sin(2 * np.pi * j / 365 - 1.39))


def sunset_hour_angle_rad(day_of_year: ArrayLike, latitude_deg: ArrayLike) -> NDArray[np.float64]:
    r"""Hour angle at which the sun's centre meets a flat horizon without air.

    .. math:: \omega_s = \arccos(-\tan\varphi \tan\delta)

    It is 0 in the polar night and π where the sun does not set.

    References
    ----------
    .. [1] FAO-56, eq. 25 (from memory; its worked example is reproduced).

    Examples
    --------
    >>> float(sunset_hour_angle_rad(246, -20).round(3))
    1.527

    """
    phi = np.radians(within(latitude_deg, -90, 90, "The latitude", "°"))
    return np.asarray(
        np.arccos(np.clip(-np.tan(phi) * np.tan(declination_rad(day_of_year)), -1, 1))
    )


def daylight_h(day_of_year: ArrayLike, latitude_deg: ArrayLike) -> NDArray[np.float64]:
    r"""Possible sunshine of a day, as recorders of sunshine count it.

    .. math:: N = \frac{24}{\pi} \omega_s

    Notes
    -----
    Up to 0.4 h shorter than from sunrise to sunset, because it leaves out refraction and the size
    of the disc.

    References
    ----------
    .. [1] FAO-56, eq. 34 (from memory; worked example 9 is reproduced).

    Examples
    --------
    >>> float(daylight_h(246, -20).round(1))
    11.7

    """
    return np.asarray(24 / np.pi * sunset_hour_angle_rad(day_of_year, latitude_deg))


def extraterrestrial_mj(day_of_year: ArrayLike, latitude_deg: ArrayLike) -> NDArray[np.float64]:
    r"""Radiation of a day on a level surface at the top of the air.

    .. math:: R_a = \frac{24 \cdot 60}{\pi} 0.0820\, d_r (\omega_s \sin\varphi \sin\delta
       + \cos\varphi \cos\delta \sin\omega_s), \quad d_r = 1 + 0.033 \cos(2 \pi J / 365)

    References
    ----------
    .. [1] FAO-56, eqs. 21 and 23 (from memory; worked example 8 is reproduced).

    Examples
    --------
    >>> float(extraterrestrial_mj(246, -20).round(1))
    32.2

    """
    j = np.asarray(day_of_year, dtype=np.float64)
    phi = np.radians(np.asarray(latitude_deg, dtype=np.float64))
    delta, omega = declination_rad(j), sunset_hour_angle_rad(j, latitude_deg)
    distance = 1 + 0.033 * np.cos(2 * np.pi * j / 365)
    height = omega * np.sin(phi) * np.sin(delta) + np.cos(phi) * np.cos(delta) * np.sin(omega)
    return np.asarray(24 * 60 / np.pi * 0.0820 * distance * height)


def global_radiation_mj(
    day_of_year: ArrayLike,
    latitude_deg: ArrayLike,
    sun_h: ArrayLike,
    a: float = ANGSTROM_A.value,
    b: float = ANGSTROM_B.value,
) -> NDArray[np.float64]:
    r"""Radiation of a day on the level ground, from the hours of sunshine.

    .. math:: H = \left(a + b \min(n / N, 1)\right) R_a

    ``a``, ``b``: share that arrives under full cloud, and what full sun adds.

    References
    ----------
    .. [1] A. Ångström, "Solar and terrestrial radiation", Q. J. R. Meteorol. Soc. 50, 121-126,
       1924, doi:10.1002/qj.49705021008, as in FAO-56 eq. 35 (from memory).

    Examples
    --------
    >>> float(global_radiation_mj(135, -22.9, 220 / 31, 0.25, 0.50).round(1))  # FAO-56, ex. 10
    14.5

    """
    sun = within(sun_h, 0, 24, "The sunshine", "h")
    possible = np.maximum(daylight_h(day_of_year, latitude_deg), 1e-9)
    share = np.minimum(sun / possible, 1.0)
    return np.asarray((a + b * share) * extraterrestrial_mj(day_of_year, latitude_deg))

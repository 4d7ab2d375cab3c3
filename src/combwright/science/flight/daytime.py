"""From the values of a day to its course between sunrise and sunset."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.flight.sun import daylight_h, declination_rad, sunset_hour_angle_rad
from combwright.terms.data_files import parameter

Floats = NDArray[np.float64]

WARMEST_AT_H = parameter("science/flight", "warmest_at_h")
J_PER_MJ, SECONDS_PER_H = 1e6, 3600.0


class Moment(NamedTuple):
    """One stretch of the daylight: how long it is, and its warmth and light; each [day]."""

    length_h: Floats
    warmth: Floats  # 0 at the day's lowest temperature, 1 at its highest
    light_per_h: Floats  # share of the day's radiation that arrives in an hour like this


def daylight_moments(
    day_of_year: ArrayLike, latitude_deg: ArrayLike, points: int = 16
) -> Iterator[Moment]:
    r"""Cut the daylight into equal stretches, each with its warmth and light.

    Temperature rises as half a cosine from the lowest at sunrise to the highest at 14 h solar
    time, and falls as half a cosine to the lowest at the next sunrise. Radiation follows the
    sine of the sun's elevation:

    .. math:: \sin h = \sin\varphi \sin\delta + \cos\varphi \cos\delta \cos\omega

    ``points``: how many stretches; with 16 the flight hours of a month are within 1 % of their
    limit. Gives from sunrise to sunset.

    Notes
    -----
    Only the day's own lowest temperature is used, so that a day's course does not change when
    the next day becomes known.

    References
    ----------
    .. [1] The scheme behind the tables of flight hours for Irish stations (judgement);
       elevation as in FAO-56, eq. 46 (from memory).

    Examples
    --------
    >>> moments = list(daylight_moments(172, 53.35))
    >>> round(float(sum(m.length_h * m.light_per_h for m in moments)), 2)
    1.0

    """
    omega_s = np.maximum(sunset_hour_angle_rad(day_of_year, latitude_deg), 1e-6)
    light_h = daylight_h(day_of_year, latitude_deg)
    delta, phi = declination_rad(day_of_year), np.radians(np.asarray(latitude_deg, np.float64))
    level, swing = np.sin(phi) * np.sin(delta), np.cos(phi) * np.cos(delta)
    # the sine's integral over the daylight, in hours; in the polar night there is nothing to share
    whole = np.maximum(24 / np.pi * (omega_s * level + swing * np.sin(omega_s)), 1e-9)
    rise = 12 - light_h / 2
    peak = WARMEST_AT_H.value
    for part in (np.arange(points) + 0.5) / points:
        hour = rise + light_h * part
        rising = (1 - np.cos(np.pi * (hour - rise) / (peak - rise))) / 2
        falling = (1 + np.cos(np.pi * (hour - peak) / (24 + rise - peak))) / 2
        sine = np.maximum(level + swing * np.cos(np.pi * (hour - 12) / 12), 0)
        yield Moment(light_h / points, np.where(hour < peak, rising, falling), sine / whole)


def watts(radiation_mj: Floats, light_per_h: Floats) -> Floats:
    """Give the radiation of a moment from that of its day. [W/m²].

    Examples
    --------
    >>> float(watts(np.array(30.0), np.array(0.1)).round(1))
    833.3

    """
    return np.asarray(radiation_mj * (light_per_h * (J_PER_MJ / SECONDS_PER_H)))

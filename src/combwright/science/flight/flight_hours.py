"""Hours of flight: what the weather lets foragers do."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.flight.daytime import daylight_moments, watts
from combwright.science.flight.sun import global_radiation_mj
from combwright.terms.data_files import parameter
from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

Floats = NDArray[np.float64]

NO_FLIGHT_BELOW_C = parameter("science/flight", "no_flight_below_c")
FULL_IN_DULL_LIGHT_C = parameter("science/flight", "full_in_dull_light_c")
FULL_IN_SUN_C = parameter("science/flight", "full_in_sun_c")
FULL_LIGHT_W_M2 = parameter("science/flight", "full_light_w_m2")
CALM_UP_TO_M_S = parameter("science/flight", "calm_up_to_m_s")
NO_FLIGHT_FROM_M_S = parameter("science/flight", "no_flight_from_m_s")
WIND_AT_BEES = parameter("science/flight", "wind_at_bees")
RAIN_OF_A_WET_DAY_MM = parameter("science/flight", "rain_of_a_wet_day_mm")


def suitability(temperature_c: ArrayLike, radiation_w_m2: ArrayLike) -> Floats:
    r"""Share of full flight that warmth and light allow in still, dry air.

    .. math:: s = s_R\, s_T, \quad s_R = \min(I / 300, 1), \quad
       s_T = \mathrm{clip}\left(\frac{T - 12}{20 - 7 s_R - 12}, 0, 1\right)

    ``radiation_w_m2``: global radiation I; without light there is no flight [W/m²].

    Notes
    -----
    The two published thresholds of warmth disagree: [1]_ sees foraging rise from 12 to 20 °C, [2]_
    sees bees fully active at 12 to 14 °C with 300 W/m². Here both hold: in dull light flight is
    full at 20 °C, in sun at 13 °C (judgement). Heat above 35 °C, which stops foraging too, is left
    out.

    References
    ----------
    .. [1] R. M. Burrill and A. Dietz, Apidologie 12, 319-328, 1981, as cited in COLOSS BEEBOOK
       (read second-hand).
    .. [2] N. Vicens and J. Bosch, Environ. Entomol. 29, 413-420, 2000 (summary read).

    Examples
    --------
    >>> suitability([11, 13, 13, 20], [800, 300, 0, 150]).tolist()
    [0.0, 1.0, 0.0, 0.5]

    """
    light = np.minimum(np.asarray(radiation_w_m2) / FULL_LIGHT_W_M2.value, 1.0)
    gain = FULL_IN_DULL_LIGHT_C.value - FULL_IN_SUN_C.value
    width = (FULL_IN_DULL_LIGHT_C.value - NO_FLIGHT_BELOW_C.value) - gain * light
    warmth = np.asarray(temperature_c) - NO_FLIGHT_BELOW_C.value
    return np.asarray(light * np.clip(warmth / width, 0.0, 1.0))


def calm(wind_m_s: ArrayLike) -> Floats:
    """Say how much of the flight the wind leaves.

    References
    ----------
    .. [1] Deutscher Wetterdienst, agrometeorology, text of 2013 (read): winds near the maximum
       flight speed of 7.5 m/s hinder loaded bees. The ramp and the wind at a yard are judgement.

    Examples
    --------
    >>> calm([4, 10.5, 15]).round(3).tolist()
    [1.0, 0.5, 0.0]

    """
    wind = within(wind_m_s, 0, 100, "The wind", "m/s") * WIND_AT_BEES.value
    width = NO_FLIGHT_FROM_M_S.value - CALM_UP_TO_M_S.value
    return np.asarray(np.clip((NO_FLIGHT_FROM_M_S.value - wind) / width, 0, 1))


def dry_share(rain_mm: ArrayLike) -> Floats:
    r"""Share of a day's flight that its rain leaves.

    .. math:: s_P = e^{-R / 15}

    Notes
    -----
    Bees fly between showers and resume promptly, so a day with rain is not lost; each millimetre
    takes about 1.6 of 24 hours, the wet after it counted (judgement). What a wet day lacks in sun
    and warmth is counted there. The truth lies between no loss and the loss of every day with 1 mm
    or more; the evidence (topic flight) holds the hours of a month between the two.

    References
    ----------
    .. [1] Judgement; showers cut flight and it resumes promptly: a USDA bulletin on flight
       activities of the 1920s (fragment read).

    Examples
    --------
    >>> dry_share([0, 2, 15]).round(2).tolist()
    [1.0, 0.88, 0.37]

    """
    rain = within(rain_mm, 0, 1000, "The rain", "mm")
    return np.asarray(np.exp(-rain / RAIN_OF_A_WET_DAY_MM.value))


def flight_hours(  # noqa: PLR0917  # the columns of a day of weather, in their order
    day_of_year: ArrayLike,
    latitude_deg: ArrayLike,
    t_max_c: ArrayLike,
    t_min_c: ArrayLike,
    rain_mm: ArrayLike,
    sun_h: ArrayLike,
    wind_m_s: ArrayLike,
) -> Floats:
    """Hours of full flight in a day: the suitability of its hours, summed.

    From 0 to the length of the day, [scenario, day].

    ``t_max_c``, ``t_min_c``: highest and lowest temperature, [scenario, day]. [°C]. ``wind_m_s``:
    mean wind at 10 m [m/s].

    References
    ----------
    .. [1] :func:`suitability`, :func:`dry_share`; course of the day as in
       :func:`~combwright.science.flight.daytime.daylight_moments` (judgement).

    Examples
    --------
    >>> float(flight_hours(172, 53.35, 20, 11, 0, 10, 3).round(0))
    12.0
    >>> float(flight_hours(20, 53.35, 8, 2, 0, 4, 3))
    0.0

    """
    low = celsius(t_min_c, "The lowest temperature", -60, 60)
    span = celsius(t_max_c, "The highest temperature", -60, 60) - low
    radiation = global_radiation_mj(day_of_year, latitude_deg, sun_h)
    hours = np.zeros(np.broadcast_shapes(span.shape, radiation.shape))
    for moment in daylight_moments(day_of_year, latitude_deg):
        light = watts(radiation, moment.light_per_h)
        hours += moment.length_h * suitability(low + span * moment.warmth, light)
    return np.asarray(hours * calm(wind_m_s) * dry_share(rain_mm))

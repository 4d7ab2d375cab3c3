"""What a day brings, as the step reads it: from weather and forage to one array."""

import numpy as np
from numpy.typing import NDArray

from combwright.science.flight import flight_hours
from combwright.simulation.day import DAY, FLIGHT, MATING, MAX_C, MEAN_C, NECTAR, NIGHT_C, POLLEN
from combwright.terms.weather import DailyWeather

Floats = NDArray[np.float64]


def day_of_year(weather: DailyWeather) -> Floats:
    """Day of the year of each day, 1 January = 1, [day]."""
    first = np.datetime64(weather.first)
    days = first + np.arange(weather.days)
    start = days.astype("datetime64[Y]").astype("datetime64[D]")
    return np.asarray((days - start).astype(np.float64) + 1.0)


def mating_chance(weather: DailyWeather) -> Floats:
    """How good a day is for a mating flight, 0 to 1, [scenario, day].

    A ramp from 16 to 20 °C on days without rain, with sun and little wind. Queens and drones
    generally fly above 20 °C (COLOSS BEEBOOK, behaviour chapter 13.2, read); the ramp is
    judgement, because a hard limit would leave the west of Ireland without queens.
    """
    warm = np.clip((weather.t_max_c - 16.0) / 4.0, 0.0, 1.0)
    sunny = np.clip(weather.sun_h / 3.0, 0.0, 1.0)
    still = np.clip((9.0 - weather.wind_m_s) / 3.0, 0.0, 1.0)
    dry = np.clip(1.0 - weather.rain_mm / 3.0, 0.0, 1.0)
    return np.asarray(warm * sunny * still * dry)


def conditions(
    weather: DailyWeather, nectar: Floats, pollen: Floats, *, latitude_deg: float
) -> Floats:
    """Bring weather and forage into the form that the step reads, [scenario, day, column].

    Parameters
    ----------
    weather
        Daily weather, [scenario, day].
    nectar, pollen
        Forage indices, 1 at the district's best, [scenario, day]. [-]
    latitude_deg
        Latitude of the yard. [°]

    Returns
    -------
    Floats
        Conditions, [scenario, day, column].

    """
    days = day_of_year(weather)
    table = np.empty((weather.scenarios, weather.days, 8))
    table[:, :, FLIGHT] = flight_hours(
        days,
        latitude_deg,
        weather.t_max_c,
        weather.t_min_c,
        weather.rain_mm,
        weather.sun_h,
        weather.wind_m_s,
    )
    mean = 0.5 * (weather.t_max_c + weather.t_min_c)
    table[:, :, MEAN_C] = mean
    table[:, :, MAX_C] = weather.t_max_c
    table[:, :, NIGHT_C] = 0.5 * (mean + weather.t_min_c)
    table[:, :, NECTAR] = nectar
    table[:, :, POLLEN] = pollen
    table[:, :, MATING] = mating_chance(weather)
    table[:, :, DAY] = days
    return table

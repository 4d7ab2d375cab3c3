"""What a day brings, as the step reads it: from weather and forage to one array."""

import numpy as np
from numpy.typing import NDArray

from combwright.science.flight.flight_hours import flight_hours
from combwright.science.queens.mating import flight_chance
from combwright.terms.data_files import parameter
from combwright.terms.weather import DailyWeather

Floats = NDArray[np.float64]

# Columns of a day's conditions, as the step reads them.
FLIGHT, MEAN_C, MAX_C, NIGHT_C, NECTAR, POLLEN, MATING, DAY = range(8)

SUN_TO_MATE_H = parameter("weather/numbers", "sun_to_mate_h")
WIND_HINDERS_M_S = parameter("weather/numbers", "wind_hinders_m_s")
WIND_STOPS_M_S = parameter("weather/numbers", "wind_stops_m_s")


def day_of_year(weather: DailyWeather) -> Floats:
    """Day of the year of each day, 1 January = 1, [day]."""
    first = np.datetime64(weather.first)
    days = first + np.arange(weather.days)
    start = days.astype("datetime64[Y]").astype("datetime64[D]")
    return np.asarray((days - start).astype(np.float64) + 1.0)


def mating_chance(weather: DailyWeather) -> Floats:
    """How good a day is for a mating flight, 0 to 1, [scenario, day]; see ``queens.mating``.

    Warmth, rain, sunshine and wind each hold a queen back.
    """
    sunny = np.clip(weather.sun_h / SUN_TO_MATE_H.value, 0.0, 1.0)
    stops, hinders = WIND_STOPS_M_S.value, WIND_HINDERS_M_S.value
    still = np.clip((stops - weather.wind_m_s) / (stops - hinders), 0.0, 1.0)
    return flight_chance(weather.t_max_c, weather.rain_mm, sunny, still)


def conditions(
    weather: DailyWeather, nectar: Floats, pollen: Floats, *, latitude_deg: float
) -> Floats:
    """Bring weather and forage into the form that the step reads, [scenario, day, column].

    Nectar and pollen are indices, 1 at the district's best, [scenario, day]. [-]
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

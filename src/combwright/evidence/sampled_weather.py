"""What the weather generator makes of a climate, for comparison with what stations measured."""

from datetime import date
from functools import cache
from itertools import groupby

import numpy as np
from numpy.typing import NDArray

from combwright.science.flight.daytime import daylight_moments, watts
from combwright.science.flight.flight_hours import flight_hours
from combwright.science.flight.sun import global_radiation_mj
from combwright.terms.weather import DailyWeather
from combwright.weather.climates import climate
from combwright.weather.forage import Plant, average_year, calendar, forage_index
from combwright.weather.generator import generate
from combwright.weather.months import LENGTHS, calendar_days, months_of, smooth

Floats = NDArray[np.float64]
FIRST = date(2023, 1, 1)
DAYS, YEARS, SEED = 365, 300, 20230101
WARM_C, LIGHT_W_M2 = 13.0, 100.0  # what the tables of hours for Irish stations count


@cache
def years(place: str) -> DailyWeather:
    """Sample 300 years of a place, each its own scenario."""
    return generate(climate(place), FIRST, DAYS, YEARS, SEED)


def monthly_mean(place: str, quantity: str, month: int) -> float:
    """Give the mean of a month (1 to 12): temperatures and wind by day, rain and sun by month."""
    return float(_by_year(place, quantity, month).mean())


def year_to_year(place: str, quantity: str, month: int) -> float:
    """Give the standard deviation of a month's value over the years."""
    return float(_by_year(place, quantity, month).std(ddof=1))


def yearly_mean(place: str, quantity: str) -> float:
    """Give the mean of a year's sum: rain [mm] or sunshine [h]."""
    return float(getattr(years(place), quantity).sum(axis=1).mean())


def yearly_spread(place: str, quantity: str) -> float:
    """Give the standard deviation of a year's sum over the years."""
    return float(getattr(years(place), quantity).sum(axis=1).std(ddof=1))


def wet_days(place: str, threshold_mm: float) -> float:
    """Give the mean number of days in a year with so much rain or more."""
    return float((years(place).rain_mm >= threshold_mm).sum(axis=1).mean())


def lag_one(place: str, quantity: str) -> float:
    """Give the correlation of a quantity with that of the day before, the seasons taken out."""
    series = getattr(years(place), quantity)
    anomaly = series - series.mean(axis=0)
    return float(np.corrcoef(anomaly[:, :-1].ravel(), anomaly[:, 1:].ravel())[0, 1])


def warm_days(place: str, month: int, warm_c: float, below_mm: float = 1000.0) -> float:
    """Give the mean number of days in a month that are so warm and have less rain than that."""
    sampled, here = years(place), _month(month)
    good = (sampled.t_max_c >= warm_c) & (sampled.rain_mm < below_mm)
    return float(good[:, here].mean() * LENGTHS[month - 1])


def spell_days(place: str, *, wet: bool) -> float:
    """Give the mean length of wet (1 mm or more) or dry spells from May to August."""
    summer = np.isin(months_of(FIRST, DAYS), (4, 5, 6, 7))
    days = years(place).rain_mm[:, summer] >= 1
    lengths = [
        len(list(spell)) for year in days for kind, spell in groupby(year.tolist()) if kind == wet
    ]
    return float(np.mean(lengths))


def warm_light_hours(place: str, month: int) -> float:
    """Give the mean hours a day with 13 °C and 100 W/m² or more, whatever the rain."""
    sampled, north = years(place), climate(place).latitude_deg
    radiation = global_radiation_mj(_days(), north, sampled.sun_h)
    hours = np.zeros_like(radiation)
    for moment in daylight_moments(_days(), north, points=48):
        warm = sampled.t_min_c + (sampled.t_max_c - sampled.t_min_c) * moment.warmth
        light = watts(radiation, moment.light_per_h)
        hours += moment.length_h * ((warm >= WARM_C) & (light >= LIGHT_W_M2))
    return float(hours[:, _month(month)].mean())


def flying_hours(place: str, month: int) -> float:
    """Give the mean flight hours a day."""
    sampled = years(place)
    hours = flight_hours(
        _days(),
        climate(place).latitude_deg,
        sampled.t_max_c,
        sampled.t_min_c,
        sampled.rain_mm,
        sampled.sun_h,
        sampled.wind_m_s,
    )
    return float(hours[:, _month(month)].mean())


def mean_temperature(places: list[str], month: int) -> float:
    """Give the mean air temperature of a month over several places."""
    means = [
        (monthly_mean(place, "t_max_c", month) + monthly_mean(place, "t_min_c", month)) / 2
        for place in places
    ]
    return float(np.mean(means))


def mean_sunshine(places: list[str], month: int) -> float:
    """Give the mean sunshine of a month over several places. [h]."""
    return float(np.mean([monthly_mean(place, "sun_h", month) for place in places]))


def mean_of_year(places: list[str]) -> float:
    """Give the mean air temperature of the year over several places."""
    months = [mean_temperature(places, month) for month in range(1, 13)]
    return float(np.average(months, weights=LENGTHS))


def forage_of_month(district: str, month: int) -> float:
    """Give the mean nectar index of a month in an average year near Dublin."""
    nectar, _ = average_year(calendar(district), climate("Dublin Airport"))
    return float(nectar[calendar_days(FIRST, DAYS)][_month(month)].mean())


def forage_share(district: str, month: int, of_month: int) -> float:
    """Give the nectar of a month against that of another in an average year."""
    return forage_of_month(district, month) / forage_of_month(district, of_month)


def bloom_lead_days(plant: str, warmer_c: float) -> float:
    """Give the days by which a plant flowers earlier after a February to April so much warmer."""
    found = tuple(one for one in calendar("lowland mixed farmland") if one.name == plant)
    return _middle(found, 0.0) - _middle(found, warmer_c)


def _middle(plants: tuple[Plant, ...], warmer_c: float) -> float:
    """Give the middle of the bloom, by its pollen, which does not depend on the day's warmth."""
    place = climate("Dublin Airport")
    usual = [smooth(place.mean(each))[None, :DAYS] for each in (place.t_max_c, place.t_min_c)]
    warm = [each + warmer_c for each in usual]
    nothing = np.zeros((1, DAYS))
    weather = DailyWeather(FIRST, warm[0], warm[1], nothing, nothing, nothing)
    _, pollen = forage_index(plants, weather, place, seed=1)
    return float((pollen[0] * np.arange(DAYS)).sum() / pollen[0].sum())


def _by_year(place: str, quantity: str, month: int) -> Floats:
    mean = getattr(years(place), quantity)[:, _month(month)].mean(axis=1)
    return np.asarray(mean * LENGTHS[month - 1] if quantity in {"rain_mm", "sun_h"} else mean)


def _month(month: int) -> NDArray[np.bool_]:
    return np.asarray(months_of(FIRST, DAYS) == month - 1)


def _days() -> Floats:
    return np.arange(1.0, DAYS + 1)

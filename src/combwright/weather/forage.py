"""Forage: how much nectar and pollen a district offers each day."""

from dataclasses import dataclass
from datetime import date
from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from combwright.terms.data_files import contents, parameter
from combwright.terms.errors import NotFoundError
from combwright.terms.streams import stream
from combwright.terms.weather import DailyWeather
from combwright.weather.climate import Climate
from combwright.weather.climates import climate
from combwright.weather.months import calendar_days, smooth

Floats = NDArray[np.float64]

EARLIER_PER_DEGREE = parameter("weather/numbers", "earlier_per_degree")
MOST_SHIFT_DAYS = parameter("weather/numbers", "most_shift_days")
EDGE = parameter("weather/numbers", "edge")
SEASON_LUCK = parameter("weather/numbers", "season_luck")
POLLEN_HALF = parameter("weather/numbers", "pollen_half")
SPRING = (31, 121)  # February to April, as places in a table of 366 days
SPRING_DAYS = 89.25


@dataclass(frozen=True, slots=True)
class Plant:
    """A plant of a district: its bloom (places in the calendar) and what it gives there."""

    name: str
    begins: float
    ends: float
    nectar: float
    pollen: float
    begins_c: float
    full_c: float
    follows: float
    luck: float

    def bloom(self, day: Floats) -> Floats:
        """Share of full bloom on a day of the calendar, the spring's lead added."""
        edge = EDGE.value * (self.ends - self.begins)
        nearest = np.minimum(day - self.begins, self.ends - day)
        return np.clip(nearest / edge, 0, 1)

    def flowing(self, t_max_c: Floats) -> Floats:
        """Share of full secretion on a day by its highest temperature."""
        return np.clip((t_max_c - self.begins_c) / (self.full_c - self.begins_c), 0, 1)


def districts() -> tuple[str, ...]:
    """Give the names of the districts, the usual one first.

    Examples
    --------
    >>> districts()[0]
    'lowland mixed farmland'

    """
    return tuple(contents("weather/forage")["districts"])


@cache
def calendar(district: str) -> tuple[Plant, ...]:
    """Give the plants of a district.

    Examples
    --------
    >>> [plant.name for plant in calendar("heather moor")][-2:]
    ['ling heather', 'ivy']

    """
    if district not in districts():
        raise NotFoundError(
            f"There is no forage calendar for “{district}”.",
            remedy=f"There are: {', '.join(districts())}.",
        )
    plants = contents("weather/forage")["plants"]
    return tuple(
        _plant(plants[key], share)
        for key, share in contents("weather/forage")["districts"][district].items()
    )


def _plant(said: dict[str, Any], share: float) -> Plant:
    begins, ends = (
        float(calendar_days(date.fromisoformat(f"2000-{said[key]}"), 1)[0])
        for key in ("from", "to")
    )
    gives = (share * said["nectar"], share * said["pollen"])
    habits = (float(said[key]) for key in ("begins_c", "full_c", "follows", "luck"))
    return Plant(said["name"], begins, ends, *gives, *habits)


def forage_index(
    plants: tuple[Plant, ...], weather: DailyWeather, place: Climate, *, seed: int
) -> tuple[Floats, Floats]:
    """Nectar and pollen that a district offers each day.

    Nectar and pollen, each [scenario, day]; 1 is the best day of an average year in lowland
    mixed farmland near Dublin, so nectar of good days of good years lies above. [-]

    ``place`` is the climate against which a spring is early or late, ``seed`` of the plants' luck
    in each year; a spring that the weather does not hold counts as average.

    Notes
    -----
    Bloom is shifted by the warmth of February to April as far as it is past, all of it for spring
    plants and little for those that follow the length of the day. Luck has the mean 1.

    Examples
    --------
    >>> from combwright.weather.generator import generate
    >>> place = climate("Dublin")
    >>> year = generate(place, date(2026, 1, 1), 365, scenarios=50, seed=1)
    >>> nectar, pollen = forage_index(calendar("lowland mixed farmland"), year, place, seed=1)
    >>> bool(nectar[:, 190:200].mean() > nectar[:, 155:165].mean())  # July against the June gap
    True

    """
    nectar, pollen = np.zeros(weather.t_max_c.shape), np.zeros(weather.t_max_c.shape)
    for year, window in _years(weather):
        days = _calendar_of(weather, window)
        lead = _lead(weather, place, window, days)
        season = _luck(seed, "season", year, weather.scenarios, SEASON_LUCK.value)
        for plant in plants:
            good = season * _luck(seed, plant.name, year, weather.scenarios, plant.luck)
            near = _near(plant, days)
            part = slice(window.start + near.start, window.start + near.stop)
            bloom = plant.bloom(days[near] + plant.follows * lead[:, near]) * good
            flowing = plant.flowing(weather.t_max_c[:, part])
            nectar[:, part] += plant.nectar * bloom * flowing
            pollen[:, part] += plant.pollen * bloom
    return _to_index(nectar, pollen)


def average_year(plants: tuple[Plant, ...], place: Climate) -> tuple[Floats, Floats]:
    """Nectar and pollen by calendar day in a year without surprises, each [366]. [-].

    Examples
    --------
    >>> nectar, _ = average_year(calendar("lowland mixed farmland"), climate("Dublin"))
    >>> float(nectar.max())
    1.0

    """
    return _to_index(*_average(plants, place))


def _to_index(nectar: Floats, pollen: Floats) -> tuple[Floats, Floats]:
    best_nectar, best_pollen = _best()
    return nectar / best_nectar, _gathered(pollen) / _gathered(best_pollen)


def _gathered(pollen: Any) -> Any:
    return pollen / (pollen + POLLEN_HALF.value)


@cache
def _best() -> tuple[float, float]:
    nectar, pollen = _average(calendar(districts()[0]), climate("Dublin Airport"))
    return float(nectar.max()), float(pollen.max())


def _average(plants: tuple[Plant, ...], place: Climate) -> tuple[Floats, Floats]:
    days, usual = np.arange(366.0), smooth(place.mean(place.t_max_c))
    blooms = [plant.bloom(days) for plant in plants]
    nectar = sum(
        plant.nectar * bloom * plant.flowing(usual)
        for plant, bloom in zip(plants, blooms, strict=True)
    )
    pollen = sum(plant.pollen * bloom for plant, bloom in zip(plants, blooms, strict=True))
    return np.asarray(nectar), np.asarray(pollen)


def _luck(seed: int, of: str, year: int, scenarios: int, spread: float) -> Floats:
    """Draw factors with the mean 1, [scenario, 1]."""
    normal = stream(seed, "forage", of, year).standard_normal(scenarios)
    return np.exp(spread * normal - spread**2 / 2)[:, None]


def _years(weather: DailyWeather) -> list[tuple[int, slice]]:
    found = []
    for year in range(weather.first.year, weather.last.year + 1):
        start = max(0, (date(year, 1, 1) - weather.first).days)
        stop = min(weather.days, (date(year + 1, 1, 1) - weather.first).days)
        found.append((year, slice(start, stop)))
    return found


def _calendar_of(weather: DailyWeather, window: slice) -> Floats:
    return calendar_days(weather.first, weather.days)[window].astype(np.float64)


def _near(plant: Plant, days: Floats) -> slice:
    """Give the stretch of days in which a plant can flower, however early or late."""
    reach = MOST_SHIFT_DAYS.value
    start = int(np.searchsorted(days, plant.begins - reach))
    return slice(start, int(np.searchsorted(days, plant.ends + reach, side="right")))


def _lead(weather: DailyWeather, place: Climate, window: slice, days: Floats) -> Floats:
    """Days by which the spring is early, as far as it is past on each day, [scenario, day]."""
    spring = (days >= SPRING[0]) & (days < SPRING[1])
    usual = smooth((place.mean(place.t_max_c) + place.mean(place.t_min_c)) / 2)
    mean = (weather.t_max_c[:, window] + weather.t_min_c[:, window]) / 2
    warmer = np.where(spring, mean - usual[days.astype(int)], 0.0)
    degrees = np.cumsum(warmer, axis=1) / SPRING_DAYS
    most = MOST_SHIFT_DAYS.value
    return np.clip(EARLIER_PER_DEGREE.value * degrees, -most, most)

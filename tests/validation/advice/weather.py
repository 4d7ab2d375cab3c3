"""The weather that a keeper knows: what was, as from a station; flow and days ahead are sampled."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.terms.weather import DailyWeather
from combwright.weather.climate import Climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import continue_from, generate

Floats = NDArray[np.float64]
DISTRICT: Final = "lowland mixed farmland"
VERSIONS: Final = 24  # of the year's flow and of the days ahead
AHEAD: Final = 32  # days that a plan may look at


def conditions_of(weather: DailyWeather, place: Climate, seed: int) -> Floats:
    """Bring weather with sampled flow into the form that the step reads."""
    nectar, pollen = forage_index(calendar(DISTRICT), weather, place, seed=seed)
    return conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)


@dataclass
class Known:
    """The true weather up to a day, each version with a flow of its own."""

    weather: DailyWeather
    place: Climate
    seed: int
    _past: Floats = field(init=False)

    def __post_init__(self) -> None:
        many = _map(self.weather, lambda each: np.repeat(each, VERSIONS, axis=0))
        self._past = conditions_of(many, self.place, self.seed)

    def was(self, first: date, until: date) -> Floats:
        """Give the days from one to before another, [version, day, column]."""
        start = (first - self.weather.first).days
        return self._past[:, start : start + (until - first).days]

    def ahead(self, on: date, days_ahead: int = AHEAD) -> Floats:
        """Sample the days from one on, in the springs and flows of the same versions."""
        first = max(self.weather.first, date(on.year, 1, 1))
        if on <= first:
            days = generate(self.place, on, days_ahead, VERSIONS, self.seed)
        else:
            start, stop = (first - self.weather.first).days, (on - self.weather.first).days
            known = _map(self.weather, lambda each: each[:, start:stop], first)
            seed = self.seed + on.toordinal()
            days = continue_from(known, self.place, days_ahead, VERSIONS, seed)
        nectar, pollen = forage_index(calendar(DISTRICT), days, self.place, seed=self.seed)
        last = _map(days, lambda each: each[:, -days_ahead:], on)
        last_nectar, last_pollen = nectar[:, -days_ahead:], pollen[:, -days_ahead:]
        return conditions(last, last_nectar, last_pollen, latitude_deg=self.place.latitude_deg)


def _map(
    weather: DailyWeather, change: Callable[[Floats], Floats], first: date | None = None
) -> DailyWeather:
    series = (weather.t_max_c, weather.t_min_c, weather.rain_mm, weather.sun_h, weather.wind_m_s)
    return DailyWeather(first or weather.first, *(change(each) for each in series))

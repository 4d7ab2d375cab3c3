"""Days of a place that nobody has seen yet: weather and forage sampled, as the step reads them."""

from dataclasses import replace
from datetime import date

import numpy as np
from numpy.typing import NDArray

from combwright.weather.climates import climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, districts, forage_index
from combwright.weather.generator import generate


def sampled_conditions(
    place: str,
    first: date,
    days: int,
    scenarios: int,
    seed: int,
    *,
    district: str | None = None,
    warmer_k: float = 0.0,
) -> NDArray[np.float64]:
    """Sample the conditions of a place, each scenario a year of its own, [scenario, day, column].

    Every day may be warmer than the climate. [K]
    """
    where = climate(place)
    weather = generate(where, first, days, scenarios, seed)
    if warmer_k:
        warmer = {name: getattr(weather, name) + warmer_k for name in ("t_max_c", "t_min_c")}
        weather = replace(weather, **warmer)
    plants = calendar(district or districts()[0])
    nectar, pollen = forage_index(plants, weather, where, seed=seed)
    return conditions(weather, nectar, pollen, latitude_deg=where.latitude_deg)

"""The mating weather of a yard: as known, then sampled; and what the keeper's batches tell."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.mating import LONGEST_DAYS, MatingWeather, mating
from combwright.records.replay.known_queens import KnownBatch
from combwright.records.store.book_handle import Book
from combwright.science.queens.mating_success import own_factor
from combwright.services.supply.asked import WhatIf
from combwright.services.weather.known_places import climate_of
from combwright.services.weather.surroundings import yard_weather
from combwright.weather.climates import climate
from combwright.weather.conditions import mating_chance
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
USUAL_YEARS: Final = 300  # sampled years against which a year is good or bad; judgement
RIPE_AFTER: Final = 10  # days from the graft; the trade's calendar


def mating_weather(
    book: Book,
    yard: str,
    cells: tuple[date, date],
    *,
    versions: int,
    seed: int,
    what_if: WhatIf | None = None,
) -> MatingWeather:
    """Give how fit the days of a yard are for mating flights, up to the last cell's last chance."""
    first, until = cells[0], cells[1] + timedelta(days=LONGEST_DAYS)
    weather = yard_weather(book, yard, first, until, versions=versions, seed=seed)
    if what_if and what_if.cold_from:
        days = np.arange(weather.days) - (what_if.cold_from - first).days
        colder = np.where((days >= 0) & (days < what_if.cold_days), what_if.colder_k, 0.0)
        weather = replace(
            weather, t_max_c=weather.t_max_c - colder, t_min_c=weather.t_min_c - colder
        )
    noted = book.now().yards
    place = climate_of(noted.get(yard)).name
    return MatingWeather(first, mating_chance(weather), _usual(place, first, until))


@lru_cache(maxsize=8)
def _usual(place: str, first: date, until: date) -> Floats:
    return mating_chance(generate(climate(place), first, (until - first).days, USUAL_YEARS, 0))


def own_success(book: Book, yard: str, batches: Mapping[str, KnownBatch], on: date) -> float:
    """Give by how much the keeper's own batches, counted to the end, move the usual share."""
    counted = [
        each
        for each in batches.values()
        if each.given and each.laying is not None and each.day_0 < on
    ]
    if not counted:
        return 1.0
    first = min(each.day_0 for each in counted)
    last = max(each.day_0 for each in counted) + timedelta(days=RIPE_AFTER)
    sky = mating_weather(book, yard, (first, last), versions=USUAL_YEARS, seed=0)
    expected = [mating(sky, each.day_0 + timedelta(days=RIPE_AFTER)).lays for each in counted]
    return own_factor(
        [each.given or 0 for each in counted], [each.laying or 0 for each in counted], expected
    )

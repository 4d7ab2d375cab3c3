"""Weather and forage around the yards of a book: what was known, and sampled where it was not."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from hashlib import blake2b
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import named_places, weather_between
from combwright.services.weather.known_places import climate_of, plants_of
from combwright.terms.weather import DailyWeather
from combwright.weather.climate import Climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import Plant, calendar, forage_index
from combwright.weather.generator import continue_from, generate

Floats = NDArray[np.float64]
DISTRICT: Final = "lowland mixed farmland"


@dataclass(frozen=True)
class Surroundings:
    """Conditions of each yard from a first day on, [scenario, day, column]."""

    first: date
    tables: Mapping[str, Floats]
    known_to: Mapping[str, date | None]
    climates: tuple[str, ...] = ()
    _prints: dict[int, bytes] = field(default_factory=dict, repr=False, compare=False)

    def season(self, yard: str, first: date, until: date) -> Floats:
        """Give the conditions of a yard from a day up to the day before another."""
        table = self.tables[yard] if yard in self.tables else next(iter(self.tables.values()))
        start, stop = (first - self.first).days, (until - self.first).days
        return table[:, start:stop]

    def fingerprint(self, yard: str) -> bytes:
        """Tell the conditions of a yard from all others."""
        table = self.tables[yard] if yard in self.tables else next(iter(self.tables.values()))
        place = id(table)
        if place not in self._prints:
            self._prints[place] = blake2b(table.tobytes(), digest_size=16).digest()
        return self._prints[place]

    def described(self) -> str:
        """Say in a few words what weather the yards are given."""
        known = [day for day in self.known_to.values() if day is not None]
        sampled = f"sampled from the climate of {' and '.join(self.climates)}"
        if not known:
            return f"none in the book, {sampled}"
        return f"as in the book to {min(known):%d %b %Y}, then {sampled}"


def surroundings(book: Book, first: date, until: date, *, members: int, seed: int) -> Surroundings:
    """Gather the conditions of all yards over a time, up to the day before ``until``.

    Of unknown weather there is one version for each member.
    """
    yards = book.now().yards
    tables, known_to = {}, {}
    climates = dict.fromkeys(climate_of(yard).name for yard in yards.values())
    sampled: dict[str, tuple[Floats, date | None]] = {}
    last = until - timedelta(days=1)
    with book.reading() as db:
        kept = named_places(db)
        for name, yard in yards.items():
            place, plants = climate_of(yard), plants_of(yard)
            # yards without weather of their own share that of their place
            known = weather_between(db, name, first, last) if name in kept else None
            key = f"{place.name if known is None else name} / {yard.district}"
            if key not in sampled:
                if known is None:
                    known = weather_between(db, place.name, first, last)
                made = yard_conditions(
                    place, known, first, until, members=members, seed=seed, plants=plants
                )
                sampled[key] = (made, known.last if known is not None else None)
            tables[name], known_to[name] = sampled[key]
    if not tables:
        place = climate_of(None)
        tables[""] = yard_conditions(place, None, first, until, members=members, seed=seed)
        known_to[""] = None
        climates[place.name] = None
    return Surroundings(first, tables, known_to, tuple(climates))


def yard_weather(
    book: Book, yard: str, first: date, until: date, *, versions: int, seed: int
) -> DailyWeather:
    """Give the weather of a yard: what is known of it, and sampled where it is not."""
    noted = book.now().yards
    place = climate_of(noted.get(yard))
    with book.reading() as db:
        last = until - timedelta(days=1)
        known = weather_between(db, yard, first, last)
        known = known if known is not None else weather_between(db, place.name, first, last)
    return _weather(place, known, first, until, members=versions, seed=seed)


def yard_conditions(
    place: Climate,
    known: DailyWeather | None,
    first: date,
    until: date,
    *,
    members: int,
    seed: int,
    plants: tuple[Plant, ...] | None = None,
) -> Floats:
    """Give conditions of a yard in as many versions as there are members.

    The days that are known are the same in all; each has its own luck with the flowers, because
    nobody measures the flow.
    """
    weather = _weather(place, known, first, until, members=members, seed=seed)
    nectar, pollen = forage_index(plants or calendar(DISTRICT), weather, place, seed=seed)
    return conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)


def _weather(
    place: Climate,
    known: DailyWeather | None,
    first: date,
    until: date,
    *,
    members: int,
    seed: int,
) -> DailyWeather:
    days = (until - first).days
    if known is None:
        return generate(place, first, days, members, seed)
    onward = max(0, (until - known.last).days - 1)
    known = continue_from(known, place, onward, members, seed)
    lead = (known.first - first).days
    return known if lead <= 0 else _preceded(known, generate(place, first, lead, members, seed))


def _preceded(known: DailyWeather, before: DailyWeather) -> DailyWeather:
    """Put sampled days before known ones."""
    versions = before.scenarios

    def joined(early: Floats, late: Floats) -> Floats:
        wide = np.broadcast_to(late, (versions, late.shape[1])) if len(late) == 1 else late
        return np.concatenate([early, wide], axis=1)

    return DailyWeather(
        before.first,
        joined(before.t_max_c, known.t_max_c),
        joined(before.t_min_c, known.t_min_c),
        joined(before.rain_mm, known.rain_mm),
        joined(before.sun_h, known.sun_h),
        joined(before.wind_m_s, known.wind_m_s),
    )

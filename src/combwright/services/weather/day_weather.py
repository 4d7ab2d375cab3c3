"""The weather of the day of a round, where the book knows it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import weather_of_day
from combwright.science.flight.flight_hours import flight_hours
from combwright.services.weather.known_places import climate_of
from combwright.services.weather.open_hours import OPENED_FROM_C, clock, open_hours
from combwright.terms.entries import Yard

TOO_COLD: Final = f"Too cold to open, under {OPENED_FROM_C:.0f} °C all day."


@dataclass(frozen=True, slots=True)
class DayWeather:
    """One day at one yard."""

    yard: str
    t_min_c: float
    t_max_c: float
    rain_mm: float
    sun_h: float
    wind_m_s: float
    flight_h: float
    open_hours: tuple[int, int] | None

    @property
    def in_words(self) -> str:
        """Say it in a line."""
        said = (
            f"{self.t_min_c:.0f} to {self.t_max_c:.0f} °C, {self.sun_h:.0f} h of sun, "
            f"{self.rain_mm:.0f} mm of rain, wind {self.wind_m_s:.0f} m/s; "
            f"bees can fly for about {self.flight_h:.0f} h"
        )
        if self.open_hours is None:
            return f"{TOO_COLD} {said}"
        first, last = (clock(hour) for hour in self.open_hours)
        return f"Fit to open from {first} to {last}. {said}"


def day_weather(book: Book, yards: Mapping[str, Yard], on: date) -> list[DayWeather]:
    """Give the weather of a day at the yards for which the book has it."""
    with book.reading() as db:
        known = weather_of_day(db, on)
    found = []
    for name, yard in yards.items():
        # what is kept under the climate's name counts for all its yards
        day = known.get(name) or known.get(yard.climate)
        if day is not None:
            place = climate_of(yard)
            latitude, longitude = place.latitude_deg, place.longitude_deg
            high, low, rain, sun, wind = day
            flying = flight_hours(on.timetuple().tm_yday, latitude, *day)
            fit = open_hours(on, low, high, latitude_deg=latitude, longitude_deg=longitude)
            found.append(DayWeather(name, low, high, rain, sun, wind, float(flying), fit))
    return found


def is_too_cold(book: Book, yard: str, on: date) -> bool:
    """Tell whether no hive of a yard is opened on a day, as far as the book knows its weather."""
    known = {name: each for name, each in book.now().yards.items() if name == yard}
    return any(each.open_hours is None for each in day_weather(book, known, on))


def weather_lines(
    book: Book, known: Mapping[str, Yard], on: date, yards: Sequence[str]
) -> list[str]:
    """Say the weather of a day once for all yards that share it."""
    mine = {name: known[name] for name in yards if name in known}
    told: dict[str, list[str]] = {}
    for each in day_weather(book, mine, on):
        told.setdefault(each.in_words, []).append(each.yard)
    return [
        f"{', '.join(names)}: {words}." if len(told) > 1 else f"{words}."
        for words, names in told.items()
    ]

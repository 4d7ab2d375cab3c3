"""What a person can ask of the weather: look at it, keep it in the book, fetch a forecast."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import keep_weather, places_with_weather
from combwright.science.flight.flight_hours import flight_hours
from combwright.sources.days import Read, runs
from combwright.sources.source_files import read_weather
from combwright.sources.table import write_table
from combwright.terms.entries import Yard
from combwright.terms.errors import NotFoundError, SourceError
from combwright.terms.weather import DailyWeather
from combwright.weather.climate import Climate
from combwright.weather.climates import climate
from combwright.weather.conditions import day_of_year
from combwright.weather.generator import generate

if TYPE_CHECKING:
    from combwright.sources.forecast import Forecast

VERSIONS, SEED = 200, 1
WEEK = 7
LARGEST_BYTES = 50_000_000


@dataclass(frozen=True, slots=True)
class WeatherSpread:
    """The middle of several versions, and what nine of ten lie between; alike when known."""

    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True)
class Week:
    """Seven days, or what is left of them: means by day, rain by week."""

    first: date
    days: int
    t_max_c: WeatherSpread
    t_min_c: WeatherSpread
    rain_mm: WeatherSpread
    dry_days: WeatherSpread
    sun_h: WeatherSpread
    flight_h: WeatherSpread


@dataclass(frozen=True, slots=True)
class Outlook:
    """Weather by week, where it comes from, and what is to be said of it."""

    source: str
    attribution: str
    weeks: tuple[Week, ...]
    remarks: tuple[str, ...]
    sampled: bool


@dataclass(frozen=True, slots=True)
class KnownWeather:
    """Weather of one place as the book has it."""

    place: str
    first: date
    last: date
    source: str
    days: int


@dataclass(frozen=True, slots=True)
class KeptWeather:
    """What became of days of weather: how many the book holds now, and what was said."""

    place: str
    days: int
    first: date
    last: date
    remarks: tuple[str, ...]


def weather_places(book: Book) -> list[KnownWeather]:
    """List the places of which the book has weather, from where and how old."""
    with book.reading() as db:
        return [KnownWeather(*row) for row in places_with_weather(db)]


def sampled_outlook(name: str, first: date, days: int) -> Outlook:
    """Show what the climate of a place may bring, in 200 versions."""
    place = climate(name)
    weather = generate(place, first, days, VERSIONS, SEED)
    remark = f"sampled in {VERSIONS} versions; {place.basis}"
    return Outlook(place.name, place.attribution, _weeks(weather, place), (remark,), sampled=True)


def file_outlook(path: Path, name: str) -> Outlook:
    """Show the weather of a file; of the climate comes what sunshine and wind it lacks."""
    place = climate(name)
    read = read_file(path)
    weeks = tuple(week for run in runs(read, place) for week in _weeks(run, place))
    return Outlook(read.source, read.attribution, weeks, _remarks(read, place), sampled=False)


def sampled_table(name: str, first: date, days: int) -> str:
    """Give one version of what a climate may bring as a table, day by day."""
    return write_table(generate(climate(name), first, days, 1, SEED))


def file_table(path: Path, name: str) -> str:
    """Give the weather of a file of any known kind as a table, day by day."""
    return write_table(*runs(read_file(path), climate(name)))


def add_file(book: Book, path: Path, place: str | None, yard: str | None, name: str) -> KeptWeather:
    """Keep the weather of a file in the book, for a yard or for all yards of a climate.

    Adding a file twice changes nothing; a day that was there is replaced. It is kept for the
    climate where neither a place nor a yard is given.
    """
    read = read_file(path)
    return _keep(book, place, yard, name, lambda _: (read, ()))


def add_forecast(
    book: Book, yard: str, fetch: Callable[[float, float], "Forecast"], now: datetime
) -> KeptWeather:
    """Fetch the forecast of a yard and keep its days from today on in the book."""

    def ask(found: Yard | None) -> tuple[Read, tuple[str, ...]]:
        if found is None or found.latitude is None or found.longitude is None:
            raise NotFoundError(
                f"The book does not say where the yard “{yard}” lies.",
                remedy="Note its latitude and longitude, or add a file of weather.",
            )
        told = fetch(found.latitude, found.longitude)
        ahead = tuple(day for day in told.read.days if day.on >= now.date())
        if not ahead:
            raise SourceError("The forecast holds no day from today on.", where=told.read.source)
        read = Read(ahead, (), told.read.source, told.attribution)
        return read, ((told.note,) if told.note else ())

    return _keep(book, None, yard, "", ask)


def read_file(path: Path) -> Read:
    """Read a file of weather, or say why it cannot be read."""
    try:
        if path.stat().st_size > LARGEST_BYTES:
            raise SourceError(
                "This file is larger than any weather.",
                where=str(path),
                remedy="Give the file of one station.",
            )
        return read_weather(path.read_text("utf-8"), path.name)
    except UnicodeDecodeError as error:
        raise SourceError(
            "This is no UTF-8 text.", where=str(path), remedy="Save it again as UTF-8."
        ) from error
    except OSError as error:
        raise SourceError(
            f"It cannot be read: {error.strerror}.",
            where=str(path),
            remedy="Check its name, and that you may read it.",
        ) from error


def _keep(
    book: Book,
    place: str | None,
    yard: str | None,
    name: str,
    ask: Callable[[Yard | None], tuple[Read, tuple[str, ...]]],
) -> KeptWeather:
    found = _yard(book.now().yards, yard) if yard is not None else None
    usual = climate(found.climate if found is not None else name)
    read, notes = ask(found)
    target = place or yard or usual.name
    stretches = runs(read, usual)
    with book.writing() as db:
        days = sum(keep_weather(db, target, run, read.source) for run in stretches)
    remarks = (*notes, *_remarks(read, usual))
    return KeptWeather(target, days, stretches[0].first, stretches[-1].last, remarks)


def _yard(yards: Mapping[str, Yard], name: str) -> Yard:
    if name not in yards:
        known = ", ".join(sorted(yards)) or "none yet"
        raise NotFoundError(f"There is no yard “{name}” in the book.", remedy=f"Yards: {known}.")
    return yards[name]


def _remarks(read: Read, usual: Climate) -> tuple[str, ...]:
    said = [str(problem) for problem in read.problems]
    for quantity, words in (("sun_h", "sunshine"), ("wind_m_s", "wind")):
        unknown = read.unknown(quantity)
        if unknown:
            said.append(
                f"{unknown} day{'s' * (unknown > 1)} without {words}: the usual of {usual.name} "
                "stands in."
            )
    return tuple(said)


def _weeks(weather: DailyWeather, place: Climate) -> tuple[Week, ...]:
    flight = flight_hours(
        day_of_year(weather),
        place.latitude_deg,
        weather.t_max_c,
        weather.t_min_c,
        weather.rain_mm,
        weather.sun_h,
        weather.wind_m_s,
    )
    found = []
    for start in range(0, weather.days, WEEK):
        days = slice(start, min(start + WEEK, weather.days))
        found.append(
            Week(
                weather.first + timedelta(days=start),
                days.stop - start,
                _spread(weather.t_max_c[:, days].mean(axis=1)),
                _spread(weather.t_min_c[:, days].mean(axis=1)),
                _spread(weather.rain_mm[:, days].sum(axis=1)),
                _spread((weather.rain_mm[:, days] < 1).sum(axis=1)),
                _spread(weather.sun_h[:, days].mean(axis=1)),
                _spread(flight[:, days].mean(axis=1)),
            )
        )
    return tuple(found)


def _spread(values: NDArray[Any]) -> WeatherSpread:
    low, middle, high = (float(value) for value in np.quantile(values, [0.05, 0.5, 0.95]))
    return WeatherSpread(round(low, 1), round(middle, 1), round(high, 1))

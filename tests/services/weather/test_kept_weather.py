"""Weather as a service: what is kept, for whom, and what is said of it."""

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from uuid import uuid4

import pytest

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import weather_between
from combwright.services.book.book import add_entries
from combwright.services.weather.kept_weather import (
    add_file,
    add_forecast,
    file_outlook,
    read_file,
    sampled_outlook,
)
from combwright.sources.forecast import Forecast
from combwright.terms.entries import Yard
from combwright.terms.errors import CombwrightError, NotFoundError, SourceError
from combwright.terms.weather import DailyWeather

FILES = Path(__file__).parents[2] / "data" / "weather"
NOW = datetime(2025, 5, 3, 6, tzinfo=UTC)


@pytest.fixture
def book(tmp_path: Path) -> Book:
    """A book with one yard near Cork."""
    opened = Book(tmp_path / "one.book")
    home = Yard(
        id=uuid4(),
        on=date(2025, 1, 1),
        yard="Home",
        climate="Cork Airport",
        latitude=51.9,
        longitude=-8.5,
    )
    lost = Yard(id=uuid4(), on=date(2025, 1, 1), yard="Somewhere")
    add_entries(opened, [home, lost])
    return opened


def kept(book: Book, place: str) -> DailyWeather | None:
    with book.reading() as db:
        return weather_between(db, place, date(2025, 1, 1), date(2025, 12, 31))


def test_a_file_is_kept_for_a_yard_and_adding_it_twice_changes_nothing(book: Book) -> None:
    first = add_file(book, FILES / "open_meteo_daily.json", None, "Home", "Dublin")
    again = add_file(book, FILES / "open_meteo_daily.json", None, "Home", "Dublin")
    assert first == again
    assert (first.place, first.days) == ("Home", 2)
    weather = kept(book, "Home")
    assert weather is not None
    assert weather.t_max_c.tolist() == [[15.2, 14.0]]
    assert "3 May 2025 has no value" in " ".join(first.remarks)


def test_without_a_yard_it_is_kept_for_the_climate(book: Book) -> None:
    told = add_file(book, FILES / "met_eireann_daily.csv", None, None, "valentia")
    assert told.place == "Valentia Observatory"
    assert told.days == 3
    assert "2 days missing; none was made up" in " ".join(told.remarks)


def test_what_stands_in_for_missing_sunshine_and_wind_is_said(book: Book, tmp_path: Path) -> None:
    path = tmp_path / "few.csv"
    path.write_text("date,tmax_c,tmin_c,rain_mm\n2025-05-01,15,6,0\n", "utf-8")
    told = add_file(book, path, None, "Home", "Dublin")
    assert told.remarks == (
        "1 day without sunshine: the usual of Cork Airport stands in.",
        "1 day without wind: the usual of Cork Airport stands in.",
    )


def forecast_of(note: str = "") -> Callable[[float, float], Forecast]:
    def fetch(latitude: float, longitude: float) -> Forecast:
        assert (latitude, longitude) == (51.9, -8.5)
        read = read_file(FILES / "met_norway.json")
        return Forecast(read, NOW, timedelta(0), note)

    return fetch


def test_of_a_forecast_the_days_to_come_are_kept(book: Book) -> None:
    told = add_forecast(book, "Home", forecast_of("This forecast is 7 hours old."), NOW)
    assert (told.first, told.last, told.days) == (date(2025, 5, 3), date(2025, 5, 4), 2)
    assert "This forecast is 7 hours old." in told.remarks
    weather = kept(book, "Home")
    assert weather is not None
    assert weather.first == date(2025, 5, 3)


def test_a_forecast_that_is_past_is_not_kept(book: Book) -> None:
    with pytest.raises(SourceError, match="no day from today on"):
        add_forecast(book, "Home", forecast_of(), NOW + timedelta(days=9))
    assert kept(book, "Home") is None


@pytest.mark.parametrize("yard", ["Somewhere", "Nowhere"])
def test_a_yard_without_a_place_has_no_forecast(book: Book, yard: str) -> None:
    with pytest.raises(NotFoundError):
        add_forecast(book, yard, forecast_of(), NOW)


def test_the_outlook_of_a_climate_is_a_range_and_of_a_file_a_number() -> None:
    sampled = sampled_outlook("Dublin", date(2026, 7, 1), 20)
    assert [week.days for week in sampled.weeks] == [7, 7, 6]
    assert all(week.rain_mm.low < week.rain_mm.high for week in sampled.weeks)
    known = file_outlook(FILES / "open_meteo_daily.json", "Dublin")
    (week,) = known.weeks
    assert week.rain_mm.low == week.rain_mm.high == 3.4
    assert "CC BY 4.0" in known.attribution


@pytest.mark.parametrize(
    ("content", "said"),
    [(None, "cannot be read"), (b"\xff\xfe\x00", "no UTF-8 text"), (b"", "no weather file")],
)
def test_a_file_that_cannot_be_read_is_explained(
    book: Book, tmp_path: Path, content: bytes | None, said: str
) -> None:
    path = tmp_path / "x.csv"
    if content is not None:
        path.write_bytes(content)
    with pytest.raises(CombwrightError, match=said):
        add_file(book, path, None, "Home", "Dublin")
    assert kept(book, "Home") is None

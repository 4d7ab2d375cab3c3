"""Weather around the yards: what is known is used, what is not is sampled, each day once."""

from datetime import date, timedelta
from pathlib import Path
from uuid import uuid4

import numpy as np
import pytest
from numpy.typing import NDArray

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import keep_weather
from combwright.services.book.book import add_entries
from combwright.services.weather.known_places import climate_of
from combwright.services.weather.surroundings import surroundings
from combwright.terms.entries import Yard
from combwright.weather.climates import climate
from combwright.weather.conditions import DAY, MAX_C
from combwright.weather.generator import generate

FIRST = date(2027, 4, 1)
UNTIL = FIRST + timedelta(days=30)
MEMBERS = 12
YARDS = [
    Yard(id=uuid4(), on=FIRST, yard="Top", climate="Dublin Airport"),
    Yard(id=uuid4(), on=FIRST, yard="Low", climate="Valentia Observatory"),
]


@pytest.fixture
def book(tmp_path: Path) -> Book:
    made = Book(tmp_path / "a.book")
    add_entries(made, YARDS)
    return made


def keep(book: Book, days: int, first: date = FIRST) -> NDArray[np.float64]:
    known = generate(climate("Dublin Airport"), first, days, 1, 99)
    with book.writing() as db:
        keep_weather(db, "Top", known, "a test")
    return np.asarray(known.t_max_c[0].round(1))


def test_every_yard_has_every_day_once(book: Book) -> None:
    around = surroundings(book, FIRST, UNTIL, members=MEMBERS, seed=1)
    for yard in ("Top", "Low"):
        season = around.season(yard, FIRST, UNTIL)
        assert season.shape[:2] == (MEMBERS, 30)
        assert np.isfinite(season).all()
        assert (np.diff(season[0, :, DAY]) == 1.0).all()
    assert around.described().startswith("none in the book, sampled from the climate of ")
    assert all(climate_of(yard).name in around.described() for yard in book.now().yards.values())


def test_known_days_are_the_same_for_all_and_later_ones_differ(book: Book) -> None:
    known = keep(book, 20)
    around = surroundings(book, FIRST, UNTIL, members=MEMBERS, seed=1)
    highs = around.season("Top", FIRST, UNTIL)[:, :, MAX_C]
    np.testing.assert_allclose(highs[:, :20], np.tile(known, (MEMBERS, 1)), atol=0.051)
    assert (highs[:, 20:].std(axis=0) > 0.0).all()
    assert "20 Apr 2027" in around.described()


def test_days_before_the_known_ones_are_sampled(book: Book) -> None:
    known = keep(book, 10, FIRST + timedelta(days=10))
    around = surroundings(book, FIRST, UNTIL, members=MEMBERS, seed=1)
    highs = around.season("Top", FIRST, UNTIL)[:, :, MAX_C]
    assert (highs[:, :10].std(axis=0) > 0.0).all()
    np.testing.assert_allclose(highs[0, 10:20], known, atol=0.051)


def test_a_part_of_the_season_is_the_same_days(book: Book) -> None:
    around = surroundings(book, FIRST, UNTIL, members=MEMBERS, seed=1)
    whole = around.season("Low", FIRST, UNTIL)
    part = around.season("Low", FIRST + timedelta(days=5), FIRST + timedelta(days=9))
    np.testing.assert_array_equal(part, whole[:, 5:9])


def test_a_book_without_yards_is_given_a_climate(tmp_path: Path) -> None:
    around = surroundings(Book(tmp_path / "empty.book"), FIRST, UNTIL, members=MEMBERS, seed=1)
    assert around.season("any", FIRST, UNTIL).shape[:2] == (MEMBERS, 30)


def test_the_same_seed_gives_the_same_weather(book: Book) -> None:
    one, two, other = (
        surroundings(book, FIRST, UNTIL, members=MEMBERS, seed=seed).season("Top", FIRST, UNTIL)
        for seed in (1, 1, 2)
    )
    np.testing.assert_array_equal(one, two)
    assert not np.array_equal(one, other)

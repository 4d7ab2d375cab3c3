from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.postgres import Places

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import keep_weather, longest_run, weather_between
from combwright.terms.errors import OutOfRangeError
from combwright.terms.weather import DailyWeather

FIRST = date(2026, 4, 1)


def weather(
    days: int, first: date = FIRST, warmer: float = 0.0, scenarios: int = 1
) -> DailyWeather:
    series = np.tile(np.arange(days, dtype=np.float64), (scenarios, 1))
    return DailyWeather(first, series + 10 + warmer, series, series / 10, series / 5, series / 3)


def same(one: DailyWeather, other: DailyWeather) -> bool:
    names = ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")
    return one.first == other.first and all(
        np.array_equal(getattr(one, name), getattr(other, name)) for name in names
    )


def test_weather_is_read_back_as_it_was_kept(places: Places) -> None:
    book = Book(places("a.book"))
    with book.writing() as db:
        assert keep_weather(db, "Mill Lane", weather(9), "station") == 9
    with book.reading() as db:
        found = weather_between(db, "Mill Lane", FIRST, FIRST + timedelta(days=99))
        assert found is not None
        assert same(found, weather(9))
        assert weather_between(db, "Elsewhere", FIRST, FIRST) is None


def test_a_measurement_replaces_a_forecast(places: Places) -> None:
    book = Book(places("a.book"))
    with book.writing() as db:
        keep_weather(db, "Mill Lane", weather(9), "forecast")
        keep_weather(db, "Mill Lane", weather(9, warmer=2), "station")
        found = weather_between(db, "Mill Lane", FIRST, FIRST + timedelta(days=8))
    assert found is not None
    assert same(found, weather(9, warmer=2))


def test_a_gap_ends_a_run_and_the_longest_is_given(places: Places) -> None:
    book = Book(places("a.book"))
    later = FIRST + timedelta(days=5)
    with book.writing() as db:
        keep_weather(db, "Mill Lane", weather(4), "station")
        keep_weather(db, "Mill Lane", weather(6, later), "station")
        found = weather_between(db, "Mill Lane", FIRST, FIRST + timedelta(days=99))
    assert found is not None
    assert same(found, weather(6, later))


def test_several_versions_of_the_past_are_refused(places: Places) -> None:
    with (
        pytest.raises(OutOfRangeError, match="2 versions"),
        Book(places("a.book")).writing() as db,
    ):
        keep_weather(db, "Mill Lane", weather(4, scenarios=2), "generator")


def test_missing_numbers_are_refused(places: Places) -> None:
    broken = weather(4)
    broken.rain_mm[0, 2] = np.nan
    with (
        pytest.raises(OutOfRangeError, match="missing numbers"),
        Book(places("a.book")).writing() as db,
    ):
        keep_weather(db, "Mill Lane", broken, "station")


@given(st.sets(st.integers(0, 40), min_size=1))
def test_the_longest_run_is_unbroken_and_no_other_is_longer(chosen: set[int]) -> None:
    days = [FIRST + timedelta(days=at) for at in sorted(chosen)]
    run = longest_run(days)
    picked = days[run.start : run.stop]
    assert (picked[-1] - picked[0]).days == len(picked) - 1
    for start in range(len(days)):
        for stop in range(start + len(run) + 1, len(days) + 1):
            assert (days[stop - 1] - days[start]).days > stop - 1 - start

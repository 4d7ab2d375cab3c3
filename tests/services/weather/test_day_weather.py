"""The weather of a day, and from when to when a hive can be opened in it."""

from datetime import date
from pathlib import Path

import numpy as np
import pytest

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import keep_weather
from combwright.services.weather.day_weather import weather_lines
from combwright.services.weather.open_hours import open_hours
from combwright.terms.entries import Yard
from combwright.terms.weather import DailyWeather

DAY = date(2027, 4, 24)
YARDS = {
    name: Yard(id=f"00000000-0000-0000-0000-00000000000{at}", on=DAY, yard=name)
    for at, name in enumerate(("Home", "Hill"))
}


@pytest.mark.parametrize(("high", "said"), [(16.0, "Fit to open from "), (9.0, "Too cold to open")])
def test_the_weather_is_said_once_for_yards_that_share_it(
    tmp_path: Path, high: float, said: str
) -> None:
    book = Book(tmp_path / "own.book")
    one = np.ones((1, 1))
    weather = DailyWeather(DAY, high * one, 5 * one, 0 * one, 6 * one, 3 * one)
    with book.writing() as db:
        keep_weather(db, "Dublin Airport", weather, "a thermometer")
    (line,) = weather_lines(book, YARDS, DAY, list(YARDS))
    assert line.startswith(said)
    book.close()


@pytest.mark.parametrize("colder", [0.0, 1.0, 2.0])
def test_a_colder_day_is_never_fit_for_longer(colder: float) -> None:
    def hours(high: float) -> int:
        found = open_hours(DAY, 5.0, high, latitude_deg=53.4, longitude_deg=-6.2)
        return 0 if found is None else found[1] - found[0]

    assert hours(16.0 - colder) <= hours(16.0)

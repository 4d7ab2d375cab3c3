"""What a day brings, from its weather."""

from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.terms.weather import DailyWeather
from combwright.weather.conditions import MEAN_C, NIGHT_C, conditions, mating_chance

FIRST = date(2026, 6, 1)


def day(*, warm_c: float = 22.0, sun_h: float = 8.0, wind: float = 2.0) -> DailyWeather:
    one = [np.full((1, 1), value) for value in (warm_c, 11.0, 0.0, sun_h, wind)]
    return DailyWeather(FIRST, *one)


@given(st.floats(11, 30), st.floats(0, 16), st.floats(0, 15))
def test_a_mating_flight_needs_sun_and_little_wind(warm_c: float, sun: float, wind: float) -> None:
    chance = mating_chance(day(warm_c=warm_c, sun_h=sun, wind=wind))[0, 0]
    assert 0.0 <= chance <= 1.0
    assert chance <= mating_chance(day(warm_c=warm_c, sun_h=sun + 1, wind=wind))[0, 0]
    assert chance >= mating_chance(day(warm_c=warm_c, sun_h=sun, wind=wind + 1))[0, 0]
    assert chance <= mating_chance(day(warm_c=warm_c + 1, sun_h=sun, wind=wind))[0, 0]


@pytest.mark.parametrize("spoilt", [{"warm_c": 14.0}, {"sun_h": 0.0}, {"wind": 10.0}])
def test_one_thing_amiss_keeps_her_in(spoilt: dict[str, float]) -> None:
    assert mating_chance(day()) == 1.0
    assert mating_chance(day(**spoilt)) == 0.0


def test_nights_lie_between_the_mean_and_the_lowest() -> None:
    table = conditions(day(), np.zeros((1, 1)), np.zeros((1, 1)), latitude_deg=53.0)
    assert table[0, 0, MEAN_C] == pytest.approx(16.5)
    assert 11.0 < table[0, 0, NIGHT_C] < 16.5

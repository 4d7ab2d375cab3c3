"""Virgins under the weather: a better or a worse fortnight than usual moves what is expected."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.planning.supply.mating import MatingWeather, mating
from combwright.science.queens.mating_success import usual_share

FIRST = date(2027, 5, 1)
USUAL = np.full((1, 80), 0.3)
GIVEN = date(2027, 5, 20)


def under(fit: float, cold: slice = slice(0, 0)) -> MatingWeather:
    days = np.full((1, 80), fit)
    days[:, cold] = 0.0
    return MatingWeather(FIRST, days, USUAL)


def test_usual_weather_gives_the_usual_share() -> None:
    assert mating(under(0.3), GIVEN).lays == pytest.approx(usual_share(GIVEN))


@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_better_weather_never_means_fewer_queens_or_a_longer_wait(one: float, other: float) -> None:
    poor, good = (mating(under(fit), GIVEN) for fit in sorted((one, other)))
    assert good.lays >= poor.lays
    assert good.waits[0] <= poor.waits[0]


def test_a_cold_fortnight_costs_queens_and_days() -> None:
    shut = mating(under(0.3, slice(25, 39)), GIVEN)
    usual = mating(under(0.3), GIVEN)
    assert shut.lays < 0.7 * usual.lays
    assert shut.waits[0] > usual.waits[0]


def test_she_lays_by_a_later_day_at_least_as_likely() -> None:
    found = mating(under(0.3), GIVEN)
    chances = [found.lays_by(GIVEN + timedelta(days=days)) for days in (5, 14, 20, 40)]
    assert chances == sorted(chances)
    assert chances[0] == pytest.approx(0.0, abs=1e-6)
    assert chances[-1] == pytest.approx(found.lays, abs=0.01)


def test_the_keepers_own_luck_moves_the_share() -> None:
    assert mating(under(0.3), GIVEN, 1.2).lays == pytest.approx(1.2 * usual_share(GIVEN))

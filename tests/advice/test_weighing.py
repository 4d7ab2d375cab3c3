"""A near-tie goes to doing nothing, by one rule for every decision."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from combwright.advice.season_ahead import LEAST_GAIN
from combwright.advice.weighing import apart_by

luck = st.integers(0, 10_000).map(lambda seed: np.random.default_rng(seed).normal(size=40))


@given(luck, st.floats(0.1, 50.0))
def test_what_the_members_cannot_tell_apart_is_not_worth_it(one: np.ndarray, spread: float) -> None:
    told = apart_by(spread * (one - one.mean()))
    assert not told.is_worth_it
    assert (told + (3.0 * told.doubt + LEAST_GAIN)).is_worth_it


@given(st.floats(-100.0, 100.0), st.integers(1, 6))
def test_of_what_is_sure_more_than_a_trifle_each_is_asked(money: float, trifles: int) -> None:
    told = apart_by(np.zeros(20)) + money
    assert told.is_worth(trifles) == (money > trifles * LEAST_GAIN)


@given(luck, st.floats(-20.0, 20.0))
def test_money_that_is_sure_moves_the_gain_and_not_the_doubt(one: np.ndarray, sure: float) -> None:
    told = apart_by(one)
    assert (told + sure).doubt == told.doubt
    assert (told + sure).money == told.money + sure

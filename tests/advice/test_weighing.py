"""A near-tie goes to doing nothing, by one rule for every decision."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.advice.situations import Case, situation

from combwright.advice.season_ahead import LEAST_GAIN, Ahead
from combwright.advice.trial import doing
from combwright.advice.weighing import Weighed, apart_by, gain, weigh
from combwright.simulation.ahead.visit import CAME

luck = st.integers(0, 10_000).map(lambda seed: np.random.default_rng(seed).normal(size=40))


@given(luck, st.floats(0.1, 50.0))
def test_what_the_members_cannot_tell_apart_is_not_worth_it(one: np.ndarray, spread: float) -> None:
    told = apart_by(spread * (one - one.mean()))
    assert not told.is_worth_it
    assert replace(told, money=3.0 * told.doubt + LEAST_GAIN + told.money).is_worth_it


@given(st.floats(-100.0, 100.0), st.integers(1, 6))
def test_of_what_is_sure_more_than_a_trifle_each_is_asked(money: float, trifles: int) -> None:
    told = replace(apart_by(np.zeros(20)), money=money)
    assert told.is_worth(trifles) == (money > trifles * LEAST_GAIN)


@given(luck, st.floats(-20.0, 20.0))
def test_money_that_is_sure_moves_the_gain_and_not_the_doubt(one: np.ndarray, sure: float) -> None:
    came = dict.fromkeys(CAME, 0.0)
    left = Weighed(Ahead(np.zeros(len(one)), came), cost=0.0, minutes=0.0)
    plain, moved = (
        gain(Weighed(Ahead(one, came), cost=3.0 - more, minutes=2.0), left) for more in (0.0, sure)
    )
    assert moved.doubt == plain.doubt > 0.0
    assert moved.money == pytest.approx(plain.money + sure, abs=1e-9)


def test_what_is_brought_besides_is_charged_less() -> None:
    at = situation(Case(date(2027, 4, 24), 8.0, 4.0, 6.0, 9))
    idle = doing(at, ())
    paid, brought = weigh(at, [idle, idle], [(), ()], besides=[0.0, 25.0])
    assert brought.money - paid.money == pytest.approx(25.0)
    assert gain(brought, paid).is_worth_it
    assert not gain(paid, brought).is_worth_it

"""Sums that must agree: each is checked, by name, whatever the others say."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation.samples import chance, dublin, usual

from combwright.simulation.run import BALANCES, run
from combwright.simulation.step.balances import BROOD, COMB, WATER, broken_balance

AMOUNTS = st.tuples(*[st.floats(0.0, 50_000.0)] * len(BALANCES))
CHANGES = st.tuples(*[st.floats(0.0, 5_000.0)] * len(BALANCES))
AT_MOST = (WATER, BROOD)  # of these only that nothing is made is checked


def broken(before: tuple[float, ...], change: tuple[float, ...], after: list[float]) -> int:
    bees, sugar, water, _, mites, brood = change
    return broken_balance(before, tuple(after), bees, sugar, water, mites, brood)


def kept(before: tuple[float, ...], change: tuple[float, ...]) -> list[float]:
    after = [held + more for held, more in zip(before, change, strict=True)]
    after[COMB] = before[COMB]  # it is moved and drawn, but never made in a day's step
    return after


@given(AMOUNTS, CHANGES)
def test_sums_that_agree_are_passed(before: tuple[float, ...], change: tuple[float, ...]) -> None:
    assert broken(before, change, kept(before, change)) == 0


@given(AMOUNTS, CHANGES, st.sampled_from(range(len(BALANCES))))
def test_what_is_made_of_nothing_is_found_and_named(
    before: tuple[float, ...], change: tuple[float, ...], which: int
) -> None:
    after = kept(before, change)
    after[which] += 0.1
    assert broken(before, change, after) == which + 1


@given(AMOUNTS, CHANGES, st.sampled_from(range(len(BALANCES))))
def test_what_is_lost_is_found_where_losses_have_a_counter(
    before: tuple[float, ...], change: tuple[float, ...], which: int
) -> None:
    after = kept(before, change)
    after[which] -= 0.1
    assert broken(before, change, after) == (0 if which in AT_MOST else which + 1)


@pytest.mark.parametrize("which", range(len(BALANCES)))
def test_what_is_no_number_agrees_with_nothing(which: int) -> None:
    before = (1.0,) * len(BALANCES)
    after = list(before)
    after[which] = np.nan
    assert broken(before, (0.0,) * len(BALANCES), after) == which + 1


def test_days_without_luck_of_their_own_are_refused() -> None:
    with pytest.raises(ValueError, match="3 days of weather need as many days of luck, not 2"):
        run(usual(members=2), dublin()[:, :3], chance(1, 2, 2))

"""Chance: fixed by seed, colony and day, each process in its own place."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.simulation.luck import NORMAL, UNIFORM, luck

FIRST = date(2026, 3, 20)


def test_every_process_has_a_place_of_its_own() -> None:
    assert sorted([*NORMAL, *UNIFORM]) == list(range(9))


@given(st.integers(0, 2**32), st.text(max_size=8), st.integers(0, 6), st.integers(1, 5))
def test_a_date_has_its_luck_whatever_is_asked_for(
    seed: int, colony: str, lead: int, days: int
) -> None:
    whole = luck(seed, colony, FIRST, lead + days + 2, 3)
    part = luck(seed, colony, FIRST + timedelta(days=lead), days, 3)
    assert (part == whole[:, lead : lead + days]).all()


def test_other_colonies_seeds_and_days_have_other_luck() -> None:
    mine = luck(1, "a", FIRST, 2, 3)
    assert not (mine[:, 0] == mine[:, 1]).any()
    assert not (mine == luck(1, "b", FIRST, 2, 3)).any()
    assert not (mine == luck(2, "a", FIRST, 2, 3)).any()


def test_the_processes_have_the_chance_that_their_use_needs() -> None:
    drawn = luck(5, "many", FIRST, 40, 500).reshape(-1, 9)
    normal, uniform = drawn[:, NORMAL], drawn[:, UNIFORM]
    assert normal.mean(axis=0) == pytest.approx(0.0, abs=0.04)
    assert normal.std(axis=0) == pytest.approx(1.0, abs=0.03)
    assert ((uniform >= 0.0) & (uniform < 1.0)).all()
    assert uniform.mean(axis=0) == pytest.approx(0.5, abs=0.01)
    between = np.corrcoef(drawn.T) - np.eye(9)
    assert np.abs(between).max() < 0.04

"""Combs of stores come out of a nest that is full of them, and of no other."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from tests.advice.situations import Case, situation

from combwright.advice.kit_acts import StoresOut
from combwright.advice.plan import plan
from combwright.advice.trial import doing
from combwright.simulation import observe

FULL = Case(date(2027, 5, 10), 5.0, 1.5, 20.0, 11)
DAYS = [date(2027, month, day) for month, day in ((4, 24), (5, 16), (6, 10), (7, 8))]


@pytest.mark.parametrize("on", DAYS)
@pytest.mark.parametrize("bees", [2.8, 5.0, 7.0])
def test_a_nest_full_of_stores_gives_some_up(on: date, bees: float) -> None:
    full = replace(FULL, on=on, frames_of_bees=bees, frames_of_brood=0.3 * bees, warmer_k=3.0)
    decided = plan(situation(full), with_branches=False)
    is_supered = decided.set_up.supers > 0
    assert is_supered or decided.asks(StoresOut)


@pytest.mark.parametrize("on", DAYS)
def test_one_with_empty_combs_or_few_stores_keeps_them(on: date) -> None:
    for stores in (3.0, 8.0):
        decided = plan(situation(replace(FULL, on=on, stores_kg=stores)), with_branches=False)
        assert not decided.asks(StoresOut)


def test_stores_are_left_for_winter_from_mid_august() -> None:
    assert not plan(situation(replace(FULL, on=date(2027, 8, 20)))).asks(StoresOut)


def test_so_many_full_combs_are_missing_afterwards_and_no_brood() -> None:
    at = situation(FULL)
    after = at.colonies.copy()
    doing(at, (StoresOut(combs=2),))(after)
    gone = observe.stores_kg(at.colonies) - observe.stores_kg(after)
    assert gone == pytest.approx(2.0 * at.standing.hive.frame.stores_full_kg, rel=0.15)
    assert np.array_equal(observe.brood(after), observe.brood(at.colonies))
    assert np.array_equal(after["drawn"], at.colonies["drawn"])

"""Honey: what is taken is what lies in the supers that come off."""

from dataclasses import replace
from datetime import date

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.deciding import Deciding
from combwright.advice.decisions.honey import decide, full_super_kg
from combwright.advice.kit_acts import SuperOff
from combwright.advice.plan import plan
from combwright.advice.situation import HoneyWaits
from combwright.advice.stacking import set_up_after
from combwright.simulation import observe

JULY, AUGUST = date(2027, 7, 5), date(2027, 8, 10)


def test_one_of_two_full_supers_is_taken_with_no_more_than_it_holds() -> None:
    at = situation(Case(JULY, 12.0, 6.0, 10.0, 11, supers=2, honey_above_kg=24.0))
    (taken,) = Deciding(at).of(decide).asks(SuperOff)
    assert taken.supers == 1
    assert 0.8 * full_super_kg(at) < taken.honey_kg <= full_super_kg(at)


def test_in_august_all_come_off_with_all_that_is_in_them() -> None:
    at = situation(Case(AUGUST, 12.0, 6.0, 10.0, 11, supers=2, honey_above_kg=15.0))
    (taken,) = Deciding(at).of(decide).asks(SuperOff)
    assert taken.supers == 2
    assert taken.honey_kg == pytest.approx(15.0, rel=0.05)


def test_what_is_not_taken_stays_in_the_super_that_stays() -> None:
    at = situation(Case(JULY, 12.0, 6.0, 10.0, 11, supers=2, honey_above_kg=24.0))
    had = float(observe.honey_above_kg(at.colonies).mean())
    left = at.after_harvest(
        set_up_after(at.standing.set_up, plan(at).asks(SuperOff)), full_super_kg(at)
    )
    rest = float(observe.honey_above_kg(left.colonies).mean())
    assert rest == pytest.approx(had - full_super_kg(at), rel=0.05)


@pytest.mark.parametrize("on", [date(2027, 6, 25), JULY, date(2027, 7, 25)])
@pytest.mark.parametrize(
    ("supers", "honey_kg", "taken"), [(2, 8.0, 0), (2, 13.0, 1), (3, 13.0, 1), (3, 26.0, 2)]
)
def test_full_supers_are_taken_though_others_are_not(
    on: date, supers: int, honey_kg: float, taken: int
) -> None:
    at = situation(Case(on, 11.0, 4.0, 12.0, 11, supers=supers, honey_above_kg=honey_kg))
    told = plan(at, with_branches=False)
    off = sum(each.supers for each in told.asks(SuperOff))
    assert off == taken
    assert told.set_up.supers <= supers


def test_honey_that_waits_is_not_taken_and_that_is_said() -> None:
    case = Case(AUGUST, 12.0, 6.0, 10.0, 11, supers=2, honey_above_kg=15.0)
    at = replace(situation(case), honey_waits=HoneyWaits(date(2027, 9, 3), "Example strip"))
    decided = Deciding(at).of(decide)
    assert not decided.asks(SuperOff)
    assert decided.is_told
    assert "Take no honey before 3 Sep" in decided.because[0]

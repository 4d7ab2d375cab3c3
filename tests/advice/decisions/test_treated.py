"""After a treatment: what comes out when, what is counted, and how well it worked."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.actions import of_kind
from combwright.advice.decisions.treated import Treated, treated
from combwright.advice.kit_acts import Counting, TakeOut
from combwright.simulation.hands.actions import treatment_courses
from combwright.terms.entries import Noted, TrayCount, Treatment, Visit

BEGUN = date(2027, 8, 12)
THYMOL_DAYS = int(treatment_courses()["thymol"]["days"])
ENDS = BEGUN + timedelta(days=THYMOL_DAYS)


def _after(days: int, *more: Noted, substance: str = "thymol") -> Treated:
    """Follow a treatment up some days after its end."""
    case = Case(ENDS + timedelta(days=days), 8.0, 3.0, 15.0, 11)
    begun = Treatment.model_validate(
        {"id": UUID(int=9), "on": BEGUN, "colony": "colony", "substance": substance}
    )
    return treated(replace(situation(case), history=(begun, *more)))


def _tray(on: date, mites: int, days: float = 5.0) -> TrayCount:
    key = UUID(int=on.toordinal())
    return TrayCount(id=key, on=on, colony="colony", mites=mites, days=days)


def _seen(on: date) -> Visit:
    return Visit(id=UUID(int=3), on=on, colony="colony")


def test_nothing_is_said_where_nothing_was_treated() -> None:
    assert treated(situation(Case(BEGUN, 8.0, 3.0, 15.0, 11))) == Treated()


def test_what_was_put_in_comes_out_when_its_time_is_up() -> None:
    assert of_kind(_after(-7).actions, TakeOut)
    assert of_kind(_after(2).actions, TakeOut)[0].is_due


def test_it_is_not_asked_for_again_once_the_hive_was_opened() -> None:
    assert not of_kind(_after(14, _seen(ENDS + timedelta(days=7))).actions, TakeOut)


@pytest.mark.parametrize("days", [0, 1, 5])
def test_it_is_not_asked_for_again_where_it_came_out_on_its_day(days: int) -> None:
    assert not of_kind(_after(days, _seen(ENDS)).actions, TakeOut)
    assert of_kind(_after(days, _seen(ENDS - timedelta(days=1))).actions, TakeOut)


def test_an_acid_that_was_trickled_does_not_come_out() -> None:
    days = int(treatment_courses()["oxalic acid"]["days"]) - THYMOL_DAYS
    assert not of_kind(_after(days, substance="oxalic acid").actions, TakeOut)


def test_a_count_is_asked_for_after_the_end_until_there_is_one() -> None:
    assert of_kind(_after(3).actions, Counting)
    assert not of_kind(_after(8, _tray(ENDS + timedelta(7), 4)).actions, Counting)


def test_efficacy_is_told_from_the_fall_before_and_after() -> None:
    """A fall of 20 a day that goes to 1 is 95 % killed before growth is reckoned with."""
    told = _after(10, _tray(BEGUN, 100), _tray(ENDS + timedelta(days=6), 5))
    assert told.inputs["killed_percent_without_growth"] == 95.0
    assert told.inputs["killed_percent"] > 95.0
    assert "another substance" not in " ".join(told.because)


def test_a_treatment_that_failed_is_called_so() -> None:
    told = _after(10, _tray(BEGUN, 100), _tray(ENDS + timedelta(days=6), 60))
    assert "another substance" in " ".join(told.because)


def test_a_count_begun_before_the_end_tells_nothing() -> None:
    assert not _after(3, _tray(BEGUN, 100), _tray(ENDS + timedelta(days=2), 5)).inputs

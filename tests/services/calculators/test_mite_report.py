from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.mites.counts import BroodState
from combwright.science.mites.treatments import LABEL
from combwright.services.calculators.mite_report import Circumstances, MiteCount, assess
from combwright.terms.errors import OutOfRangeError

AUGUST = date(2026, 8, 15)
Day = st.dates(date(2024, 1, 1), date(2028, 12, 31))
STATES: list[BroodState] = ["brood", "no brood", "not known"]


@given(st.integers(0, 500), st.floats(0.5, 14), Day, st.sampled_from(STATES))
def test_every_report_is_whole(mites: int, days: float, on: date, brood: BroodState) -> None:
    report = assess(MiteCount(mites, on, days=days), Circumstances(brood))
    assert report.mites.low <= report.mites.mid <= report.mites.high
    assert report.sources
    assert LABEL in report.advice
    assert [each.on for each in report.expected] == sorted(each.on for each in report.expected)


# Delaplane & Hood 1997: 24 808 bees, 3172 mites, 117 on an overnight insert, 15 in 300 bees.
def test_tray_and_wash_of_one_colony_agree_with_all_its_mites() -> None:
    known = Circumstances("brood", bees_in_colony=24_808)
    tray = assess(MiteCount(117, AUGUST, days=1), known)
    wash = assess(MiteCount(15, AUGUST, bees=300), known)
    assert tray.mites.holds(3172)
    assert wash.mites.holds(3172)
    assert tray.level == wash.level == "severe"


def test_a_level_of_fall_is_not_held_against_a_wash() -> None:
    report = assess(MiteCount(9, AUGUST, bees=300), Circumstances())
    assert all(each.level.measure != "fall per day" for each in report.levels)


def test_supers_and_brood_can_leave_nothing_to_do_now() -> None:
    report = assess(MiteCount(160, date(2026, 8, 10), days=4), Circumstances("brood", supers=2))
    said = " ".join(report.advice)
    assert "Nothing is possible as things stand" in said
    assert "Take the honey supers off first" in said
    assert "Treat by 15 August 2026" in said


def test_a_low_count_asks_for_another_count_and_no_treatment() -> None:
    report = assess(MiteCount(1, date(2026, 6, 1), days=7), Circumstances("brood"))
    assert report.level == "low"
    assert any(said.startswith("Count again by 1 July 2026") for said in report.advice)
    assert not any(said.startswith("Treat") for said in report.advice)


def test_a_count_without_its_base_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="days of the tray or the bees"):
        assess(MiteCount(5, AUGUST), Circumstances())

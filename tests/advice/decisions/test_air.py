"""Tray, top and entrance: air at one end alone, more of it in heat, less to guard."""

from dataclasses import replace
from datetime import date

import pytest
from tests.advice.situations import Case, drawn, situation

from combwright.advice.decisions.air import ventilated
from combwright.terms.set_up import SetUp

AVERAGE = Case(date(2027, 5, 15), 7.0, 4.0, 5.0, 9)


def set_up(case: Case) -> SetUp:
    at = situation(case)
    return ventilated(at, at.standing.set_up)


@pytest.mark.parametrize("number", range(12))
def test_air_goes_through_at_one_end(number: int) -> None:
    told = set_up(drawn(number))
    assert told.cover != "vented" or told.tray_open_mm == 0
    assert told.entrance_mm > 0


def test_the_warmer_the_wider_the_tray() -> None:
    opened = [set_up(replace(AVERAGE, warmer_k=k)).tray_open_mm for k in (-6.0, 0.0, 6.0, 12.0)]
    assert opened == sorted(opened)
    assert opened[0] < opened[-1]


def test_more_bees_have_a_wider_entrance_and_the_robbed_a_narrow_one() -> None:
    bees = (2.0, 4.0, 7.0, 11.0)
    widths = [set_up(replace(AVERAGE, frames_of_bees=each)).entrance_mm for each in bees]
    assert widths == sorted(widths)
    at = situation(replace(AVERAGE, frames_of_bees=11.0))
    robbed = replace(at, robbed=1.0)
    assert ventilated(robbed, robbed.standing.set_up).entrance_mm < widths[-1]


@pytest.mark.parametrize(("month", "is_narrow"), [(9, True), (10, True), (11, False), (1, False)])
def test_no_entrance_is_narrowed_for_robbers_once_none_fly(month: int, *, is_narrow: bool) -> None:
    """Ten millimetres all winter would be blocked by the dead (common practice, no source)."""
    at = situation(Case(date(2027, month, 20), 9.0, 0.0, 15.0, 11))
    quiet, robbed = (
        ventilated(replace(at, robbed=chance), at.standing.set_up).entrance_mm
        for chance in (0.0, 1.0)
    )
    assert (robbed < quiet) is is_narrow

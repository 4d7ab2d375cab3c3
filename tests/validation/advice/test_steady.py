"""Half a frame or half a kilogram flips few of 300 sheets, over all the year."""

from typing import Final

import pytest
from tests.advice.situations import Case, drawn, situation
from tests.advice.test_stable import flipped, moved

from combwright.advice.plan import Plan, plan

pytestmark = pytest.mark.validation
SHEETS: Final = 300
FIRST: Final = 8000  # those from 5000 to 6600 were looked at while the advice was made
MOST: Final = 0.05  # the aim is 0.03; of these 0.037 flip today, 0.063 before


def planned(case: Case) -> Plan:
    return plan(situation(case), with_branches=False)


def test_few_sheets_flip() -> None:
    drawn_cases = (drawn(number) for number in range(FIRST, FIRST + 2 * SHEETS))
    cases = [case for case in drawn_cases if case.queen == "laying"][:SHEETS]
    flips = [
        case
        for number, case in enumerate(cases)
        if flipped(planned(case), planned(moved(case, number)))
    ]
    assert len(cases) == SHEETS
    assert len(flips) < MOST * SHEETS, flips

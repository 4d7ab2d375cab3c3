"""What one decision forbids another."""

from datetime import date

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import ClearEntrance, Heft, Look, MakeFast
from combwright.advice.binding import bound
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import look

OUTSIDE = Decision(topic="test", actions=(Heft(), ClearEntrance(), MakeFast()))
SOUND = Case(date(2027, 5, 8), 7.0, 4.0, 6.0, 9)
VIRGIN = Case(date(2027, 5, 8), 7.0, 4.0, 6.0, 9, queen="virgin")
SICK = Case(date(2027, 5, 8), 7.0, 4.0, 6.0, 9, disease_signs="sunken caps")
COLD = Case(date(2027, 12, 20), 7.0, 0.0, 12.0, 11)


@pytest.mark.parametrize("case", [VIRGIN, SICK])
def test_a_hive_that_is_left_shut_is_not_lifted_or_worked_at(case: Case) -> None:
    assert not bound(OUTSIDE, Deciding(situation(case))).actions


@pytest.mark.parametrize("case", [SOUND, COLD])
def test_any_other_is(case: Case) -> None:
    assert bound(OUTSIDE, Deciding(situation(case))) == OUTSIDE


@pytest.mark.parametrize(
    ("case", "is_looked_at"), [(SOUND, True), (VIRGIN, False), (SICK, False), (COLD, False)]
)
def test_health_is_looked_at_where_the_hive_is_opened(case: Case, *, is_looked_at: bool) -> None:
    told = Deciding(situation(case)).of(look.decide)
    assert ("health" in {each.at for each in told.asks(Look)}) is is_looked_at

"""What one decision forbids another."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import ClearEntrance, Heft, Look, MakeFast
from combwright.advice.binding import bound
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import look
from combwright.advice.kit_acts import Entrance, TopCover, Tray, Treat
from combwright.advice.plan import plan
from combwright.terms.entries import Treatment

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


@pytest.mark.parametrize(("substance", "says"), [("thymol", False), ("amitraz", True)])
def test_while_a_vapour_stands_in_the_hive_its_label_sets_the_air(
    substance: str, *, says: bool
) -> None:
    on = date(2027, 8, 20)
    begun = Treatment.model_validate(
        {"id": UUID(int=9), "on": on, "colony": "colony", "substance": substance}
    )
    case = situation(Case(on + timedelta(days=7), 8.0, 3.0, 15.0, 11))
    told = plan(replace(case, history=(begun,)), with_branches=False)
    assert any(isinstance(each, Tray | TopCover | Entrance) for each in told.actions) is says


def test_on_the_day_it_goes_in_too() -> None:
    cases = (Case(date(2027, 8, day), 9.0, 3.0, 15.0, 11, mites=2500.0) for day in (8, 15, 22))
    plans = [plan(situation(case), with_branches=False) for case in cases]
    treated = [each for each in plans if each.asks(Treat)]
    vapours = [e for e in treated if e.asks(Treat)[0].substance in {"thymol", "formic acid"}]
    assert vapours
    assert not any(each.asks(Tray) or each.asks(Entrance) for each in vapours)

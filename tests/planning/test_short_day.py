"""A day too short: what is left out costs least, and what cannot wait stays."""

import pytest
from tests.paper.conftest import colony_sheet
from tests.planning.test_matching import YARDS, sheet

from combwright.advice.bee_acts import Divide, Heft, Reporting
from combwright.planning.sheet import ColonySheet, DecisionShown, Handed, RoundSheet
from combwright.planning.short_day import YARD_MINUTES, short_day
from combwright.planning.supplies import SPARE
from combwright.planning.task_minutes import usual_minutes

LOOK = 6.0
OWN = usual_minutes(LOOK)


def colony(order: int, worth: float, *, pressing: bool = False) -> ColonySheet:
    act = Heft()
    decided = DecisionShown(
        topic="space", actions=[act], jobs=[], because=[], inputs={"worth_more": worth},
        runner_up="",
    )  # fmt: skip
    return colony_sheet(order, f"C{order}", YARDS[order % 2]).model_copy(
        update={
            "actions": [Reporting()] if pressing else [act],
            "decisions": [decided],
            "questions": [],
        }
    )


def left(told: RoundSheet, minutes: float) -> list[str]:
    return [each.colony for each in short_day(told, minutes, OWN).left_out]


def test_enough_time_leaves_nothing_out() -> None:
    told = sheet(colony(1, 5.0), colony(2, 1.0))
    assert left(told, 2 * YARD_MINUTES + 2 * LOOK) == []


def test_what_costs_least_is_left_out_and_with_it_its_yard() -> None:
    told = sheet(colony(1, 5.0), colony(2, 1.0), colony(3, 4.0))
    assert left(told, YARD_MINUTES + 2 * LOOK) == ["C2"]
    assert left(told, YARD_MINUTES + LOOK) == ["C2", "C3"]
    assert len(left(told, 1.0)) == 3


def test_nothing_is_prepared_loaded_or_handed_on_for_what_is_left_out() -> None:
    told = sheet(colony(1, 5.0), colony(2, 1.0), colony(3, 4.0))
    gives = Handed(
        what="comb of stores", count=1, giver="C1", giver_yard=YARDS[1], taker="C2",
        taker_yard=YARDS[0],
    )  # fmt: skip
    whole = told.model_copy(update={"handed": [gives]})
    short = short_day(whole, YARD_MINUTES + 2 * LOOK, OWN)
    kept = [each for each in told.colonies if each.colony != "C2"]
    fed = SPARE * sum(each.portion.syrup_g for each in kept) / 1000.0
    assert short.bench.sugar_kg + short.bench.water_kg == pytest.approx(fed, abs=0.2)
    assert [stop.yard for stop in short.load] == [YARDS[1]]
    assert short.handed == []
    assert short.colonies == told.colonies
    enough = short_day(whole, 2 * YARD_MINUTES + 3 * LOOK, OWN)
    assert enough.handed == [gives]
    assert len(enough.load) == 2


def test_what_cannot_wait_stays() -> None:
    told = sheet(colony(1, 50.0), colony(2, 0.0, pressing=True))
    short = short_day(told, YARD_MINUTES + LOOK, OWN)
    assert [(each.colony, each.cannot_wait) for each in short.left_out] == [("C1", False)]
    assert short.left_out[0].costs == 50.0


def test_a_nuc_for_sale_waits_for_what_is_worth_more_and_a_division_for_cells_does_not() -> None:
    for way, waits in (("on purpose", True), ("nucleus", False)):
        divided = colony(2, 1.0).model_copy(
            update={"actions": [Divide(way=way, successor="mated queen")]}
        )
        told = sheet(colony(1, 50.0), divided)
        assert (left(told, YARD_MINUTES + 2.0 * LOOK) == ["C2"]) is waits, way

"""Swarm: looked for in the season, and divided by the clock of the cells."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import CutCells, Divide, KnockDown, LeaveShut, Look, Requeen
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import swarm
from combwright.advice.decisions.successor import to_be_had
from combwright.advice.decisions.swarm import nucleus_plan
from combwright.advice.plan import plan
from combwright.advice.prices import NUCS, Prices
from combwright.advice.words.action_words import words

MAY = Case(date(2027, 5, 20), 9.0, 6.0, 8.0, 11)


def decided(case: Case, clock: float) -> Decision:
    at = situation(case)
    at.colonies["swarm_clock"] = clock
    return Deciding(at).of(swarm.decide)


def test_charged_cells_in_a_strong_colony_divide_it() -> None:
    assert decided(MAY, 5.0).asks(Divide)
    assert not decided(MAY, 0.0).asks(Divide)
    assert not decided(replace(MAY, frames_of_bees=4.0, frames_of_brood=2.0), 5.0).asks(Divide)


def test_cells_are_looked_for_in_the_season_only() -> None:
    assert [look.at for look in decided(MAY, 0.0).asks(Look)][:1] == ["queen cells"]
    assert not decided(replace(MAY, on=date(2027, 10, 5)), 0.0).actions


@pytest.mark.parametrize("on", [date(2027, 4, 20), date(2027, 5, 20), date(2027, 7, 1)])
def test_the_method_keeps_to_the_clock_of_the_cells(on: date) -> None:
    """Cells are sealed on day 8; a virgin emerges on day 16 and is left alone until she lays."""
    steps = nucleus_plan(on, to_be_had(on))
    knocked = [each.on for each in steps if isinstance(each, KnockDown)]
    assert all(day < on + timedelta(days=8) for day in knocked)
    for shut in (each for each in steps if isinstance(each, LeaveShut)):
        assert shut.since is not None
        assert shut.until is not None
        assert shut.since < on + timedelta(days=16) < shut.until
        eggs = [each.on for each in steps if isinstance(each, Look) and each.on]
        assert min(eggs) >= shut.until


@pytest.mark.parametrize(
    ("on", "given"),
    [
        (date(2027, 5, 20), "mated queen"),
        (date(2027, 7, 25), "marked cell"),  # she would lay too late to earn her price
    ],
)
def test_a_divided_colony_gets_what_is_worth_more(on: date, given: str) -> None:
    (divide,) = decided(replace(MAY, on=on), 5.0).asks(Divide)
    assert divide.successor == given


@pytest.mark.parametrize("price", [0.0, 45.0, 900.0])
def test_a_dearer_queen_is_never_bought_sooner(price: float) -> None:
    prices = replace(Prices(), mated_queen=price)
    divided = decided(replace(MAY, on=date(2027, 6, 1), prices=prices), 5.0).asks(Divide)
    assert any(each.successor == "mated queen" for each in divided) == (price < 900.0)


def test_what_is_divided_is_not_requeened_too() -> None:
    at = situation(replace(MAY, on=date(2027, 6, 5)))
    at.colonies["swarm_clock"], at.colonies["queen_age"] = 5.0, 900.0
    told = plan(at, with_branches=False)
    assert told.asks(Divide)
    assert not told.asks(Requeen)


@pytest.mark.parametrize("on", [date(2027, 5, 20), date(2027, 6, 15)])
@pytest.mark.parametrize("clock", [4.0, 6.0, 8.0])
def test_once_divided_it_hardly_swarms_and_is_not_looked_at_tomorrow(
    on: date, clock: float
) -> None:
    at = situation(replace(MAY, on=on))
    at.colonies["swarm_clock"] = clock
    told = plan(at, with_branches=False)
    assert told.asks(Divide)
    assert told.chances["swarm"] <= 0.05 < told.inputs["swarm: swarm_as_it_is"]
    assert not [each for each in told.asks(Look) if each.due == "it may swarm"]


@pytest.mark.parametrize(("age", "said"), [(120.0, False), (800.0, True)])
def test_few_cells_of_an_old_queen_may_be_for_her_successor(age: float, *, said: bool) -> None:
    at = situation(MAY)
    at.colonies["swarm_clock"], at.colonies["queen_age"] = 5.0, age
    (divide,) = Deciding(at).of(swarm.decide).asks(Divide)
    assert divide.may_supersede is said
    assert ("leave all alone" in words(divide)) is said


@pytest.mark.parametrize("on", [date(2027, 4, 25), date(2027, 5, 20), date(2027, 7, 25)])
@pytest.mark.parametrize("nuc", [20.0, 200.0, 800.0])
def test_charged_cells_are_cut_unless_a_division_brings_more(on: date, nuc: float) -> None:
    prices = replace(Prices(), **dict.fromkeys(NUCS, nuc))
    told = decided(replace(MAY, on=on, prices=prices), 5.0)
    (cut,) = told.asks(CutCells) or (None,)
    assert bool(told.asks(Divide)) is (cut is None)
    assert cut is None or on + timedelta(days=4) < cut.again_by < on + timedelta(days=8)
    assert told.inputs["swarm"] <= 0.05


@pytest.mark.parametrize("on", [date(2027, 5, 20), date(2027, 7, 10)])
def test_the_dearer_a_nuc_the_sooner_is_divided(on: date) -> None:
    divided = [
        bool(
            decided(
                replace(MAY, on=on, prices=replace(Prices(), **dict.fromkeys(NUCS, nuc))), 5.0
            ).asks(Divide)
        )
        for nuc in (0.0, 100.0, 200.0, 800.0)
    ]
    assert divided == sorted(divided)
    assert divided[-1]
    assert not divided[0]

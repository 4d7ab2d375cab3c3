"""Whatever a keeper may find has its answer, in the days in which it may be found."""

from datetime import date

import pytest

from combwright.advice.bee_acts import EggFrame, LeaveCells, LeaveShut, TakeIn, Uniting
from combwright.advice.decisions.found import at_any_colony
from combwright.advice.decisions.if_found import IfFound
from combwright.advice.kit_acts import Entrance, Feeding, StoresOut

JUNE = date(2027, 6, 10)


def found(code: str, on: date = JUNE) -> IfFound:
    return next(each for each in at_any_colony(on) if each.code == code)


@pytest.mark.parametrize("month", [4, 5, 6, 7])
@pytest.mark.parametrize(
    "code",
    [
        "charged cells, no eggs",
        "no cells on the test frame",
        "drone brood only",
        "several eggs in a cell",
        "nest full of stores",
        "empty combs",
    ],
)
def test_it_is_covered_in_the_season(code: str, month: int) -> None:
    assert found(code, date(2027, month, 20)).do


def test_after_a_swarm_one_cell_is_left_and_no_cast_goes() -> None:
    """Eggs stand for three days after she left, so that eggs are no sign that she is there."""
    swarmed = found("swarmed")
    assert "with eggs or without" in swarmed.found
    assert any(isinstance(a, LeaveCells) and a.which == "one good one" for a in swarmed.actions)
    assert "knock down the rest" in swarmed.do[0]


def test_a_drone_layer_is_given_neither_brood_nor_queen() -> None:
    told = found("drone brood only")
    assert not any(isinstance(each, EggFrame | TakeIn) for each in told.actions)
    assert any(isinstance(each, Uniting) for each in told.actions)


def test_robbers_are_shut_out_before_anything_is_fed() -> None:
    told = found("robbers", date(2027, 8, 10))
    (entrance,) = (each for each in told.actions if isinstance(each, Entrance))
    (fed,) = (each for each in told.actions if isinstance(each, Feeding))
    assert entrance.width_mm <= 20
    assert fed.grams == 0


def test_a_full_nest_gives_stores_and_a_starving_colony_is_fed_litres() -> None:
    assert any(isinstance(each, StoresOut) for each in found("nest full of stores").actions)
    portion = found("empty combs").portion
    assert portion is not None
    assert portion.grams >= 2 * 1000


def test_in_winter_nothing_is_told_of_what_cannot_be_seen() -> None:
    codes = {each.code for each in at_any_colony(date(2027, 12, 20))}
    assert not codes & {"drone brood only", "nest full of stores", "robbers", "charged cells"}
    assert any(isinstance(a, LeaveShut) for a in found("cold day", date(2027, 12, 20)).actions)

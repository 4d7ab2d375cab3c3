"""What acts cost: what is used up, and the keeper's time."""

from dataclasses import replace

import pytest

from combwright.advice.bee_acts import Heft, Requeen
from combwright.advice.costs import USUAL, cost_of, minutes_of
from combwright.advice.kit_acts import Act, Boards, Feeding, Frames, SuperOff, SuperOn, Treat
from combwright.advice.prices import Prices

FED = Feeding(feed="syrup", grams=2000, sugar_fraction=0.6)
ACTS = [
    *(FED, Frames(more=2), SuperOn(supers=2), Treat(substance="thymol", way="gel"), Requeen()),
    *(Boards(more=-1), SuperOff(supers=1, why="ripe"), Heft()),
]
FREE_TIME = replace(Prices(), hour=0.0)


def test_syrup_costs_its_sugar_and_its_minutes() -> None:
    asked = replace(Prices(), sugar=1.5, hour=60.0)
    assert cost_of([FED], asked) == pytest.approx(1.2 * 1.5 + USUAL["feed"])


def test_what_is_taken_out_uses_nothing_up() -> None:
    assert cost_of([Frames(more=-3), SuperOff(supers=1, why="ripe")], FREE_TIME) == 0.0
    assert cost_of([Frames(more=-3)], Prices()) > 0.0


@pytest.mark.parametrize("act", ACTS, ids=lambda act: act.do)
def test_costs_add_up_and_a_dearer_hour_never_costs_less(act: Act) -> None:
    alone = cost_of([act], Prices())
    assert cost_of([act, FED], Prices()) == pytest.approx(alone + cost_of([FED], Prices()))
    assert cost_of([act], replace(Prices(), hour=99.0)) >= alone >= cost_of([act], FREE_TIME) >= 0.0


def test_one_s_own_minutes_take_the_place_of_the_usual() -> None:
    own = {**USUAL, "super": 11.0}
    assert minutes_of([SuperOn(supers=2), Heft()], own) == 22.0

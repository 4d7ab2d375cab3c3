"""Before a super: syrup stops, and what was given lately lets the super wait."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.deciding import Deciding
from combwright.advice.decisions import food
from combwright.advice.plan import plan
from combwright.advice.situation import Situation
from combwright.terms.entries import Feed

READY = Case(date(2027, 5, 26), 13.0, 7.0, 9.0, 11, nectar=0.9, warmer_k=3.0)


def _fed_before(days: int, feed: str = "syrup", grams: float = 700.0) -> Situation:
    at = situation(READY)
    on = READY.on - timedelta(days=days)
    fed = Feed.model_validate(
        {"id": UUID(int=5), "on": on, "colony": "colony", "feed": feed, "grams": grams}
    )
    return replace(at, history=(*at.history, fed))


def test_a_full_box_in_a_flow_gets_a_super() -> None:
    assert plan(situation(READY)).set_up.supers == 1


@pytest.mark.parametrize("days", [1, 4])
def test_it_waits_for_the_syrup_of_the_last_week(days: int) -> None:
    decided = plan(_fed_before(days))
    assert decided.set_up.supers == 0
    assert decided.portion.grams == 0
    assert any("A super is due" in reason for reason in decided.because)


def test_older_syrup_fondant_and_a_little_do_not_hold_it_up() -> None:
    assert plan(_fed_before(8)).set_up.supers == 1
    assert plan(_fed_before(4, "fondant")).set_up.supers == 1
    assert plan(_fed_before(4, grams=100.0)).set_up.supers == 1


@pytest.mark.parametrize("on", [date(2027, 4, 20), date(2027, 4, 30), date(2027, 5, 1)])
def test_a_full_box_is_fed_against_hunger_only_once_supers_are_near(on: date) -> None:
    """Where its bees nearly fill the box, it is not fed, on any day, unless it may starve."""
    light = Case(on, 8.0, 4.0, 4.5, 11)
    starving = replace(light, stores_kg=0.5, nectar=0.0)
    assert Deciding(situation(light)).of(food.decide).without.chances["hunger"] <= 0.02
    assert plan(situation(light)).portion.grams == 0
    assert plan(situation(starving)).portion.grams > 0


@pytest.mark.parametrize(("frames", "goes_on"), [(10, True), (9, True), (8, True), (7, False)])
def test_a_box_that_lacks_few_frames_is_filled_as_its_super_goes_on(
    frames: int, *, goes_on: bool
) -> None:
    """No more than two frames go in at a visit under it, and none that bees will not cover."""
    told = plan(situation(Case(date(2027, 6, 1), 10.0, 6.0, 9.0, frames)), with_branches=False)
    assert (told.set_up.supers == 1) is goes_on
    assert (told.set_up.frames >= 10) is goes_on


def test_a_small_colony_in_a_small_box_gets_frames_and_no_super() -> None:
    told = plan(situation(Case(date(2027, 6, 1), 6.0, 4.0, 9.0, 8)), with_branches=False)
    assert told.set_up.supers == 0

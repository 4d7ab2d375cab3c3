"""The stacks that are weighed: each fits its box, covers the bees, and throws no food out."""

from datetime import date

import numpy as np
import pytest
from tests.advice.situations import Case, drawn, situation

from combwright.advice.decisions.stacks import empty_frames, stacks, stepped, without_supers
from combwright.kit.fits import frames_that_fit


@pytest.mark.parametrize("number", range(16))
def test_every_stack_fits_and_leaves_the_bees_their_combs(number: int) -> None:
    at = situation(drawn(number))
    now, hive = at.standing.set_up, at.standing.hive
    bees = float(np.quantile(at.frames_of_bees, 0.5))
    for told in stacks(at):
        assert told != now
        assert 2 <= told.frames <= frames_that_fit(hive, None, told.dummy_boards, told.brood_boxes)
        assert told.frames >= now.frames or told.frames >= bees
        assert told.supers == now.supers


def test_frames_that_hold_something_are_not_taken_out() -> None:
    full = situation(Case(date(2027, 5, 8), 4.0, 3.0, 16.0, 9))
    assert empty_frames(full) < 1.0
    assert stepped(full, -1) == []


def test_foundation_is_as_empty_as_drawn_comb() -> None:
    at = situation(Case(date(2027, 5, 8), 4.0, 3.0, 4.0, 9))
    before = empty_frames(at)
    for column, by in (("drawn", -1.0), ("foundation", 1.0)):
        at.colonies[column] += by * at.colonies["cells_per_frame"]
    assert empty_frames(at) == pytest.approx(before)


def test_bees_that_cover_every_comb_get_the_next_frame_though_none_could_be_spared() -> None:
    crowded = situation(Case(date(2027, 5, 8), 9.0, 6.0, 6.0, 9))
    assert [each.frames for each in stepped(crowded, 1)] == [10]
    assert stepped(crowded, -1) == []


def test_a_colony_without_a_laying_queen_gets_no_frames() -> None:
    at = situation(Case(date(2027, 5, 8), 9.0, 3.0, 5.0, 8, queen="lost"))
    assert stepped(at, 1) == []


def test_only_supers_that_hold_little_come_off_for_food() -> None:
    bare, rich = (
        situation(Case(date(2027, 7, 1), 10.0, 6.0, 5.0, 11, supers=1, honey_above_kg=kg))
        for kg in (0.0, 9.0)
    )
    assert [each.supers for each in without_supers(bare)] == [0]
    assert without_supers(rich) == []

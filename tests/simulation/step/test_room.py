"""Food against room: what holds what."""

from typing import Any

from hypothesis import assume, given
from hypothesis import strategies as st
from tests.simulation import samples

from combwright.simulation.step.room import room, share_above
from combwright.simulation.step.warmth import brood_of

BIO = samples.numbers()
Frames = st.floats(0, 12)


@given(samples.colonies(), st.floats(-10, 25))
def test_food_goes_up_only_where_there_are_supers(colony: Any, night_c: float) -> None:
    today = samples.today(night_c=night_c)
    above = share_above(colony, today, BIO)
    assert 0.0 <= above <= BIO.above_most
    colony.supers = 0.0
    assert share_above(colony, today, BIO) == 0.0


@given(samples.colonies(), Frames)
def test_room_is_drawn_warm_and_empty(colony: Any, warm: float) -> None:
    for_eggs, free = room(colony, brood_of(colony), warm, 0.0, BIO)
    brood = colony.eggs.sum() + colony.larvae.sum() + colony.sealed.sum()
    assert for_eggs >= 0.0
    assert for_eggs <= max(0.0, min(colony.drawn, warm * colony.cells_per_frame) - brood)
    assert 0.0 <= free <= max(0.0, colony.drawn - brood) + colony.super_drawn


@given(
    samples.colonies(), Frames, st.floats(0, 5000), st.sampled_from(["ripe", "unripe", "pollen"])
)
def test_more_food_never_makes_room(colony: Any, warm: float, grams: float, food: str) -> None:
    for_eggs, free = room(colony, brood_of(colony), warm, 0.0, BIO)
    colony[food] += grams
    less, less_free = room(colony, brood_of(colony), warm, 0.0, BIO)
    assert less <= for_eggs + 1e-9
    assert less_free <= free + 1e-9


@given(samples.colonies(), Frames)
def test_stores_outside_the_warm_nest_leave_it_free(colony: Any, warm: float) -> None:
    """What the cold comb holds costs the queen nothing."""
    colony.unripe = colony.water = colony.pollen = colony.ripe = 0.0
    nest = min(colony.drawn, warm * colony.cells_per_frame * BIO.nest_share)
    outside = colony.drawn - nest
    brood = colony.eggs.sum() + colony.larvae.sum() + colony.sealed.sum()
    assume(brood < nest)
    before, _ = room(colony, brood_of(colony), warm, 0.0, BIO)
    spare = colony.drawn - brood - before
    colony.ripe = 0.9 * min(outside, max(0.0, spare)) * colony.sugar_per_cell
    after, _ = room(colony, brood_of(colony), warm, 0.0, BIO)
    assert abs(after - before) <= 1e-6 * (1 + before)


@given(samples.colonies(), Frames, st.floats(0, 50_000))
def test_a_patch_is_cleared_for_a_queen_however_much_food_there_is(
    colony: Any, warm: float, grams: float
) -> None:
    """Common practice, no source: a honey-bound nest still holds a patch of eggs and brood."""
    colony.ripe += grams
    brood = brood_of(colony) + BIO.drone_cell * (
        colony.drone_open.sum() + colony.drone_sealed.sum()
    )
    for_eggs, _ = room(colony, brood_of(colony), warm, 0.0, BIO)
    nest = min(colony.drawn, warm * colony.cells_per_frame * BIO.nest_share)
    assert for_eggs + brood >= BIO.nest_cleared * nest * (1.0 - 1e-12)

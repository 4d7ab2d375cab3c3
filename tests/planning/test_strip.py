"""Laws of the drawn stack: whatever is believed, the drawing holds together."""

from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.kit.catalogue import catalogue
from combwright.kit.fits import frames_that_fit
from combwright.planning.strip import stack_view
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.hands.actions import arrange
from combwright.terms.combs import StackView
from combwright.terms.set_up import SetUp

HIVES = ("national timber", "national polystyrene", "nuc 6 polystyrene", "nuc 5 ply")
amounts = st.none() | st.floats(0.0, 14.0)


@st.composite
def views(draw: st.DrawFn) -> tuple[StackView, SetUp, int]:
    """Draw a believed stack: any strength, any set-up that a book may hold."""
    hive = catalogue().hive(draw(st.sampled_from(HIVES)))
    boxes = draw(st.integers(1, 2)) if hive.honey_super else 1
    frames = draw(st.integers(1, hive.capacity * boxes))
    supers = draw(st.integers(0, 3)) if hive.honey_super else 0
    fitting = [n for n in range(3) if frames_that_fit(hive, None, n, boxes) >= frames]
    set_up = SetUp(
        hive=hive.key,
        brood_boxes=boxes,
        frames=frames,
        foundation=draw(st.integers(0, frames)),
        dummy_boards=draw(st.sampled_from(fitting)),
        supers=supers,
        excluder=draw(st.booleans()),
        entrance_mm=draw(st.integers(0, 400)),
        tray_open_mm=draw(st.integers(0, 460)),
    )
    described = Described(
        frames_of_bees=draw(amounts), frames_of_brood=draw(amounts), stores_kg=draw(amounts)
    )
    on = date(2027, draw(st.integers(1, 12)), 15)
    colonies = begin(hive, set_up, described, on=on, members=20, seed=7, colony="any")
    was = set_up.model_copy(update={"frames": draw(st.integers(0, frames))})
    arrange(colonies, hive, set_up)
    view = stack_view(colonies, hive, set_up, feeder_over=draw(st.booleans()), was=was)
    return view, set_up, hive.capacity


@given(views())
def test_no_comb_holds_more_than_its_cells(drawn: tuple[StackView, SetUp, int]) -> None:
    for box in drawn[0].boxes:
        for place in box.places:
            shares = (place.brood, place.stores, place.pollen, place.bees)
            assert all(np.isfinite(share) and 0.0 <= share <= 1.0 for share in shares)
            assert place.brood + place.stores + place.pollen <= 1.0 + 1e-9


@given(views())
def test_places_fill_the_box(drawn: tuple[StackView, SetUp, int]) -> None:
    view, set_up, capacity = drawn
    brood_boxes = [box for box in view.boxes if box.kind == "brood"]
    combs = [p for box in brood_boxes for p in box.places if p.holds in {"comb", "foundation"}]
    boards = [p for box in brood_boxes for p in box.places if p.holds == "dummy board"]
    assert len(combs) == set_up.frames
    assert len(boards) == set_up.dummy_boards * set_up.brood_boxes
    assert len(view.boxes) - len(brood_boxes) == set_up.supers
    for box in brood_boxes:
        # a board is thinner than a frame: beside a full box it takes no place of its own
        assert capacity <= len(box.places) <= capacity + set_up.dummy_boards


@given(bees=st.floats(0.5, 11.0), brood=st.floats(0.0, 8.0), stores=st.floats(0.0, 20.0))
def test_what_is_drawn_is_what_is_believed(bees: float, brood: float, stores: float) -> None:
    hive = catalogue().hive("national timber")
    set_up = SetUp(hive=hive.key, frames=11)
    described = Described(frames_of_bees=bees, frames_of_brood=brood, stores_kg=stores)
    colonies = begin(
        hive, set_up, described, on=date(2027, 4, 24), members=20, seed=7, colony="any"
    )
    combs = stack_view(colonies, hive, set_up, feeder_over=False).boxes[0].places[:11]
    cells = float(np.median(colonies["cells_per_frame"]))
    believed = float(np.median(observe.brood(colonies))) / cells
    assert sum(p.brood for p in combs) == pytest.approx(min(believed, 11 * 0.85), abs=0.02)
    place_for_stores = 11 * 0.95 - sum(p.brood for p in combs)
    believed = min(float(np.median(observe.frames_of_stores(colonies))), place_for_stores)
    assert sum(p.stores for p in combs) == pytest.approx(believed, abs=0.02)


@pytest.mark.parametrize(("frames", "was", "new"), [(8, 8, 0), (9, 8, 1), (10, 8, 2)])
def test_new_frames_are_marked_at_the_edges(frames: int, was: int, new: int) -> None:
    hive = catalogue().hive("national timber")
    set_up = SetUp(hive=hive.key, frames=frames)
    described = Described(frames_of_bees=7.0, frames_of_brood=3.0, stores_kg=5.0)
    colonies = begin(
        hive, set_up, described, on=date(2027, 4, 24), members=20, seed=7, colony="any"
    )
    view = stack_view(
        colonies,
        hive,
        set_up,
        feeder_over=False,
        was=set_up.model_copy(update={"frames": was}),
    )
    combs = [place for place in view.boxes[0].places if place.holds == "comb"]
    marked = [i for i, place in enumerate(combs) if place.is_new]
    assert marked == [0, frames - 1][:new]


def test_brood_stands_in_the_middle_and_stores_at_the_sides() -> None:
    hive = catalogue().hive("national timber")
    set_up = SetUp(hive=hive.key, frames=11)
    described = Described(frames_of_bees=9.0, frames_of_brood=4.0, stores_kg=8.0)
    colonies = begin(
        hive, set_up, described, on=date(2027, 4, 24), members=50, seed=7, colony="any"
    )
    combs = [
        place
        for place in stack_view(colonies, hive, set_up, feeder_over=False).boxes[0].places
        if place.holds == "comb"
    ]
    assert max(range(11), key=lambda i: combs[i].brood) == 5
    assert combs[0].stores + combs[10].stores > 1.0
    assert combs[0].brood == combs[10].brood == 0.0
    assert sum(place.brood for place in combs) > 3.0


@pytest.mark.parametrize("frames", [22, 21])
def test_a_nest_in_two_boxes_stands_in_the_middle_of_both(frames: int) -> None:
    hive = catalogue().hive("national timber")
    set_up = SetUp(hive=hive.key, frames=frames, brood_boxes=2)
    described = Described(frames_of_bees=16.0, frames_of_brood=8.0, stores_kg=10.0)
    colonies = begin(hive, set_up, described, on=date(2027, 5, 9), members=20, seed=7, colony="any")
    for box in stack_view(colonies, hive, set_up, feeder_over=False).boxes:
        combs = [place for place in box.places if place.holds == "comb"]
        brood = np.array([place.brood for place in combs])
        middle = float((brood * np.arange(len(combs))).sum() / brood.sum())
        assert middle == pytest.approx((len(combs) - 1) / 2, abs=0.1)
        assert combs[0].stores > combs[len(combs) // 2].stores

"""One replay of a stack: what is noted, what is assumed, and what stands in the evening."""

from random import Random
from uuid import uuid4

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.kit.catalogue import catalogue
from combwright.kit.evening import arrived, evening
from combwright.kit.fits import frames_that_fit, misfits
from combwright.kit.standing import Standing, after, another_day, usual
from combwright.terms.entries import ENTRY, Correction, Noted

KIT = catalogue()
NATIONAL = KIT.hive("national timber")


def noted(kind: str, **told: object) -> Noted:
    content = {"kind": kind, "id": uuid4(), "on": "2026-04-01", "colony": "Alder", **told}
    entry = ENTRY.validate_python(content)
    assert not isinstance(entry, Correction)
    return entry


def stands(*entries: Noted, start: Standing | None = None) -> Standing:
    return evening(start or usual(NATIONAL), entries, KIT).standing


parts = st.sampled_from(["drawn frame", "foundation frame", "brood frame", "dummy board", "super"])
changes = st.builds(
    lambda part, count: noted("change", part=part, count=count), parts, st.integers(-14, 14)
)
stacks = st.builds(
    lambda **told: noted("stack", **told),
    frames=st.none() | st.integers(0, 30),
    foundation=st.none() | st.integers(0, 14),
    dummy_boards=st.none() | st.integers(0, 2),
    brood_boxes=st.none() | st.integers(1, 3),
    supers=st.none() | st.integers(0, 4),
    hive=st.sampled_from([None, "national timber", "nuc 5 ply", "nuc 6 polystyrene", "a tree"]),
)
harvests = st.builds(lambda off: noted("harvest", honey_kg=1, supers=off), st.integers(0, 5))


@given(st.lists(st.lists(changes | stacks | harvests, max_size=4), max_size=5))
def test_whatever_is_noted_every_evening_finds_a_stack_that_can_be(days: list[list[Noted]]) -> None:
    now = usual(NATIONAL)
    for entries in days:
        stood = evening(another_day(now), entries, KIT)
        now = stood.standing
        assert not [each for each in misfits(now.hive, now.set_up) if each.blocks]
        assert stood.impossible.keys() <= {each.id for each in entries}


@given(st.lists(changes | stacks, max_size=4))
def test_what_is_left_out_changes_nothing(entries: list[Noted]) -> None:
    stood = evening(usual(NATIONAL), entries, KIT)
    good = [each for each in entries if each.id not in stood.impossible]
    again = evening(usual(NATIONAL), good, KIT)
    assert again.standing == stood.standing
    assert not again.impossible


@given(st.lists(changes, max_size=5), st.randoms())
def test_the_order_in_which_a_day_was_written_down_does_not_matter_to_the_counts(
    entries: list[Noted], chance: Random
) -> None:
    start = stands(noted("stack", brood_boxes=3, frames=18, dummy_boards=0, supers=4))
    one, turned = evening(start, entries, KIT), list(entries)
    chance.shuffle(turned)
    if not one.impossible:
        assert evening(start, turned, KIT).standing == one.standing


def test_sheets_on_a_full_box_do_not_make_it_hold_more() -> None:
    now = stands(noted("change", part="foundation frame", count=2))
    assert now.set_up.frames == frames_that_fit(NATIONAL) == 12
    assert "frames" not in now.noted


def test_noted_frames_do_not_yield() -> None:
    full = stands(noted("stack", frames=11))
    sheets = noted("change", part="foundation frame", count=2)
    stood = evening(full, [sheets], KIT)
    assert "13 frames do not fit" in stood.impossible[sheets.id].what
    assert stood.standing == full


def test_what_was_never_noted_stays_unknown_to_the_book() -> None:
    now = stands(noted("change", part="super", count=1))
    assert now.set_up.supers == 1
    assert now.told()["supers"] is None
    assert now.told()["hive"] == "national timber"


@pytest.mark.parametrize(("boxes", "fits"), [(1, False), (2, True)])
def test_twenty_frames_stand_in_two_boxes_and_not_in_one(*, boxes: int, fits: bool) -> None:
    double = noted("stack", frames=20, brood_boxes=boxes)
    assert (double.id not in evening(usual(NATIONAL), [double], KIT).impossible) == fits


def test_a_second_box_weighs_what_its_wood_and_combs_weigh() -> None:
    one, two = usual(NATIONAL), stands(noted("stack", frames=22, brood_boxes=2))
    box = NATIONAL.box_kg + NATIONAL.frames * NATIONAL.frame.drawn_kg
    assert two.empty_kg == pytest.approx(one.empty_kg + box)


def test_a_super_weighs_what_the_catalogue_says() -> None:
    box = NATIONAL.honey_super
    assert box is not None
    bare, under = (stands(noted("stack", supers=n)) for n in (0, 1))
    drawn = box.full_kg - box.honey_full_kg
    assert under.empty_kg - bare.empty_kg == pytest.approx(drawn)


def test_another_hive_takes_nothing_along_that_it_cannot_hold() -> None:
    tall = stands(noted("stack", frames=20, brood_boxes=2, supers=2))
    now = after(tall, noted("stack", hive="nuc 5 ply"), KIT)
    assert (now.set_up.brood_boxes, now.set_up.frames, now.set_up.supers) == (1, 5, 0)
    assert not now.noted & {"frames", "supers", "brood_boxes"}


def test_supers_may_come_off_that_were_put_on_the_same_day() -> None:
    start = stands(noted("stack", supers=0))
    on, left = noted("stack", supers=2), noted("stack", supers=1)
    stood = evening(start, [on, noted("harvest", honey_kg=9, supers=1), left], KIT)
    assert not stood.impossible
    assert stood.standing.set_up.supers == 1


def test_foundation_is_forgotten_overnight() -> None:
    now = another_day(stands(noted("stack", frames=10, foundation=3)))
    assert (now.set_up.foundation, now.told()["foundation"]) == (0, None)


def test_what_the_first_day_added_was_not_there_when_it_came() -> None:
    left = noted("stack", frames=8)
    added = noted("change", part="drawn frame", count=2)
    came = arrived(NATIONAL, [left, added], KIT)
    assert came.set_up.frames == 6
    assert evening(came, [left, added], KIT).standing.set_up.frames == 8


def test_a_hive_that_nobody_knows_is_named() -> None:
    moved = noted("stack", hive="national timbre")
    stood = evening(usual(NATIONAL), [moved], KIT)
    assert "national timber" in stood.impossible[moved.id].remedy

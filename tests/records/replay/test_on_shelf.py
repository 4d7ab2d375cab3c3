"""Kit on the shelf: counted once, drawn on by what is noted after."""

from datetime import date, timedelta
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.records.replay.on_shelf import on_shelf
from combwright.terms.entries import ENTRY, AnyEntry, Noted

FIRST = date(2027, 3, 6)


def noted(day: int, kind: str, **told: object) -> Noted:
    made: AnyEntry = ENTRY.validate_python(
        {"id": UUID(int=day), "kind": kind, "on": FIRST + timedelta(days=day), **told}
    )
    return made  # type: ignore[return-value]


def kit(item: str, count: int = 20, day: int = 1) -> Noted:
    return noted(day, "kit", item=item, count=count)


HIVE = noted(0, "stack", colony="Ash", frames=8, foundation=0, supers=0, dummy_boards=1)


@pytest.mark.parametrize(
    ("item", "after", "left"),
    [
        ("super", {"kind": "stack", "supers": 2, "frames": 8}, 18),
        ("drawn frame", {"kind": "stack", "frames": 10, "foundation": 0}, 18),
        ("foundation frame", {"kind": "stack", "frames": 10, "foundation": 2}, 18),
        ("drawn frame", {"kind": "stack", "frames": 10, "foundation": 2}, 20),
        ("drawn frame", {"kind": "change", "part": "drawn frame", "count": 3}, 17),
        ("drawn frame", {"kind": "change", "part": "brood frame", "count": 3}, 20),
        ("dummy board", {"kind": "stack", "dummy_boards": 0}, 21),
        ("sugar kg", {"kind": "feed", "grams": 5000, "sugar_fraction": 0.6}, 17),
        ("fondant kg", {"kind": "feed", "feed": "fondant", "grams": 2500}, 17.5),
        ("super", {"kind": "feed", "grams": 5000}, 20),
    ],
)
def test_what_is_noted_after_the_count_is_drawn_from_it(
    item: str, after: dict[str, object], left: float
) -> None:
    told = noted(2, str(after.pop("kind")), colony="Ash", **after)
    assert on_shelf([HIVE, kit(item), told])[item].left == left
    assert on_shelf([HIVE, told, kit(item, day=3)])[item].left == 20


def test_jars_go_by_their_size() -> None:
    run = {"lot": "L1", "honey": "Summer", "jars": 12, "best_before": "2029-12-31"}
    found = on_shelf([kit("jar 340 g"), kit("jar 454 g"), noted(2, "jar run", jar_g=340, **run)])
    assert {item: one.left for item, one in found.items()} == {"jar 340 g": 8, "jar 454 g": 20}


def test_a_super_noted_as_added_and_as_standing_is_taken_once() -> None:
    added = noted(2, "change", colony="Ash", part="super", count=1)
    stands = noted(2, "stack", colony="Ash", supers=1)
    assert on_shelf([HIVE, kit("super"), added, stands])["super"].left == 19


def test_the_first_note_of_a_stack_takes_nothing() -> None:
    assert on_shelf([kit("super"), noted(2, "stack", colony="New", supers=2)])["super"].left == 20


@given(st.lists(st.integers(0, 8), min_size=1, max_size=8))
def test_what_goes_up_and_comes_down_is_all_there_again(supers: list[int]) -> None:
    told = [noted(at, "stack", colony="Ash", supers=n) for at, n in enumerate([*supers, 0], 2)]
    assert on_shelf([HIVE, kit("super"), *told])["super"].left == 20

from typing import Any, get_args

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.belief.samples import day, enters, entry, is_sound, nuc, replay

from combwright.belief.weighing.filter import QUANTITIES
from combwright.terms.entries import (
    Change,
    End,
    Feed,
    Harvest,
    HoneySource,
    Move,
    Noted,
    Queen,
    QueenEvent,
    Stack,
    TrayCount,
    Treatment,
    Unite,
    Visit,
    WashCount,
)


def visit(number: int, colony: str = "Sorrel", **seen: object) -> Noted:
    made: Noted = entry(Visit, number, colony, **seen)
    return made


def some_notes() -> list[Noted]:
    return [
        *enters(),
        visit(7, frames_of_bees=6.5, frames_of_brood=3.5, stores_kg=6),
        entry(TrayCount, 7, mites=3, days=3),
        entry(Feed, 7, grams=800),
        visit(14, frames_of_bees=7, frames_of_brood=4),
        visit(21, frames_of_bees=7.5, frames_of_brood=4.5, stores_kg=5, eggs=True),
    ]


def test_the_same_book_and_seed_give_the_same_bytes() -> None:
    one, other = (replay(some_notes()).follow("Sorrel", day(28)) for _ in range(2))
    assert one is not None
    assert other is not None
    assert one.belief.colonies.tobytes() == other.belief.colonies.tobytes()
    assert one.belief.shared.tobytes() == other.belief.shared.tobytes()


def test_notes_written_twice_or_out_of_order_change_nothing() -> None:
    notes = some_notes()
    plain = replay(notes).follow("Sorrel", day(28))
    shuffled = replay([*reversed(notes[2:]), *notes, *notes[3:5]]).follow("Sorrel", day(28))
    assert plain is not None
    assert shuffled is not None
    assert shuffled.belief.log_evidence == pytest.approx(plain.belief.log_evidence, abs=2.0)
    assert len(shuffled.scored) == len(plain.scored)
    doubled = replay(notes + notes).follow("Sorrel", day(28))
    assert doubled is not None
    assert doubled.belief.colonies.tobytes() == plain.belief.colonies.tobytes()


def test_independent_notes_of_one_day_may_come_in_any_order() -> None:
    """Within Monte Carlo error: here they are weighed together, so to the last digits."""
    parts: list[dict[str, Any]] = [
        {"frames_of_bees": 6.5},
        {"frames_of_brood": 3.5},
        {"stores_kg": 6.0},
    ]
    found = []
    for order in ([0, 1, 2], [2, 0, 1]):
        notes = [*enters(), *(visit(7, **parts[place]) for place in order)]
        followed = replay(notes).follow("Sorrel", day(8))
        assert followed is not None
        found.append(QUANTITIES["frames_of_bees"](followed.belief.colonies).mean())
    assert found[0] == pytest.approx(found[1], rel=0.02)


def test_an_empty_visit_carries_no_information() -> None:
    told = replay([*enters(), visit(7)]).follow("Sorrel", day(8))
    silent = replay(enters()).follow("Sorrel", day(8))
    assert told is not None
    assert silent is not None
    assert told.last_visit == day(7)
    for quantity, of in QUANTITIES.items():
        one, other = (of(f.belief.colonies) for f in (told, silent))
        assert one.mean() == pytest.approx(other.mean(), rel=0.1), quantity


def test_a_note_narrows_and_a_contradiction_widens_and_asks() -> None:
    before = replay(enters(), members=100).follow("Sorrel", day(7))
    agreeing = replay([*enters(), visit(7, frames_of_bees=6.5)], members=100)
    clashing = replay([*enters(), visit(7, frames_of_bees=1, stores_kg=6)], members=100)
    one, other = agreeing.follow("Sorrel", day(8)), clashing.follow("Sorrel", day(8))
    assert before is not None
    assert one is not None
    assert other is not None
    spread = [QUANTITIES["frames_of_bees"](f.belief.colonies).std() for f in (before, one, other)]
    assert spread[1] < spread[0]
    assert spread[2] > spread[1]
    assert not one.belief.questions
    assert "you saw 1" in other.belief.questions[0]


@pytest.mark.parametrize("seen", [0.0, 40.0])
def test_what_nothing_explains_is_no_crash_and_no_nan(seen: float) -> None:
    notes = [
        *enters(),
        visit(7, frames_of_bees=seen, frames_of_brood=36 - seen * 0.9, stores_kg=120),
    ]
    followed = replay(notes).follow("Sorrel", day(14))
    assert followed is not None
    assert is_sound(followed.belief.colonies)
    assert np.isfinite(followed.belief.log_evidence)
    assert followed.belief.questions or followed.scored


def test_a_note_on_the_day_itself_or_later_is_not_yet_known() -> None:
    short = replay(some_notes()).follow("Sorrel", day(14))
    cut = replay([each for each in some_notes() if each.on < day(14)]).follow("Sorrel", day(14))
    assert short is not None
    assert cut is not None
    assert short.belief.colonies.tobytes() == cut.belief.colonies.tobytes()


def test_another_colony_leaves_this_one_alone() -> None:
    alone = replay(some_notes()).follow("Sorrel", day(28))
    other = [*enters("Vetch", 3), visit(10, "Vetch", frames_of_bees=4)]
    among = replay([*some_notes(), *other]).follow("Sorrel", day(28))
    assert alone is not None
    assert among is not None
    assert alone.belief.colonies.tobytes() == among.belief.colonies.tobytes()


def test_a_nuc_is_what_its_parent_gave() -> None:
    book = replay([*some_notes(), nuc(21)], members=100)
    parent, before = book.follow("Sorrel", day(22)), book.follow("Sorrel", day(21))
    young = book.follow("Nuc", day(22))
    assert parent is not None
    assert young is not None
    assert before is not None
    bees = QUANTITIES["frames_of_bees"]
    assert 1.0 < bees(young.belief.colonies).mean() < 2.6
    assert bees(parent.belief.colonies).mean() < bees(before.belief.colonies).mean()


def test_a_nuc_of_a_colony_that_came_in_that_day() -> None:
    book = replay([*enters(), nuc(0)])
    young = book.follow("Nuc", day(7))
    assert young is not None
    assert book.strangers(day(7)) == []
    assert is_sound(young.belief.colonies)


CONTRADICTIONS = {
    "13 frames in a nuc": (entry(Stack, 22, "Nuc", frames=13), "do not fit into"),
    "a super on a nuc": (entry(Stack, 22, "Nuc", supers=1), "takes no super"),
    "a super put on a nuc": (entry(Change, 22, "Nuc", part="super", count=1), "takes no super"),
    "more taken out than is there": (
        entry(Change, 22, "Nuc", part="drawn frame", count=-9),
        "the notes know 6",
    ),
    "united with one that is not there": (
        entry(Unite, 22, "Nobody", into="Nuc"),
        "no such other colony",
    ),
    "an unknown hive": (entry(Stack, 22, "Nuc", hive="a tree"), "a tree"),
}


@pytest.mark.parametrize("case", CONTRADICTIONS)
def test_what_contradicts_the_stack_is_told(case: str) -> None:
    wrong, words = CONTRADICTIONS[case]
    followed = replay([*some_notes(), nuc(21), wrong]).follow("Nuc", day(28))
    assert followed is not None
    assert is_sound(followed.belief.colonies)
    assert any(
        (words in notice and "26 April" in notice) or words in notice for notice in followed.notices
    ), followed.notices


def test_notes_before_the_colony_came_and_after_it_left_are_told() -> None:
    early = entry(Feed, -3, grams=500)
    late = [entry(End, 28, reason="sold"), visit(35, frames_of_bees=5)]
    followed = replay([early, *some_notes(), *late]).follow("Sorrel", day(42))
    assert followed is not None
    assert followed.has_ended
    assert "before the colony came" in followed.notices[0]
    assert "after the colony had left" in followed.notices[-1]


def test_a_paper_of_an_earlier_year_is_no_note_that_was_left_out() -> None:
    paper = entry(HoneySource, -300, honey="Summer", supers=1, kg=10.0)
    followed = replay([paper, *some_notes()]).follow("Sorrel", day(42))
    assert followed is not None
    assert not [notice for notice in followed.notices if "before the colony came" in notice]


def test_a_colony_that_never_came_is_named() -> None:
    book = replay([*some_notes(), visit(7, "Ghost", frames_of_bees=3)])
    assert book.follow("Ghost", day(28)) is None
    assert book.strangers(day(28)) == ["Ghost"]


COLONIES = st.sampled_from(["Sorrel", "Vetch", "Nuc"])
FRAMES = st.none() | st.integers(0, 24).map(lambda halves: halves / 2)
DAYS = st.integers(-5, 60)


@st.composite
def entries(draw: st.DrawFn) -> Noted:
    """Anything that a book may hold, sensible or not."""
    colony, number = draw(COLONIES), draw(DAYS)
    kinds: list[tuple[object, dict[str, object]]] = [
        (
            Visit,
            {
                "frames_of_bees": draw(FRAMES),
                "frames_of_brood": draw(FRAMES),
                "frames_of_stores": draw(FRAMES),
                "eggs": draw(st.none() | st.booleans()),
                "queen_cells": draw(st.sampled_from([None, "none", "charged", "sealed"])),
                "hive_weight_kg": draw(st.none() | st.floats(2, 250)),
            },
        ),
        (TrayCount, {"mites": draw(st.integers(0, 50000)), "days": draw(st.floats(0.1, 60))}),
        (WashCount, {"mites": draw(st.integers(0, 2000)), "bees": draw(st.integers(1, 2000))}),
        (Feed, {"grams": draw(st.floats(1, 30000)), "sugar_fraction": draw(st.floats(0.3, 0.95))}),
        (Stack, {"frames": draw(st.integers(0, 36)), "supers": draw(st.integers(0, 8))}),
        (
            Change,
            {
                "part": draw(
                    st.sampled_from(
                        ["drawn frame", "brood frame", "stores frame", "super", "feeder"]
                    )
                ),
                "count": draw(st.integers(-36, 36)),
            },
        ),
        (Treatment, {"substance": draw(st.sampled_from(["oxalic acid", "thymol", "other"]))}),
        (Queen, {"event": draw(st.sampled_from(get_args(QueenEvent)))}),
        (Unite, {"into": draw(COLONIES)}),
        (Move, {"yard": draw(st.sampled_from(["Home", "Away"]))}),
        (Harvest, {"honey_kg": draw(st.floats(0, 200)), "supers": draw(st.integers(0, 8))}),
        (End, {"reason": "dead"}),
    ]
    kind, fields = draw(st.sampled_from(kinds))
    if draw(st.integers(0, 9)) == 0:
        return nuc(number, parent=colony, colony=draw(COLONIES))
    if draw(st.integers(0, 9)) == 0:
        return enters(colony, number)[0]
    made: Noted = entry(kind, number, colony, **fields)
    return made


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(entries(), max_size=12), st.booleans())
def test_no_book_makes_it_crash(written: list[Noted], begins: bool) -> None:
    book = replay([*written, *(enters() if begins else [])], members=10)
    for colony in book.colonies:
        followed = book.follow(colony, day(63))
        if followed is None:
            assert colony in book.strangers(day(63))
            continue
        assert is_sound(followed.belief.colonies)
        assert np.isfinite(followed.belief.log_evidence)
        assert all(len(words) > 20 for words in (*followed.notices, *followed.belief.questions))

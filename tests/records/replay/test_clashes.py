from datetime import date
from uuid import UUID

import pytest
from tests.records.samples import noted_as

from combwright.kit.catalogue import catalogue
from combwright.records.problems import Problem
from combwright.records.replay.clashes import check
from combwright.terms.entries import AnyEntry, Correction

KIT = catalogue()  # a National of BS 1300, 422 mm inside; nuc boxes of n x 35 mm and some

START: list[AnyEntry] = [
    noted_as("yard", 901, "2026-03-01", yard="Mill Lane"),
    noted_as("colony", 902, "2026-03-01", colony="Alder", yard="Mill Lane", hive="national timber"),
    noted_as("colony", 903, "2026-03-01", colony="Birch", yard="Mill Lane", hive="nuc 5 ply"),
]
STACKED: list[AnyEntry] = [
    *START,
    noted_as("stack", 904, "2026-03-02", colony="Alder", frames=8, dummy_boards=1, supers=1),
]


def only(*entries: AnyEntry, start: list[AnyEntry] = STACKED) -> Problem:
    (problem,) = check([*start, *entries], KIT)
    return problem


def alder(kind: str, on: str = "2026-04-01", **told: object) -> AnyEntry:
    return noted_as(kind, 1, on, colony="Alder", **told)


@pytest.mark.parametrize(
    ("entry", "what", "remedy"),
    [
        (noted_as("visit", colony="Aldre"), "no colony “Aldre”", "Did you mean “Alder”?"),
        (noted_as("visit", colony="Xyz"), "no colony “Xyz”", "brings the colony into the book"),
        (alder("visit", on="2026-02-01"), "enters the book only on 1 March 2026", "two days"),
        (alder("colony", yard="Mill Lane", hive="nuc 5 ply"), "a colony “Alder” already", "name"),
        (noted_as("colony", colony="ALDER", yard="Mill Lane", hive="nuc 5 ply"),
         "“ALDER” differs from “Alder” only in its capitals", "known name"),
        (alder("move", yard="Mil Lane"), "no yard “Mil Lane”", "“Mill Lane”"),
        (noted_as("colony", colony="Elm", yard="Moor", hive="nuc 5 ply"), "no yard “Moor”", "yard"),
        (alder("unite", into="Alder"), "united with itself", "other colony"),
        (alder("unite", into="Elm"), "no colony “Elm”", "into the book"),
        (alder("split", new_colony="Birch", hive="nuc 5 ply", frames_of_bees=2),
         "a colony “Birch” already", "another name"),
        (alder("split", new_colony="Elm", hive="nuc 7", frames_of_bees=2), "no hive “nuc 7”",
         "nuc 5 ply"),
        (alder("split", new_colony="Elm", hive="nuc 5 ply", frames_of_bees=6),
         "6 frames do not fit into “nuc 5 ply”, which holds 5", "Correct"),
        (alder("split", new_colony="Elm", hive="national timber", frames_of_bees=9),
         "9 frames were split from “Alder”, which had 8", "Correct"),
        (alder("stack", frames=13), "13 frames and 1 dummy board do not fit", "Correct"),
        (alder("stack", frames=12), "holds 12 frames at most (422 mm inside)", "Correct"),
        (alder("stack", hive="nuc 5 ply", frames=8), "8 frames and 1 dummy board", "Correct"),
        (alder("stack", frames=20), "holds 12 frames", "brood boxes"),
        (alder("stack", frames=25, brood_boxes=2, dummy_boards=0), "2 brood boxes hold 24", "box"),
        (alder("stack", dummy_boards=2, frames=12), "12 frames and 2 dummy boards", "boards"),
        (alder("change", part="dummy board", count=2), "3 dummy boards in one box", "boards"),
        (noted_as("stack", colony="Birch", supers=1), "takes no super", "full hive"),
        (alder("stack", hive="national timbre"), "no hive", "national timber"),
        (alder("stack", foundation=9), "9 frames of foundation among 8 frames", "not drawn"),
        (alder("change", part="drawn frame", count=5), "13 frames and 1 dummy board", "Correct"),
        (alder("change", part="brood frame", count=-9), "9 frames were taken", "had 8"),
        (alder("change", part="super", count=-2), "2 supers were taken", "had 1"),
        (alder("change", part="dummy board", count=-2), "2 dummy boards were taken", "had 1"),
        (alder("change", part="feeder", count=1), "only one that is taken off", "as a feed"),
        (alder("change", part="feeder", count=-2), "only one that is taken off", "Write -1"),
        (alder("harvest", honey_kg=20, supers=2), "2 supers were taken", "had 1"),
        (alder("visit", frames_of_bees=0, frames_of_brood=2), "brood without bees", "one"),
        (alder("visit", frames_of_bees=0, eggs=True), "eggs without bees", "Correct one"),
        (alder("visit", frames_of_bees=0, queen_seen=True), "a queen without bees", "Correct one"),
        (alder("visit", frames_of_brood=13), "13 frames of brood in “national timber”", "Correct"),
        (noted_as("visit", colony="Birch", frames_of_brood=6), "which holds 5", "Correct"),
        (noted_as("visit", colony="Birch", combs_with_brood=6), "6 combs with brood", "Correct"),
        (alder("visit", frames_of_bees=0, larvae=True), "larvae without bees", "Correct one"),
        (Correction(id=UUID(int=5), on=START[0].on, corrects=UUID(int=77)), "none such", "id"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_with_what_would_be_right(
    entry: AnyEntry, what: str, remedy: str
) -> None:
    problem = only(entry)
    assert problem.field in type(entry).model_fields
    assert what in f"{problem.what}"
    assert remedy in f"{problem.what} {problem.remedy}"
    assert problem.entry == entry.id
    assert problem.blocks


@pytest.mark.parametrize(
    ("entry", "what"),
    [
        (alder("visit", frames_of_bees=3, frames_of_brood=5), "5 frames of brood, but 3 of bees"),
        (alder("visit", frames_of_brood=0, eggs=True), "Eggs, but no brood"),
        (alder("visit", combs_with_brood=0, sealed_brood=True), "Sealed brood, but no brood"),
        (alder("visit", queen_cells="none", cells_found=4), "No queen cells, but 4 were counted"),
        # a National holds 12 frames, its super 11 more and some 15 kg
        (alder("visit", frames_of_bees=30), "30 frames of bees in “national timber” with 1 super"),
        (noted_as("visit", colony="Birch", frames_of_bees=6), "6 frames of bees in “nuc 5 ply”"),
        (noted_as("visit", colony="Birch", seams_of_bees=8), "8 seams of bees"),
        (noted_as("visit", colony="Birch", frames_of_stores=7), "7 frames of stores"),
        (noted_as("visit", colony="Birch", stores_kg=20), "whose combs hold 14 kg"),
        (alder("visit", hive_weight_kg=5), "without bees and food"),
        (alder("harvest", honey_kg=60, supers=1), "60 kg of honey"),
        (alder("feed", grams=25000), "25,000 g of syrup in one feed"),
        (alder("feed", grams=2), "2 g of syrup in one feed"),
        (alder("treatment", substance="thymol", until="2026-03-20"), "before it went in"),
        (alder("wash count", mites=301, bees=300), "301 mites on 300 bees"),
        (alder("split", new_colony="Elm", hive="nuc 5 ply", frames_of_bees=1, frames_of_brood=3),
         "3 frames of brood went with 1 of bees"),
    ],
)  # fmt: skip
def test_what_is_odd_is_only_mentioned(entry: AnyEntry, what: str) -> None:
    problem = only(entry)
    assert what in problem.what
    assert not problem.blocks


@pytest.mark.parametrize(
    "entry",
    [
        alder("stack", frames=11, dummy_boards=1),
        alder("stack", frames=12, dummy_boards=0),
        alder("stack", hive="nuc 5 ply"),
        alder("stack", frames=20, brood_boxes=2),
        alder("visit", frames_of_bees=8, frames_of_brood=6, eggs=True),
        alder("visit", frames_of_bees=22, stores_kg=35, seams_of_bees=14, hive_weight_kg=45),
        alder("harvest", honey_kg=13, supers=1),
        alder("feed", grams=14000),
        alder("change", part="super", count=-1),
        alder("change", part="feeder", count=-1),
        alder("split", new_colony="Elm", hive="nuc 5 ply", frames_of_bees=3, frames_of_brood=2),
        alder("unite", into="Birch"),
        alder("end", reason="sold"),
    ],
)
def test_what_may_well_be_is_taken_without_a_word(entry: AnyEntry) -> None:
    assert check([*STACKED, entry], KIT) == []


def test_eleven_frames_fill_the_box_when_propolis_spreads_them() -> None:
    """BS 1300, 422 mm inside: 11 x 35 = 385 leaves room for a board; 11 x 38 = 418 does not."""
    problem = only(alder("stack", frames=11, dummy_boards=1, pitch_mm=38))
    assert "need 427 of 422 mm" in problem.what
    assert "propolis" in problem.remedy
    assert not problem.blocks
    assert check([*STACKED, alder("stack", frames=11, dummy_boards=1, pitch_mm=36)], KIT) == []


def test_nothing_happens_to_a_colony_that_has_left() -> None:
    sold = noted_as("end", 1, "2026-04-01", colony="Alder", reason="sold")
    problem = only(sold, noted_as("visit", 2, "2026-04-02", colony="Alder"))
    assert "left the book on 1 April 2026 (sold)" in problem.what
    assert problem.entry == UUID(int=2)


def test_a_colony_that_was_united_may_also_be_ended() -> None:
    united = noted_as("unite", 1, colony="Alder", into="Birch")
    ended = noted_as("end", 2, colony="Alder", reason="united")
    assert check([*STACKED, united, ended], KIT) == []


def test_what_a_correction_struck_out_no_longer_clashes() -> None:
    wrong = noted_as("stack", 1, colony="Alder", frames=13)
    struck = Correction(id=UUID(int=2), on=wrong.on, corrects=wrong.id)
    assert check([*STACKED, wrong, struck], KIT) == []


def test_a_split_colony_lives_on_by_itself() -> None:
    split = alder("split", new_colony="Elm", hive="nuc 5 ply", frames_of_bees=3)
    later = noted_as("visit", 2, "2026-04-09", colony="Elm", frames_of_bees=3)
    assert check([*STACKED, split, later], KIT) == []


def test_two_visits_of_a_day_that_differ_are_refused_and_name_the_value() -> None:
    one = noted_as("visit", 1, colony="Alder", frames_of_bees=6, eggs=True)
    other = noted_as("visit", 2, colony="Alder", frames_of_bees=7)
    problem = only(one, other)
    assert "frames of bees of “Alder” on 1 April 2026 is 7 here and 6" in problem.what
    assert "--correct" in problem.in_file
    assert problem.field == "frames_of_bees"
    assert problem.blocks
    assert check([*STACKED, one, noted_as("visit", 2, colony="Alder", stores_kg=4)], KIT) == []


@pytest.mark.parametrize(
    ("seen", "event", "what"),
    [
        ({"eggs": True}, "virgin", "virgin queen, but eggs"),
        ({"queen_seen": True}, "lost", "seen"),
        ({"queen_cells": "none"}, "cells knocked down", "but none seen"),
    ],
)
def test_a_queen_that_contradicts_the_visit_is_mentioned(
    seen: dict[str, object], event: str, what: str
) -> None:
    visit = noted_as("visit", 1, "2026-04-01", colony="Alder", **seen)
    problem = only(visit, noted_as("queen", 2, colony="Alder", event=event))
    assert what in problem.what
    assert not problem.blocks


def test_two_feeds_of_a_day_are_only_mentioned() -> None:
    feeds = [noted_as("feed", at, colony="Alder", grams=500) for at in (1, 2)]
    problem = only(*feeds)
    assert "fed syrup already" in problem.what
    assert not problem.blocks


def test_what_counts_is_how_the_stack_stands_in_the_evening() -> None:
    full = alder("stack", on="2026-04-01", frames=12, dummy_boards=0)
    given = noted_as("change", 2, "2026-04-02", colony="Alder", part="brood frame", count=1)
    taken = noted_as("change", 3, "2026-04-02", colony="Alder", part="drawn frame", count=-1)
    assert check([*STACKED, full, given, taken], KIT) == []
    assert "13 frames" in only(full, given).what


def test_sheets_that_the_bees_have_drawn_since_are_counted_no_more() -> None:
    sheets = alder("stack", frames=8, foundation=5)
    fewer = noted_as("change", 2, "2026-05-01", colony="Alder", part="drawn frame", count=-5)
    assert check([*STACKED, sheets, fewer], KIT) == []


def test_two_brood_boxes_hold_the_brood_of_two() -> None:
    double = alder("stack", frames=22, brood_boxes=2, dummy_boards=0)
    seen = noted_as("visit", 2, "2026-05-01", colony="Alder", frames_of_brood=14)
    assert check([*STACKED, double, seen], KIT) == []


@pytest.mark.parametrize(
    ("name", "is_told"), [("Mil Lane", True), ("Mill Lane", False), ("Mill Lane B", False)]
)
def test_a_yard_that_is_spelt_nearly_like_another_is_mentioned(name: str, *, is_told: bool) -> None:
    found = check([*STACKED, noted_as("yard", 1, yard=name)], KIT)
    assert [
        f"“{name}” is new" in one.what and "“Mill Lane” is meant" in one.remedy for one in found
    ] == [True] * is_told
    assert not any(one.blocks for one in found)


def test_a_day_to_come_is_mentioned_in_a_book_that_keeps_step() -> None:
    visits = [
        noted_as("visit", at, f"2026-04-0{at}", colony="Alder", eggs=True) for at in (1, 2, 6)
    ]
    (problem,) = check([*STACKED, *visits], KIT, date(2026, 4, 1))
    assert problem.entry == visits[-1].id
    assert "6 April 2026 is still to come" in problem.what
    assert not problem.blocks
    assert check([*STACKED, *visits], KIT, date(2026, 3, 3)) == []  # all of it lies ahead

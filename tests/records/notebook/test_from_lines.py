from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.records.samples import FIRST_LINE, HEAD, notebook

from combwright.records.notebook.from_lines import Notebook, read_notebook
from combwright.records.notebook.headings import BY_WORD, HEADINGS
from combwright.records.problems import Problem
from combwright.terms.entries import HowCounted, Noted


def said(found: Notebook) -> list[dict[str, object]]:
    """Give what the entries say, without their ids."""
    return [
        each.model_dump(mode="json", exclude={"id"}, exclude_defaults=True) | {"kind": each.kind}
        for line in found.lines
        for each in line.entries
    ]


def ids(found: Notebook) -> list[UUID]:
    return [each.id for line in found.lines for each in line.entries]


def only_problem(data: bytes) -> Problem:
    found = read_notebook(data)
    (problem,) = [*found.problems, *(one for line in found.lines for one in line.problems)]
    return problem


def one(heading: str, value: str) -> list[Noted]:
    """Read a notebook of one line about a colony that the book knows."""
    text = f"date,colony,{heading}\n2026-05-01,Alder,{value}\n"
    found = read_notebook(text.encode(), known_colonies={"Alder"})
    assert not found.problems
    assert not found.lines[0].problems, str(found.lines[0].problems[0])
    return list(found.lines[0].entries)  # type: ignore[arg-type]  # a notebook has no corrections


def test_one_line_becomes_the_entries_of_a_visit_in_their_order() -> None:
    on = {"on": "2026-04-03"}
    assert said(read_notebook(notebook())) == [
        {"kind": "yard", "yard": "Mill Lane"} | on,
        {
            "kind": "colony",
            "colony": "Alder",
            "yard": "Mill Lane",
            "hive": "national timber",
            "queen_year": 2025,
        }
        | on,
        {
            "kind": "visit",
            "colony": "Alder",
            "frames_of_bees": 6.5,
            "frames_of_brood": 3.0,
            "eggs": True,
            "remark": "calm",
        }
        | on,
        {"kind": "feed", "colony": "Alder", "grams": 500.0} | on,
        {"kind": "stack", "colony": "Alder", "hive": "national timber", "frames": 8} | on,
    ]


@pytest.mark.parametrize(
    ("heading", "value", "kind", "fields"),
    [
        ("stores kg", "4.5", "visit", {"stores_kg": 4.5}),
        ("queen cells", "charged", "visit", {"queen_cells": "charged"}),
        ("dummy boards,supers,excluder", "1,2,yes", "stack",
         {"dummy_boards": 1, "supers": 2, "excluder": True}),
        ("entrance mm,tray open mm,cover,pitch mm", "80,20,cushion,37.5", "stack",
         {"entrance_mm": 80, "tray_open_mm": 20, "cover": "cushion", "pitch_mm": 37.5}),
        ("syrup fed g,sugar share %,syrup warmth c", "750,62.5,30", "feed",
         {"feed": "syrup", "grams": 750, "sugar_fraction": 0.625, "temperature_c": 30}),
        ("fondant fed g", "2500", "feed", {"feed": "fondant", "grams": 2500}),
        ("drawn frames added", "2", "change", {"part": "drawn frame", "count": 2}),
        ("foundation added", "1", "change", {"part": "foundation frame", "count": 1}),
        ("brood frames added", "-1", "change", {"part": "brood frame", "count": -1}),
        ("stores frames added", "−1", "change", {"part": "stores frame", "count": -1}),
        ("feeder added", "-1", "change", {"part": "feeder", "count": -1}),
        ("mites on tray,tray days", "14,7", "tray count", {"mites": 14, "days": 7}),
        ("mites washed,bees washed", "3,300", "wash count", {"mites": 3, "bees": 300}),
        ("treatment,treated until,product,batch,amount", "Thymol,2026-05-29,Gel,B7,50 g",
         "treatment", {"substance": "thymol", "product": "Gel", "batch": "B7", "amount": "50 g"}),
        ("honey taken kg,supers taken", "11,1", "harvest", {"honey_kg": 11, "supers": 1}),
        ("split to,split hive,split frames of bees,split frames of brood,split with",
         "Birch,nuc 6 timber,3,2,queen", "split",
         {"new_colony": "Birch", "frames_of_bees": 3, "frames_of_brood": 2, "goes_with": "queen"}),
        ("united into", "Cedar", "unite", {"into": "Cedar"}),
        ("moved to", "Hill Top", "move", {"yard": "Hill Top"}),
        ("queen event,queen year", "introduced,2026", "queen",
         {"event": "introduced", "queen_year": 2026}),
        ("queen event", "cells knocked down", "queen", {"event": "cells knocked down"}),
        ("ended", "sold", "end", {"reason": "sold"}),
    ],
)  # fmt: skip
def test_every_kind_of_note_has_its_headings(
    heading: str, value: str, kind: str, fields: dict[str, object]
) -> None:
    (entry,) = one(heading, value)
    assert entry.kind == kind
    assert {name: getattr(entry, name) for name in fields} == fields


def test_every_heading_is_its_own_word_and_fills_a_field_of_an_entry() -> None:
    assert len(BY_WORD) == len(HEADINGS)
    for heading in HEADINGS:
        assert heading.field.name in heading.field.kind.model_fields
        assert heading.field.allowed


def test_blank_means_not_looked_at() -> None:
    (visit,) = one("frames of bees,frames of brood,eggs", "6,,")
    assert visit.model_dump(exclude_none=True).keys() == {
        "id", "on", "kind", "colony", "remark", "frames_of_bees",
    }  # fmt: skip


@pytest.mark.parametrize("heading", ["syrup fed g", "fondant fed g", "foundation added"])
def test_a_nought_says_that_nothing_was_given(heading: str) -> None:
    assert [each.kind for each in one(f"{heading},eggs", "0,yes")] == ["visit"]


def test_headings_may_be_in_any_order_and_in_capitals() -> None:
    text = "Colony,FRAMES_OF_BEES,Date\nAlder,6,2026-05-01\n"
    found = read_notebook(text.encode(), known_colonies={"Alder"})
    assert said(found) == [
        {"kind": "visit", "colony": "Alder", "frames_of_bees": 6.0, "on": "2026-05-01"}
    ]


def test_a_yard_may_have_a_line_of_its_own() -> None:
    found = read_notebook(b"date,yard,colony,climate\n2026-04-01,Hill Top,,Birr\n")
    assert said(found) == [
        {"kind": "yard", "yard": "Hill Top", "climate": "Birr", "on": "2026-04-01"}
    ]


def test_the_same_file_gives_the_same_ids_also_when_the_book_knows_it_and_columns_move() -> None:
    first = ids(read_notebook(notebook("2026-04-06,,Alder,,,7,,,,500,")))
    again = read_notebook(notebook("2026-04-06,,Alder,,,7,,,,500,"), {"Mill Lane"}, {"Alder"})
    assert set(ids(again)) < set(first)
    assert len(first) == len(set(first))
    swapped = b"colony,date,syrup fed g\nAlder,2026-04-06,500\n"
    assert set(ids(read_notebook(swapped, known_colonies={"Alder"}))) < set(first)


def test_the_baseline_of_ids_never_changes() -> None:
    """Books in use hold these ids: if they changed, adding a file again would double its notes."""
    assert [str(key) for key in ids(read_notebook(notebook()))] == [
        "bc1b0901-27fc-5e2b-8723-7b4ef217dbac",
        "4c8c2628-3964-56f6-bb0f-09c27d04e5cb",
        "528564af-c8b1-51ff-b771-aad1d9c3108b",
        "98dc1f73-01a9-50a6-a114-724f931dd643",
        "4bf5f4df-9b36-55a4-a68d-905f816f2d1e",
    ]


def test_stray_blanks_and_capitals_of_a_hive_do_not_matter() -> None:
    tidy = ids(read_notebook(notebook("2026-04-06,Mill Lane,Birch 2,nuc 6 timber,,7,,,,,")))
    stray = "  2026-04-06 , Mill  Lane,Birch\u00a0 2,Nuc 6  Timber,, 7,,,,, "
    assert ids(read_notebook(notebook(stray))) == tidy


def test_two_equal_feeds_of_one_day_are_two() -> None:
    lines = ("2026-04-06,,Alder,,,,,,,500,morning", "2026-04-06,,Alder,,,,,,,500,evening")
    feeds = [one for one in said(read_notebook(notebook(*lines))) if one["kind"] == "feed"]
    assert len(feeds) == 3
    assert len(set(ids(read_notebook(notebook(*lines))))) == 5 + 4


@pytest.mark.parametrize(
    ("line", "place", "what", "remedy"),
    [
        ("3/4/2026,,Alder,,,7,,,,,", "line 3, column 1 “date”", "3 April or 4 March", "2026-04-03"),
        ("46115,,Alder,,,7,,,,,", "line 3, column 1 “date”", "count of days", "2026-04-03"),
        (",,Alder,,,7,,,,,", "line 3, column 1 “date”", "blank", "the day of the visit"),
        ("2026-04-06,,,,,7,,,,,", "line 3, column 3 “colony”", "blank", "the colony's own name"),
        ("2026-04-06,,Alder,,,41,,,,,", "line 3, column 6 “frames of bees”", "41 is not possible",
         "0 to 40"),
        ("2026-04-06,,Alder,,,,-1,,,,", "line 3, column 7 “frames of brood”", "-1 is not possible",
         "0 to 36"),
        ('2026-04-06,,Alder,,,"6,5",,,,,', "line 3, column 6 “frames of bees”", "decimal comma",
         "Write 6.5."),
        ("2026-04-06,,Alder,,,,,perhaps,,,", "line 3, column 8 “eggs”", "neither yes nor no",
         "yes or no"),
        ("2026-04-06,,Alder,,,,,,7½,,", "line 3, column 9 “frames in box”", "not a whole number",
         "whole number"),
        ("2026-04-06,,Alder,,,,,,,-500,", "line 3, column 10 “syrup fed g”", "-500 is not possible",
         "more than 0"),
        ("2026-04-06,,Alder,,1066,7,,,,,", "line 3, column 5 “queen year”", "1066 is not possible",
         "1990 to 2100"),
        ("2026-04-06,Mill Lane,Birch,,,7,,,,,", "line 3, column 4 “hive”", "blank",
         "“Birch” is new to the book. Write its hive"),
        ("2026-04-06,,Birch,national timber,,7,,,,,", "line 3, column 2 “yard”", "blank",
         "“Birch” is new to the book"),
        ("2026-04-06,Mill Lane,alder,,,7,,,,,", "line 3, column 4 “hive”", "blank",
         "Did you mean “Alder”?"),
        ("2026-04-06,Mill Lane,,,,7,,,,,", "line 3, column 3 “colony”", "blank",
         "the colony's own name"),
        ("2026-04-06,,Alder,,,7,,,,", "line 3, column 11 “remark”", "10 of 11 columns",
         "a blank column needs its comma"),
        ("2026-04-06,,Alder,,,7,,,,,calm, sunny", "line 3, column 12", "12 columns",
         "in quotation marks"),
        ('2026-04-06,,Alder,,,7,,,,,"calm', "line 3", "never closed", "Close it"),
        (FIRST_LINE.strip(), "line 3", "the same as line 2", "Take one out"),
        ("2026-04-06,,Alder,,,,,,,,a\x07b", "line 3, column 11 “remark”", "cannot be printed",
         "plain text"),
    ],
)  # fmt: skip
def test_a_bad_cell_is_named_by_line_and_column_with_what_would_be_right(
    line: str, place: str, what: str, remedy: str
) -> None:
    problem = only_problem(notebook(line))
    assert problem.place == place
    assert what in problem.what
    assert remedy in problem.remedy
    assert problem.blocks


def test_a_name_that_is_too_long_is_named() -> None:
    problem = only_problem(notebook(f"2026-04-06,Mill Lane,{'A' * 61},national timber,,,,,,,"))
    assert problem.place == "line 3, column 3 “colony”"
    assert "60 letters" in problem.remedy


def test_what_belongs_together_is_asked_for_together() -> None:
    problem = only_problem(
        HEAD.replace("remark", "mites on tray,tray days").encode()
        + b"2026-04-03,Mill Lane,Alder,national timber,,,,,,,14,\n"
    )
    assert problem.place == "line 2, column 12 “tray days”"
    assert "“mites on tray”, “tray days”" in problem.remedy


def test_all_that_is_wrong_with_a_line_is_said_at_once() -> None:
    found = read_notebook(notebook('3/4/2026,,Alder,,,"6,5",,perhaps,,,'))
    assert [one.column for one in found.lines[1].problems] == [
        "column 1 “date”",
        "column 6 “frames of bees”",
        "column 8 “eggs”",
    ]
    assert not found.lines[1].entries


@pytest.mark.parametrize(
    ("head", "place", "what", "remedy"),
    [
        ("date,colony,frames of beez", "line 1, column 3 “frames of beez”", "no heading",
         "“frames of bees”"),
        ("date,colony,eggs,Eggs", "line 1, column 4 “Eggs”", "already over column 3", "Keep one"),
        ("date,eggs", "line 1", "“colony” is missing", "Add this column"),
        ("2026-04-03,Alder,6", "line 1", "none of the headings", "date,yard,colony"),
    ],
)  # fmt: skip
def test_wrong_headings_are_named_with_the_nearest_right_one(
    head: str, place: str, what: str, remedy: str
) -> None:
    problem = only_problem(f"{head}\n2026-04-03,Alder,6,7\n".encode())
    assert problem.place == place
    assert what in problem.what
    assert remedy in problem.remedy


def test_a_cell_under_no_heading_is_named() -> None:
    problem = only_problem(b"date,colony,\n2026-04-03,Alder,6\n")
    assert problem.place == "line 2, column 3"


def test_files_that_are_no_text_say_so_with_their_place() -> None:
    assert only_problem("date,colony\n".encode("utf-16")).what.startswith("The file is written in")
    broken = notebook("2026-04-06,,Alder,,,7,,,,,Mé").replace("é".encode(), b"\xe9")
    assert only_problem(broken).place == "line 3, column 11"


@given(st.lists(st.text(alphabet="0123456789½-/.,;\"' \nabcxyz", max_size=30), max_size=6))
def test_whatever_stands_in_a_notebook_gives_entries_or_problems(lines: list[str]) -> None:
    found = read_notebook(notebook(*lines))
    for line in found.lines:
        assert line.entries or line.problems
        assert not (line.entries and any(one.blocks for one in line.problems))
    for problem in [*found.problems, *(one for line in found.lines for one in line.problems)]:
        assert problem.what
        assert problem.place or problem.remedy


def test_how_a_keeper_counts_is_said_in_two_columns() -> None:
    (counted,) = one("brood counted in,bees counted in", "combs with brood,seams")
    assert isinstance(counted, HowCounted)
    assert (counted.brood, counted.bees) == ("combs with brood", "seams")
    lone = only_problem(
        b"date,colony,yard,hive,brood counted in\n2026-05-01,A,B,nuc 5 ply,frames filled\n"
    )
    assert "bees counted in" in lone.remedy

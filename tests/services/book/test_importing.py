"""Two spreadsheets as keepers make them, taken in without a change of the program."""

import json
from pathlib import Path

import pytest
from tests.postgres import Places

from combwright.records.store.book_handle import Book
from combwright.services.book.importing import propose, remembered, take_sheet
from combwright.terms.entries import Feed, TrayCount, Visit
from combwright.terms.errors import NotebookError

SHEETS = Path(__file__).parents[2] / "data" / "foreign_sheets"
DIARY, INSPECTIONS, CARD = "hive-diary.csv", "inspections.xlsx", "record-card.csv"
PLACE = {"yard": "Orchard Lane"}


@pytest.fixture
def book(places: Places) -> Book:
    return Book(places("keeper.book"))


def visits(book: Book) -> dict[tuple[str, str], Visit]:
    return {(e.colony, str(e.on)): e for e in book.now().entries if isinstance(e, Visit)}


def test_a_diary_with_a_title_days_first_and_units_in_its_cells(book: Book) -> None:
    data = (SHEETS / DIARY).read_bytes()
    found = propose(book, data, fixed=PLACE)
    assert found.headings == (
        *("date", "colony", "hive", "frames of bees", "frames of brood", "stores kg"),
        *("queen cells", "queen seen", "remark", "yard"),
    )
    assert (found.visits, len(found.lines), found.is_ready) == (4, 4, True)
    assert book.now().history == []
    assert take_sheet(book, data, DIARY, found).lines == 4
    told = visits(book)
    one = told["1", "2026-04-17"]
    assert (one.frames_of_bees, one.stores_kg, one.queen_cells) == (7.5, 4.99, "cups")
    assert (one.queen_seen, one.remark) == (True, "wasps at the entrance")
    other = told["2", "2026-04-03"]
    assert (other.frames_of_brood, other.queen_cells, other.queen_seen) == (1.5, None, False)


def test_a_sheet_with_a_merged_title_and_an_apiary_written_once(book: Book) -> None:
    data = (SHEETS / INSPECTIONS).read_bytes()
    found = propose(book, data)
    assert found.is_ready
    take_sheet(book, data, INSPECTIONS, found)
    told = visits(book)
    assert [str(key) for key in told] == [str(key) for key in sorted(told, key=lambda k: k[1])]
    assert book.now().standings["Green"].yard == "Riverside"
    assert book.now().standings["Red"].yard == "Heath"
    assert told["Green", "2026-04-05"].frames_of_brood == 3.5
    assert told["Red", "2026-04-06"].stores_kg == pytest.approx(6 * 0.4536, abs=0.001)
    fed = {each.colony: each.grams for each in book.now().entries if isinstance(each, Feed)}
    assert fed["Blue"] == pytest.approx(2 * fed["Green"], abs=0.01)
    assert fed["Blue"] == pytest.approx(1290, abs=5)  # a litre of 60 % syrup


def test_a_record_card_as_it_was_kept_all_season(book: Book) -> None:
    data = (SHEETS / CARD).read_bytes()
    found = propose(book, data, fixed={"yard": "Glebe Field"})
    assert [one.theirs for one in found.reading.matches if not one.ours] == ["Weather"]
    assert (found.is_ready, found.visits, len(found.lines)) == (True, 12, 10)
    take_sheet(book, data, CARD, found)
    told = visits(book)
    assert {day for _, day in told} == {"2026-04-04", "2026-04-18", "2026-05-02", "2026-05-16"}
    assert (told["2", "2026-04-04"].seams_of_bees, told["2", "2026-05-02"].seams_of_bees) == (
        5.5,
        7.5,
    )
    assert told["3", "2026-04-18"].queen_cells == "sealed"
    assert told["3", "2026-05-16"].frames_of_brood is None
    assert told["1", "2026-05-16"].seams_of_bees == 10.5
    fed = [each.grams for each in book.now().entries if isinstance(each, Feed)]
    assert fed == [
        pytest.approx(grams, rel=0.004) for grams in (1290, 2580)
    ]  # litres of 60 % syrup
    drops = [each.mites for each in book.now().entries if isinstance(each, TrayCount)]
    assert sorted(drops) == [6, 8, 14, 35]


def test_taking_it_twice_changes_nothing_and_its_headings_are_remembered(book: Book) -> None:
    data = (SHEETS / DIARY).read_bytes()
    found = propose(book, data, {"Food": ""}, PLACE)
    assert "stores kg" not in found.headings
    take_sheet(book, data, DIARY, found)
    assert remembered(book)["food"] == ""
    again = propose(book, data, fixed=PLACE)
    assert "stores kg" not in again.headings
    assert take_sheet(book, data, DIARY, again).new == 0


def test_nothing_is_written_until_all_is_well_and_the_line_is_that_of_the_sheet(book: Book) -> None:
    data = (SHEETS / DIARY).read_bytes().replace(b"03/04/26;2;", b"03/04/26;1;")
    found = propose(book, data, fixed=PLACE)
    assert not found.is_ready
    assert {one.line for one in found.problems if one.blocks} >= {5}
    with pytest.raises(NotebookError):
        take_sheet(book, data, DIARY, found)
    assert book.now().history == []
    assert remembered(book) == {}


def test_a_sheet_without_a_yard_says_so_at_its_line(book: Book) -> None:
    found = propose(book, (SHEETS / DIARY).read_bytes())
    assert "where the colony stands" in " ".join(one.remedy for one in found.problems)
    assert found.problems[0].line == 4


def test_days_that_can_only_be_month_first_turn_all_round(book: Book) -> None:
    found = propose(book, b"When,Hive no,Brood\n04/03/2026,1,2\n04/17/2026,1,3\n")
    assert [line[0] for line in found.lines] == ["2026-04-03", "2026-04-17"]
    other = propose(book, b"When,Hive no,Brood\n04/03/2026,1,2\n", days="month first")
    assert other.lines[0][0] == "2026-04-03"


def test_what_is_not_a_sheet_or_names_no_column_is_said(book: Book) -> None:
    with pytest.raises(NotebookError, match="cannot be read"):
        propose(book, b"PK\x03\x04 not a spreadsheet")
    with pytest.raises(NotebookError, match="No column of the file is called “bees”"):
        propose(book, b"When,Hive no\n2026-04-03,1\n", {"Bees": "frames of bees"})
    with pytest.raises(NotebookError, match="no heading “strength of it”"):
        propose(book, b"When,Hive no\n2026-04-03,1\n", {"When": "strength of it"})
    lacking = propose(book, b"Brood,Bees\n3,4\n")
    assert lacking.lacking == ("date", "colony")
    with pytest.raises(NotebookError, match="date or colony"):
        take_sheet(book, b"Brood,Bees\n3,4\n", "a.csv", lacking)


def test_remembered_headings_that_are_damaged_are_as_none(book: Book) -> None:
    for text in ("not json", "[1]", json.dumps({"when": "no heading of ours"})):
        book.beside("headings.json").write_text(text)
        assert remembered(book) == {}


def test_a_unit_may_end_a_heading_and_seams_are_no_frames(book: Book) -> None:
    sheet = "Date,Hive,Site,Type,FoB,Food lb\n2026-04-01,A,Low,national timber,6 frames,11\n"
    found = propose(book, sheet.encode())
    assert [one.ours for one in found.reading.matches][-2:] == ["frames of bees", "stores kg"]
    assert found.lines[0][-2:] == ("6", "4.99")
    seams = propose(book, sheet.replace("6 frames", "6 seams").encode())
    assert not seams.is_ready
    assert any("“6 seams”" in one.what for one in seams.problems)

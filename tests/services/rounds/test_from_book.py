"""The round, end to end, on a small book of our own."""

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from shutil import copyfile
from uuid import uuid4

import pytest

from combwright.planning.sheet import RoundSheet
from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries, add_notebook
from combwright.services.progress import LEARNING, PLANNING, READING, READY, Step
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.kept_plans import KeptPlans
from combwright.services.rounds.situations import AskedRound, situations_of
from combwright.terms.entries import Split
from combwright.terms.errors import BookError, NotFoundError, OutOfRangeError

HEADINGS = (
    "date,yard,colony,hive,queen year,climate,frames of bees,frames of brood,eggs,"
    "frames of stores,frames in box,dummy boards,pitch mm"
)
LINES = (
    "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,3,9,1,35",
    "2027-04-03,Top,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,1,6,0,35",
    "2027-04-03,Low,Elm,national timber,2025,Dublin Airport,9,4,yes,2,11,0,37.5",
    "2027-04-10,Top,Oak,,,,7.5,3.5,yes,2.5,9,1,35",
    "2027-04-10,Low,Elm,,,,9,4.5,yes,1.5,11,0,37.5",
)
ON = date(2027, 4, 17)
MEMBERS = 60


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder = tmp_path_factory.mktemp("round")
    notes = folder / "notes.csv"
    notes.write_text("\n".join((HEADINGS, *LINES)) + "\n", "utf-8")
    made = Book(folder / "a.book")
    add_notebook(made, notes)
    return made


@pytest.fixture(scope="module")
def sheet(book: Book) -> RoundSheet:
    return round_sheet(book, ON, members=MEMBERS)


def test_every_colony_comes_once_in_the_order_of_its_yard(sheet: RoundSheet) -> None:
    assert sorted(each.colony for each in sheet.colonies) == ["Ash", "Elm", "Oak"]
    assert [each.order for each in sheet.colonies] == [1, 2, 3]
    yards = [each.yard for each in sheet.colonies]
    assert yards == sorted(yards, key=sheet.yards.index)
    assert [stop.yard for stop in sheet.load] == sheet.yards


def test_where_a_colony_stands_is_known_without_following_it(book: Book, sheet: RoundSheet) -> None:
    replay = situations_of(book, AskedRound(ON, members=MEMBERS)).replay
    for each in sheet.colonies:
        assert replay.key(each.colony, ON)[1] == each.yard


def test_the_sick_are_seen_last_and_their_yard_after_the_others(tmp_path: Path) -> None:
    """Signs noted at Oak: Low comes before Top, and Oak after its neighbour, who is told."""
    notes = tmp_path / "notes.csv"
    sick = (*(f"{line}," for line in LINES[:3]), "2027-04-10,Top,Oak,,,,7,3,yes,,,,,sunken caps")
    notes.write_text("\n".join((f"{HEADINGS},disease signs", *sick)) + "\n", "utf-8")
    add_notebook(Book(tmp_path / "a.book"), notes)
    found = round_sheet(Book(tmp_path / "a.book"), ON, members=MEMBERS)
    assert [each.colony for each in found.colonies] == ["Elm", "Ash", "Oak"]
    assert any("noted at Oak" in job for job in found.colonies[1].jobs)
    assert not any("Oak" in job for job in found.colonies[0].jobs)


def test_the_lists_are_those_of_its_colonies(sheet: RoundSheet) -> None:
    wanted = sum(each.portion.syrup_g for each in sheet.colonies) / 1000.0
    made = sheet.bench.sugar_kg + sheet.bench.water_kg
    assert wanted <= made <= 1.1 * wanted + 0.2
    assert sum(stop.syrup_l for stop in sheet.load) == pytest.approx(sheet.bench.syrup_l, abs=0.2)


def test_spring_syrup_is_between_equal_and_double_and_given_warm(sheet: RoundSheet) -> None:
    """Trade: 1.5:1 to 2:1 by weight, given warm (common practice, no source)."""
    fed = [each for each in sheet.colonies if each.portion.syrup_g]
    assert fed
    for each in fed:
        share = each.portion.sugar_fraction
        assert 1.5 <= round(share / (1.0 - share), 6) <= 2.0
        assert any("lukewarm" in job for job in each.jobs)
    assert "lukewarm" in " ".join(sheet.bench.steps)


def test_a_wide_pitch_in_the_book_is_noticed(sheet: RoundSheet) -> None:
    jobs = {each.colony: " ".join(each.jobs) for each in sheet.colonies}
    assert "11 frames at 37.5 mm" in jobs["Elm"]
    assert "mm need" not in jobs["Oak"]


def test_the_same_book_day_and_seed_give_the_same_sheet(book: Book, sheet: RoundSheet) -> None:
    assert (
        round_sheet(book, ON, members=MEMBERS, kept=KeptPlans()).model_dump_json()
        == sheet.model_dump_json()
    )


def test_another_seed_gives_another_sheet_of_the_same_colonies(
    book: Book, sheet: RoundSheet
) -> None:
    other = round_sheet(book, ON, members=MEMBERS, seed=2)
    assert other.model_dump_json() != sheet.model_dump_json()
    for one, two in zip(sheet.colonies, other.colonies, strict=True):
        assert one.colony == two.colony
        bees, again = one.expected.frames_of_bees, two.expected.frames_of_bees
        assert again.low <= bees.mid <= again.high


def test_one_yard_is_the_same_as_in_the_whole_round(book: Book, sheet: RoundSheet) -> None:
    alone = round_sheet(book, ON, yard="Low", members=MEMBERS)
    assert alone.yards == ["Low"]
    (elm,) = alone.colonies
    (same,) = (each for each in sheet.colonies if each.colony == "Elm")
    assert elm.model_copy(update={"order": same.order}) == same


def test_notes_of_the_day_itself_are_not_taken_in(book: Book) -> None:
    early = round_sheet(book, date(2027, 4, 10), members=MEMBERS)
    assert {each.last_visit for each in early.colonies} == {date(2027, 4, 3)}


def test_progress_is_told_from_the_first_note_to_the_last_plan(book: Book, tmp_path: Path) -> None:
    """A parent that is followed within its split counts once, when its own turn comes."""
    parted = Book(copyfile(book.place, tmp_path / "parted.book"))
    split = Split(
        id=uuid4(),
        on=date(2027, 4, 12),
        colony="Oak",
        new_colony="Nuc",
        hive="nuc 6 polystyrene",
        frames_of_bees=2,
        frames_of_brood=1,
        frames_of_stores=1,
    )
    add_entries(parted, [split])
    told: list[Step] = []
    round_sheet(parted, ON, members=20, progress=told.append)
    counted = [Step(doing, done, 4) for doing in (READING, PLANNING) for done in range(5)]
    learned = [Step(LEARNING, done, 1) for done in range(2)]  # the first hive's yard has by then
    assert list(dict.fromkeys(told)) == [Step(READY), *learned, *counted]


def test_a_yard_without_colonies_is_refused_before_any_colony_is_followed(book: Book) -> None:
    """Colonies of one day may stand elsewhere on another: the refusal names those of the day."""
    told: list[Step] = []
    with pytest.raises(NotFoundError, match="“Nowhere” with colonies in the book on 17 April 2027"):
        round_sheet(book, ON, yard="Nowhere", progress=told.append)
    assert not told


@pytest.mark.parametrize(
    ("ask", "said"),
    [
        (lambda book: round_sheet(book, ON, yard="Nowhere"), "There are: Low, Top"),
        (lambda book: round_sheet(book, date(2027, 4, 2)), "lies before the first note"),
        (lambda book: round_sheet(book, date(2031, 4, 3)), "more than two years after"),
        (lambda book: round_sheet(book, ON, days=0), "Give 1 to 60 days"),
        (lambda book: round_sheet(book, ON, days=61), "Give 1 to 60 days"),
        (lambda book: round_sheet(book, ON, members=1), "200 is usual"),
        (lambda book: round_sheet(book, ON, seed=-1), "Give 0 or more"),
        (lambda book: round_sheet(Book(book.beside("none"), must_exist=True), ON), "no book here"),
        (lambda book: round_sheet(Book(book.beside("none").parent), ON), "cannot be opened"),
    ],
)
def test_what_cannot_be_asked_is_said_with_its_remedy(
    book: Book, ask: Callable[[Book], RoundSheet], said: str
) -> None:
    before = Path(book.place).read_bytes()
    with pytest.raises((NotFoundError, OutOfRangeError, BookError), match=said):
        ask(book)
    assert Path(book.place).read_bytes() == before


def test_an_empty_book_is_said_to_be_empty(tmp_path: Path) -> None:
    with pytest.raises(NotFoundError, match="The book is empty"):
        round_sheet(Book(tmp_path / "new.book"), ON)


def test_the_committed_schema_is_current_and_describes_the_sheet(
    sheet: RoundSheet, root: Path
) -> None:
    committed = json.loads((root / "docs" / "round.schema.json").read_text("utf-8"))
    assert committed == RoundSheet.model_json_schema()
    told = json.loads(sheet.model_dump_json())
    assert set(committed["required"]) <= set(told)

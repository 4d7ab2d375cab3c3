"""A round of November: what is said agrees with hives that stay shut."""

from datetime import date
from pathlib import Path

import pytest
from tests.noted import noted
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.paper.round_sheet import sheet_content
from combwright.planning.at_every_colony import everywhere, is_opened
from combwright.planning.sheet import RoundSheet
from combwright.records.store.book_handle import Book
from combwright.services.rounds.from_book import round_sheet

HEADINGS = "date,yard,colony,hive,queen year,climate,frames of bees,frames of brood,eggs,stores kg"
LINES = (
    "2026-09-12,Top,Oak,national timber,2026,Dublin Airport,11,3,yes,14",
    "2026-09-12,Top,Ash,nuc 6 polystyrene,2026,Dublin Airport,5,1.5,yes,5",
    "2026-09-12,Low,Elm,national timber,2025,Dublin Airport,8,2,yes,12",
)
ON = date(2026, 11, 14)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return noted(tmp_path_factory.mktemp("cold"), *LINES, headings=HEADINGS)


@pytest.fixture(scope="module")
def sheet(book: Path) -> RoundSheet:
    return round_sheet(Book(book), ON, members=30)


def test_no_hive_is_opened_and_nothing_is_said_that_needs_an_open_one(sheet: RoundSheet) -> None:
    assert not any(is_opened(colony) for colony in sheet.colonies)
    assert [branch.code for branch in sheet.at_any_colony] == ["signs of disease"]
    said = everywhere(sheet)
    assert "opened" not in said.title
    assert all(job in colony.jobs for job in said.jobs for colony in sheet.colonies)


def test_how_long_a_colony_was_not_seen_is_said_on_paper_and_in_the_terminal(
    sheet: RoundSheet, book: Path
) -> None:
    for colony in sheet_content(sheet, "a4")["colonies"]:
        assert "seen 9 weeks ago" in colony["place"]
    told = CliRunner().invoke(app, ["round", "--book", str(book), "--on", f"{ON}"])
    assert told.stdout.count("seen 9 weeks ago") == len(LINES)
    assert "no brood" in told.stdout
    assert "0.0 (0.0 to 0.0)" not in told.stdout


def test_what_treats_and_the_fondant_that_is_asked_for_are_loaded(sheet: RoundSheet) -> None:
    for stop in sheet.load:
        here = [colony for colony in sheet.colonies if colony.yard == stop.yard]
        grams = sum(each.portion.syrup_g for each in here if each.portion.feed == "fondant")
        assert grams / 1000.0 <= stop.fondant_kg < grams / 1000.0 + 0.1
        treated = sum(any("Treat with oxalic acid" in job for job in each.jobs) for each in here)
        loaded = [item for item in stop.items if item.startswith("oxalic acid")]
        assert len(loaded) == bool(treated)
    assert any("oxalic acid" in item for stop in sheet.load for item in stop.items)

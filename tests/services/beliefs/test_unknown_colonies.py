"""Notes of colonies that never came into the book, on the round's sheet."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from uuid import uuid4

import pytest

from combwright.planning.sheet import RoundSheet
from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.services.rounds.from_book import NOTICES, round_sheet
from combwright.terms.entries import Colony, Visit, Yard

START = date(2027, 4, 1)
SEEN = date(2027, 4, 8)


def sheet_of(book: Book, strangers: Sequence[str], on: date = date(2027, 4, 15)) -> RoundSheet:
    """A round of a book that the gate did not see, as after a restored or merged file."""
    colony = Colony(id=uuid4(), on=START, colony="Bramble", yard="Top", hive="national timber")
    seen = [Visit(id=uuid4(), on=SEEN, colony=name, frames_of_bees=4) for name in strangers]
    with book.writing() as db:
        keep(db, [Yard(id=uuid4(), on=START, yard="Top"), colony, *seen])
    return round_sheet(book, on, members=20)


@pytest.mark.parametrize(
    ("name", "remedy"),
    [
        ("brambel", "correct the name if “Bramble” is meant, or write an entry for the colony."),
        ("Vetch", "write an entry for the colony, or correct the name."),
    ],
)
def test_a_stranger_is_named_with_what_to_do(tmp_path: Path, name: str, remedy: str) -> None:
    sheet = sheet_of(Book(tmp_path / "a.book"), [name, "Bramble"])
    first, *usual = sheet.notices
    assert f"“{name}”" in first
    assert "8 April 2027" in first
    assert first.endswith(remedy)
    assert tuple(usual) == NOTICES
    assert [each.colony for each in sheet.colonies] == ["Bramble"]


def test_of_many_strangers_a_handful_is_named(tmp_path: Path) -> None:
    sheet = sheet_of(Book(tmp_path / "a.book"), [f"Stray {number}" for number in range(8)])
    told = sheet.notices[: -len(NOTICES)]
    assert len(told) == 6
    assert told[-1].startswith("And 3 more")


def test_what_is_noted_on_the_day_itself_is_no_stranger_yet(tmp_path: Path) -> None:
    assert tuple(sheet_of(Book(tmp_path / "a.book"), ["Stray"], on=SEEN).notices) == NOTICES

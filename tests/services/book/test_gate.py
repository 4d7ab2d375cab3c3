"""The same gate stands in all three ways into a book: form, notebook, entries of the API."""

from pathlib import Path
from uuid import uuid4

import pytest
from tests.noted import noted_in
from tests.postgres import Places
from tests.records.samples import noted_as

from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, add_entries, add_notebook
from combwright.services.book.entry_form import take_entry
from combwright.services.book.notes import NoteError, take_note

OAK = "2026-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"


@pytest.fixture
def book(places: Places, tmp_path: Path) -> Book:
    return noted_in(Book(places("a.book")), tmp_path, OAK)


@pytest.mark.parametrize("on", ["2047-04-03", "9999-12-31"])
def test_a_day_years_ahead_gets_in_by_no_way(book: Book, tmp_path: Path, on: str) -> None:
    before = book.now().last
    with pytest.raises(NoteError, match="year"):
        take_note(book, {"note": str(uuid4()), "on": on, "colony": "Oak", "frames_of_bees": "5"})
    with pytest.raises(RefusedError, match="year"):
        add_entries(book, [noted_as("visit", 5, on, colony="Oak", frames_of_bees=5)])
    (tmp_path / "more.csv").write_text(f"date,colony,frames of bees\n{on},Oak,5\n", "utf-8")
    with pytest.raises(RefusedError, match="year"):
        add_notebook(book, tmp_path / "more.csv")
    assert book.now().last == before


def test_an_unknown_climate_gets_in_by_no_way(book: Book, tmp_path: Path) -> None:
    before = book.now().last
    told = {"id": str(uuid4()), "on": "2026-04-03", "yard": "Low", "climate": "Atlantis"}
    with pytest.raises(NoteError, match="Atlantis"):
        take_entry(book, "yard", told)
    with pytest.raises(RefusedError, match="Atlantis"):
        add_entries(book, [noted_as("yard", 5, "2026-04-03", yard="Low", climate="Atlantis")])
    (tmp_path / "more.csv").write_text(
        "date,colony,yard,climate\n2026-04-03,,Low,Atlantis\n", "utf-8"
    )
    with pytest.raises(RefusedError, match="Atlantis"):
        add_notebook(book, tmp_path / "more.csv")
    assert book.now().last == before

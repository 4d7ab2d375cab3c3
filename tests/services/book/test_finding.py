"""Notes are found by the beginnings of their words, as they stand after corrections."""

from datetime import date
from uuid import uuid4

import pytest
from tests.postgres import Places

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.book.finding import find
from combwright.services.book.mending import strike
from combwright.terms.entries import Colony, Noted, Visit, Yard


@pytest.fixture
def book(places: Places) -> Book:
    made = Book(places("keeper.book"))
    first = date(2026, 4, 1)
    at = {"yard": "Home", "hive": "national timber"}
    notes: list[Noted] = [
        Yard(id=uuid4(), on=first, yard="Home", climate="Cork Airport"),
        *(Colony(id=uuid4(), on=first, colony=name, **at) for name in ("Dún", "Ash")),
        Visit(id=uuid4(), on=date(2026, 8, 2), colony="Ash", remark="Wasps at the door"),
        Visit(id=uuid4(), on=date(2027, 8, 9), colony="Dún", remark="wasp traps out, no flow"),
    ]
    add_entries(made, notes)
    return made


@pytest.mark.parametrize(
    ("words", "days"),
    [
        ("wasp", ["2027-08-09", "2026-08-02"]),
        ("WASPS", ["2026-08-02"]),
        ("flow wasp", ["2027-08-09"]),
        ("dun wasp", ["2027-08-09"]),
        ('"wasp* OR -', ["2027-08-09", "2026-08-02"]),
        ("", []),
        ("*", []),
        ("hornet", []),
    ],
)
def test_every_word_must_begin_a_word(book: Book, words: str, days: list[str]) -> None:
    found = [str(one.on) for one in find(book, words.replace(" OR -", "")) if one.kind == "visit"]
    assert found == days


def test_what_was_struck_out_is_not_found(book: Book) -> None:
    visit = next(each for each in book.now().entries if each.remark.startswith("Wasps"))
    strike(book, visit, change=uuid4(), on=date(2026, 8, 3), reason="other hive")
    assert [one.about for one in find(book, "wasp")] == ["Dún"]

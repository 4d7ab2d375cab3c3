"""Notes are found by the beginnings of their words, as they stand after corrections."""

from datetime import date
from io import BytesIO
from uuid import uuid4

import pytest
from PIL import Image
from tests.postgres import Places

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.book.finding import find
from combwright.services.book.mending import mend, strike
from combwright.services.book.photos import Photos
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


def test_photos_are_found_by_colony_day_and_word_and_stay_with_a_note_put_right(book: Book) -> None:
    visits = [each for each in book.now().entries if isinstance(each, Visit)]
    for each in visits:
        Photos(book).keep_of(each.id, photo())
    later = date(2027, 9, 1)
    mend(book, visits[1], {"remark": "hornets"}, change=uuid4(), on=later, reason="looked again")
    found = find(book, "", only_photos=True)
    assert [(str(one.on), one.about) for one in found] == [
        ("2027-08-09", "Dún"),
        ("2026-08-02", "Ash"),
    ]
    assert all(one.has_photo for one in found)
    assert find(book, "", on=date(2026, 8, 2), only_photos=True) == found[1:]
    assert find(book, "ash", only_photos=True) == find(book, "ash door") == found[1:]
    assert find(book, "hornet") == found[:1]
    assert Photos(book).of(found[0].entry) == Photos(book).of(visits[1].id)
    assert [one.kind for one in find(book, "", on=date(2026, 4, 1))] == ["colony", "colony", "yard"]


def photo() -> bytes:
    made = BytesIO()
    Image.new("RGB", (40, 30), "orange").save(made, "JPEG")
    return made.getvalue()


def test_what_was_struck_out_is_not_found(book: Book) -> None:
    visit = next(each for each in book.now().entries if each.remark.startswith("Wasps"))
    strike(book, visit, change=uuid4(), on=date(2026, 8, 3), reason="other hive")
    assert [one.about for one in find(book, "wasp")] == ["Dún"]

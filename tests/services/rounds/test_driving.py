"""The keeper's own order of driving."""

from datetime import date
from pathlib import Path
from uuid import uuid4

from tests.noted import noted

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.situations import AskedRound, situations_of
from combwright.terms.entries import Visit, Yard

ON = date(2027, 4, 17)
YARDS = ("Abbey", "Bog", "Church")
LINES = [
    f"2027-04-10,{yard},{yard} 1,national timber,2026,Dublin Airport,7,3,yes,2" for yard in YARDS
]


def order(book: Book) -> list[str]:
    return sorted(YARDS, key=situations_of(book, AskedRound(ON, members=20)).driven_to)


def test_the_keeper_s_own_order_comes_first_then_names_and_the_sick_last(tmp_path: Path) -> None:
    book = Book(noted(tmp_path, *LINES))
    assert order(book) == ["Abbey", "Bog", "Church"]
    day = date(2027, 4, 12)
    add_entries(book, [Yard(id=uuid4(), on=day, yard="Church", stop=1)])
    add_entries(book, [Yard(id=uuid4(), on=day, yard="Bog", stop=2)])
    assert order(book) == ["Church", "Bog", "Abbey"]
    sheet = round_sheet(book, ON, members=20)
    assert [each.colony for each in sheet.colonies] == ["Church 1", "Bog 1", "Abbey 1"]
    assert [stop.yard for stop in sheet.load] == sheet.yards == ["Church", "Bog", "Abbey"]
    sick = Visit(id=uuid4(), on=day, colony="Church 1", disease_signs="sunken cappings")
    add_entries(book, [sick])
    assert order(book) == ["Bog", "Abbey", "Church"]

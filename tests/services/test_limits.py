"""The keeper's own limits on harm, and the forage of a yard."""

from datetime import date
from pathlib import Path
from uuid import uuid4

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.rounds.situations import AskedRound, limits_on, situations_of
from combwright.terms.entries import Colony, Limit, Yard

ON = date(2027, 5, 1)


def limit(percent: float, on: date) -> Limit:
    return Limit(id=uuid4(), on=on, harm="no room", percent=percent)


def test_the_last_limit_up_to_the_day_counts() -> None:
    entries = [limit(20, date(2027, 3, 1)), limit(5, date(2027, 4, 1)), limit(1, date(2027, 6, 1))]
    assert limits_on(entries, ON).no_room == 0.05
    assert limits_on([], ON).no_room == 0.10


def test_a_limit_in_the_book_reaches_the_decisions(tmp_path: Path) -> None:
    book = Book(tmp_path / "keeper.book")
    start = date(2027, 4, 1)
    yard = Yard(id=uuid4(), on=start, yard="Top Field")
    colony = Colony(id=uuid4(), on=start, colony="Reed", yard="Top Field", hive="national timber")
    add_entries(book, [yard, colony, limit(3, date(2027, 4, 2))])
    situations = situations_of(book, AskedRound(ON, members=20))
    assert situations.of(situations.follow("Reed")).limits.no_room == 0.03


def test_yards_of_other_districts_have_other_flows(tmp_path: Path) -> None:
    book = Book(tmp_path / "keeper.book")
    start = date(2027, 7, 1)
    add_entries(
        book,
        [
            Yard(id=uuid4(), on=start, yard="Low"),
            Yard(id=uuid4(), on=start, yard="High", district="heather moor"),
        ],
    )
    around = situations_of(book, AskedRound(date(2027, 8, 25), members=20)).around
    low, high = (
        around.season(name, date(2027, 8, 10), date(2027, 8, 25))[:, :, 4].mean()
        for name in ("Low", "High")
    )
    assert high > 1.5 * low

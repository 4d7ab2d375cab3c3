"""Ten years of three hundred colonies: the register of a year, a history, a search, a check.

Usage: python benchmarks/records.py
"""

import sys
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from uuid import UUID

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.services.book.checking import check_book
from combwright.services.book.finding import find
from combwright.services.book.history import visit_lines
from combwright.services.register.medicines import register
from combwright.terms.entries import AnyEntry, Colony, Product, Purchase, Treatment, Visit, Yard

COLONIES, YARDS, YEARS, VISITS = 300, 12, 10, 18
FIRST_YEAR = 2017
# seconds: what is asked of each
LINES = {"register of a year": 2.0, "history of a colony": 0.1, "search": 0.05}


def ids() -> Iterator[UUID]:
    number = 0
    while True:
        number += 1
        yield UUID(int=number)


def written() -> Iterator[AnyEntry]:
    """Go through the notes in the order of their days."""
    key = ids()
    begin = date(FIRST_YEAR, 1, 1)
    for yard in range(YARDS):
        yield Yard(id=next(key), on=begin, yard=f"Yard {yard}")
    for number in range(COLONIES):
        name, place = f"Colony {number}", f"Yard {number % YARDS}"
        yield Colony(id=next(key), on=begin, colony=name, yard=place, hive="national timber")
    yield Product(id=next(key), on=begin, product="Example strip", withdrawal_days=0)
    for year in range(FIRST_YEAR, FIRST_YEAR + YEARS):
        yield from season(year, key)


def season(year: int, key: Iterator[UUID]) -> Iterator[AnyEntry]:
    """Go through one year: visits from April on, one treatment of every colony in August."""
    for visit in range(VISITS):
        on = date(year, 4, 1) + timedelta(days=8 * visit)
        for number in range(COLONIES):
            remark = "wasps at the entrance" if (number + visit) % 97 == 0 else ""
            bees = 5 + (number + visit) % 6
            yield Visit(
                id=next(key), on=on, colony=f"Colony {number}", frames_of_bees=bees, remark=remark
            )
    bought = date(year, 8, 1)
    yield Purchase(
        id=next(key), on=bought, product="Example strip", quantity=600, unit="strips",
        batch=f"B{year}", supplier="Example Supply", supplier_address="1 Main St", proof="INV",
        no_prescription=True,
    )  # fmt: skip
    for number in range(COLONIES):
        yield Treatment(
            id=next(key), on=date(year, 8, 10), colony=f"Colony {number}", substance="other",
            product="Example strip", batch=f"B{year}", quantity=2, until=date(year, 9, 20),
        )  # fmt: skip


def timed(work: Callable[[], object]) -> float:
    begun = perf_counter()
    work()
    return perf_counter() - begun


def main() -> int:
    with TemporaryDirectory() as folder:
        book = Book(Path(folder) / "ten years.book")
        entries = list(written())
        with book.writing() as db:
            seconds = timed(lambda: keep(db, entries))
        print(f"{len(entries)} notes kept in {seconds:.1f} s")
        print(f"read once: {timed(book.now):.1f} s")
        print(f"words put in order once: {timed(lambda: find(book, 'wasps')):.2f} s")
        print(f"every seal checked: {timed(lambda: check_book(book)):.2f} s")
        last = FIRST_YEAR + YEARS - 1
        told = {
            "register of a year": timed(lambda: register(book, "IE", [last])),
            "history of a colony": timed(lambda: visit_lines(book, colony="Colony 7")),
            "search": timed(lambda: find(book, "wasps entrance")),
        }
        for what, seconds in told.items():
            print(f"{what}: {1000 * seconds:.0f} ms, asked for: {1000 * LINES[what]:.0f} ms")
        return int(any(seconds > LINES[what] for what, seconds in told.items()))


if __name__ == "__main__":
    sys.exit(main())

"""Buyers stand apart from the entries: they go, and entries and seals stay whole."""

import sqlite3
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from uuid import UUID

import pytest
import sqlalchemy as sa
from tests.postgres import Places
from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.integrity import thoroughly
from combwright.records.store.kept_entries import history, keep, row
from combwright.records.store.migrations.run import upgrade
from combwright.records.store.personal import DELETED, forget
from combwright.records.store.seals import BEFORE_ALL, check_seals, found_by, seal_rows
from combwright.records.store.tables import entry, old_seal, seal
from combwright.terms.entries import AnyEntry, BeesSold, Correction, Movement, NamesDeleted, Order

DAY = date(2027, 5, 1)
SALE = BeesSold(
    id=UUID(int=11), on=DAY, sale="27-1", buyer="Murphy", address="Lane 4", contact="murphy@x.ie",
    yard="Home", remark="Murphy pays later",
)  # fmt: skip
ORDER = Order(id=UUID(int=12), on=DAY, order="7", customer="Murphy", wanted_by=DAY)
MENDED = Correction(
    id=UUID(int=13), on=DAY, corrects=SALE.id,
    replacement=SALE.model_copy(update={"id": UUID(int=14), "address": "Murphy’s Lane 5"}),
)  # fmt: skip
COMBS = Movement(id=UUID(int=15), on=DAY, what="combs", from_yard="Home", yard="Heath")
ALL: list[AnyEntry] = [a_visit(1), SALE, ORDER, MENDED, COMBS, a_visit(2)]
NAMED = [SALE.id, ORDER.id, MENDED.id]


def kept(book: Book, entries: Sequence[AnyEntry] = ALL) -> Book:
    with book.writing() as db:
        keep(db, entries)
    return book


def test_entries_read_as_they_were_written_and_writing_them_twice_changes_nothing(
    places: Places,
) -> None:
    book = kept(Book(places("a.book")))
    with book.writing() as db:
        assert history(db) == ALL
        assert keep(db, ALL) == 0
        bodies = str(db.scalars(sa.select(entry.c.body)).all())
    assert "Murphy" not in bodies
    assert "Heath" in bodies
    assert book.now().history == ALL


def test_what_is_deleted_is_gone_and_entries_and_seals_stay(places: Places) -> None:
    book = kept(Book(places("a.book")))
    with book.reading() as db:
        before = check_seals(db)
    with book.writing() as db:
        assert forget(db, NAMED) == 3
        assert check_seals(db) == before
        assert keep(db, ALL) == 0  # a phone that sends them again brings nothing back
        sale, order, mended = history(db)[1:4]
    assert sale == SALE.model_copy(
        update=dict.fromkeys(("buyer", "address", "contact", "remark"), DELETED)
    )
    assert order.customer == DELETED  # type: ignore[union-attr]
    assert mended.replacement.address == DELETED  # type: ignore[union-attr]
    assert book.check() == []


def test_a_book_that_is_open_elsewhere_learns_of_it(tmp_path: Path) -> None:
    here = kept(Book(tmp_path / "a.book"))
    assert here.now().orders["7"].customer == "Murphy"
    there = Book(tmp_path / "a.book")
    with there.writing() as db:
        forget(db, NAMED)
        keep(db, [NamesDeleted(id=UUID(int=20), on=DAY, notes="order 7")])
    assert here.now().orders["7"].customer == DELETED


def test_nothing_of_a_name_is_left_in_the_file(tmp_path: Path) -> None:
    book = kept(Book(tmp_path / "a.book"))
    book.close()
    assert b"Murphy" in (tmp_path / "a.book").read_bytes()
    with book.writing() as db:
        forget(db, NAMED)
    book.close()
    assert not [each for each in tmp_path.iterdir() if b"Murphy" in each.read_bytes()]


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE personal SET told = replace(told, 'Lane 4', 'Lane 9')",
        "UPDATE personal SET salt = '00' WHERE sequence = 3",
        "INSERT INTO personal VALUES (1, '00', '{\"remark\": \"x\"}')",
    ],
)
def test_a_name_that_was_altered_shows(tmp_path: Path, statement: str) -> None:
    kept(Book(tmp_path / "a.book")).close()
    with sqlite3.connect(tmp_path / "a.book") as db:
        db.execute(statement)
    (wrong,) = Book(tmp_path / "a.book").check()
    assert "buyer in entry" in wrong


def test_the_names_of_an_old_book_move_out_and_its_seals_are_kept() -> None:
    engine = sa.create_engine("sqlite://")
    with engine.begin() as db:
        upgrade(db, "0002")
        rows = [row(each, at) for at, each in enumerate(ALL, 1)]
        db.execute(sa.insert(entry), rows)
        sealed = list(seal_rows(BEFORE_ALL, ((one["sequence"], one["body"]) for one in rows)))
        db.execute(sa.insert(seal), sealed)
        upgrade(db)
        assert history(db) == ALL
        assert "Murphy" not in str(db.scalars(sa.select(entry.c.body)).all())
        assert check_seals(db).broken_at is None
        assert [one._asdict() for one in db.execute(sa.select(old_seal))] == sealed
        assert found_by(db, sealed[-1]["hash"][:12]) == (len(ALL), True)
        assert db.scalar(sa.select(seal.c.hash).where(seal.c.sequence == 1)) == sealed[0]["hash"]
        assert thoroughly(db) == []
        assert forget(db, NAMED) == 3

"""Books that another program changed, or a failing disk."""

import sqlite3
from datetime import date
from pathlib import Path

import pytest
from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.records.store.weather_days import places_with_weather, weather_between
from combwright.terms.errors import BookError


@pytest.fixture
def kept(tmp_path: Path) -> Path:
    """Give a book that holds one visit."""
    book = Book(tmp_path / "kept.book")
    with book.writing() as db:
        keep(db, [a_visit(1)])
    book.close()
    return tmp_path / "kept.book"


def use(book: Book) -> None:
    """Do with a book what reads each of its tables."""
    book.now()
    with book.writing() as db:
        keep(db, [a_visit(1)])
        places_with_weather(db)
        weather_between(db, "Top", date(2026, 1, 1), date(2026, 2, 1))


@pytest.mark.parametrize(
    "change",
    [
        "DROP TABLE entry",
        "ALTER TABLE entry RENAME COLUMN body TO soul",
        "DROP TABLE weather_day",
        "UPDATE entry SET body = 'no json'",
        'UPDATE entry SET body = \'{"kind": "unheard of"}\'',
        "UPDATE entry SET body = NULL",
        "UPDATE entry SET body = '[' || replace(hex(zeroblob(60000)), '00', '[')",
        "UPDATE entry SET sequence = 'first'",
    ],
)
def test_a_tampered_book_is_named_as_such(kept: Path, change: str) -> None:
    with sqlite3.connect(kept) as other:
        for (name,) in other.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'"):
            other.execute(f"DROP TRIGGER {name}")
        schema = "SELECT replace(sql, ' NOT NULL', '') FROM sqlite_master WHERE name = 'entry'"
        (made,) = other.execute(schema).fetchone()
        other.execute("PRAGMA writable_schema = ON")
        other.execute("UPDATE sqlite_master SET sql = ? WHERE name = 'entry'", [made])
    other.close()
    with sqlite3.connect(kept) as other:
        other.execute(change)
    other.close()
    with pytest.raises(BookError) as caught:
        use(Book(kept))
    assert "estore" in caught.value.remedy

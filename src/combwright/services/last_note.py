"""The day from which to look ahead when none is asked for."""

from datetime import date, timedelta
from pathlib import Path

from combwright.records.engine import open_book, reading
from combwright.records.entries import all_entries
from combwright.terms.errors import NotFoundError


def after_last_note(book: Path) -> date:
    """Give the day after the last note of a book."""
    engine = open_book(book, must_exist=True)
    try:
        with reading(engine) as db:
            days = [entry.on for entry in all_entries(db)]
    finally:
        engine.dispose()
    if not days:
        raise NotFoundError(
            "The book is empty.", where=str(book), remedy="Add notes with `combwright book add`."
        )
    return max(days) + timedelta(days=1)

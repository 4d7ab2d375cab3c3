"""Rows as the database gives them back, where a damaged or tampered one is named as such."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, Final

import sqlalchemy as sa

from combwright.records.store.personal import put_back
from combwright.terms.entries import ENTRY, AnyEntry
from combwright.terms.errors import BookError

# what reading a value raises that is not of its column's kind; pydantic's own is a ValueError
UNREADABLE: Final = (ValueError, TypeError, AttributeError, OverflowError, RecursionError)


def entries_in(db: sa.Connection, wanted: sa.Select[Any]) -> list[AnyEntry]:
    """Read the entries whose bodies, and what is kept apart from them, are asked for."""
    with readable(db):
        return [ENTRY.validate_python(put_back(row.body, row.told)) for row in db.execute(wanted)]


@contextmanager
def readable(db: sa.Connection) -> Iterator[None]:
    """Read from a book, or say that it cannot be read."""
    try:
        yield
    except UNREADABLE as error:
        raise unreadable(db, error) from error


def unreadable(db: sa.Connection, error: Exception) -> BookError:
    """Say that a value in a book is not what was written there."""
    said = str(error).split("\n", maxsplit=1)[0][:200]
    return BookError(
        f"The book holds something that was not written by this program ({said}).",
        where=str(db.get_execution_options()["place"]),
        remedy="It is damaged, or was changed by another program: restore it from a backup.",
    )

"""What the database says when it fails, in words that name the place and the way out."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

import sqlalchemy as sa

from combwright.terms.errors import BookError, PassingError

SENTENCES = {
    "SQLITE_BUSY": (
        "Another program is writing to this book.",
        "Nothing was changed. Wait until it has finished, then try again.",
    ),
    "SQLITE_READONLY": (
        "The book cannot be written: its file or folder is read-only.",
        "Nothing was changed. Allow writing there, or copy the book elsewhere and use --book.",
    ),
    "SQLITE_FULL": (
        "The disk is full.",
        "Nothing was changed. Free some space, then try again.",
    ),
    "SQLITE_CANTOPEN": (
        "The book cannot be opened.",
        "Check that this is a file in a folder you may write to.",
    ),
    "SQLITE_PERM": ("The book cannot be opened.", "Ask for the right to read and write it."),
    "SQLITE_NOTADB": (
        "This file is not a Combwright book.",
        "Name the book's own file with --book; a notebook is read in with `combwright book add`.",
    ),
    "SQLITE_CORRUPT": (
        "The book's file is damaged.",
        "Restore it from your last copy; keep the damaged file until that has worked.",
    ),
    "SQLITE_IOERR": (
        "The disk failed while the book was read or written.",
        "Nothing was changed. Check the disk and its free space, then try again.",
    ),
}
PASSING = frozenset({"SQLITE_BUSY", "SQLITE_FULL", "SQLITE_IOERR"})


def is_of_its_structure(error: Exception) -> bool:
    """Tell whether the file lacks what every book has: it is damaged, or somebody changed it."""
    said = str(getattr(error, "orig", error))
    return said.startswith(("no such table", "no such column", "malformed database schema"))


@contextmanager
def explained(place: str) -> Iterator[None]:
    """Turn a failure of the database that a person can put right into a sentence."""
    try:
        yield
    except (sa.exc.DBAPIError, sqlite3.Error) as error:
        code = getattr(getattr(error, "orig", error), "sqlite_errorname", "")
        # SQLite refines its codes: SQLITE_READONLY_DIRECTORY is a kind of SQLITE_READONLY
        family = "_".join(code.split("_")[:2])
        if family not in SENTENCES:
            if not is_of_its_structure(error):
                raise
            family = "SQLITE_CORRUPT"
        what, remedy = SENTENCES[family]
        trouble = PassingError if family in PASSING else BookError
        raise trouble(what, where=place, remedy=remedy) from error

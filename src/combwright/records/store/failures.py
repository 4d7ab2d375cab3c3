"""What the database says when it fails, in words that name the place and the way out."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

import sqlalchemy as sa

from combwright.terms.errors import BookError, PassingError

BUSY: Final = "SQLITE_BUSY"
DAMAGED: Final = "SQLITE_CORRUPT"
AWAY: Final = "08"
SENTENCES: Final = {
    BUSY: (
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
        "Name the book's own file with --book; a notebook is read in with “combwright book add”.",
    ),
    DAMAGED: (
        "The book is damaged.",
        "Restore it from your last copy; keep the damaged one until that has worked.",
    ),
    "SQLITE_IOERR": (
        "The disk failed while the book was read or written.",
        "Nothing was changed. Check the disk and its free space, then try again.",
    ),
    AWAY: (
        "The server of the book does not answer, or does not let us in.",
        "Look whether it runs (and offers TLS, if elsewhere), and at address, user and password.",
    ),
}
PASSING: Final = frozenset({BUSY, "SQLITE_FULL", "SQLITE_IOERR", AWAY})
# how SQLSTATEs of PostgreSQL begin, https://www.postgresql.org/docs/15/errcodes-appendix.html
STATES: Final = {
    "55P03": BUSY,  # the lock was not to be had
    "40": BUSY,  # of two that waited for each other
    "25006": "SQLITE_READONLY",
    "53100": "SQLITE_FULL",
    "42501": "SQLITE_PERM",
    "3F": "SQLITE_PERM",  # there is no such schema
    "42P01": DAMAGED,  # a table that every book has
    "42703": DAMAGED,  # a column
    "XX": DAMAGED,
    "58": "SQLITE_IOERR",
    "08": AWAY,
    "28": AWAY,  # a wrong password
    "3D": AWAY,  # no such database
    "53": AWAY,  # too many connections, or no memory
    "57": AWAY,  # it is being stopped, or not ready yet
}


def is_of_its_structure(error: Exception) -> bool:
    """Tell whether the file lacks what every book has: it is damaged, or somebody changed it."""
    said = str(getattr(error, "orig", error))
    return said.startswith(("no such table", "no such column", "malformed database schema"))


def family_of(error: Exception) -> str:
    """Tell which sentence fits a failure, if any does."""
    raised = getattr(error, "orig", error)
    if isinstance(raised, sqlite3.Error):
        # SQLite refines its codes: SQLITE_READONLY_DIRECTORY is a kind of SQLITE_READONLY
        family = "_".join(getattr(raised, "sqlite_errorname", "").split("_")[:2])
        return DAMAGED if family not in SENTENCES and is_of_its_structure(error) else family
    state = getattr(raised, "sqlstate", None)
    if state is None:  # the server was not reached, or is gone
        return AWAY if isinstance(error, sa.exc.OperationalError) else ""
    return next((family for begins, family in STATES.items() if state.startswith(begins)), "")


@contextmanager
def explained(place: str) -> Iterator[None]:
    """Turn a failure of the database that a person can put right into a sentence."""
    try:
        yield
    except (sa.exc.DBAPIError, sqlite3.Error) as error:
        family = family_of(error)
        if family not in SENTENCES:
            raise
        what, remedy = SENTENCES[family]
        trouble = PassingError if family in PASSING else BookError
        raise trouble(what, where=place, remedy=remedy) from error

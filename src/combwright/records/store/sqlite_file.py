"""A book that is one file of SQLite: the default, for one keeper or one page."""

import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path
from time import sleep
from typing import Any
from urllib.parse import quote

import sqlalchemy as sa

from combwright.records.store.failures import explained
from combwright.records.store.private_folders import private_folder
from combwright.terms.errors import BookError

BUSY_TIMEOUT_MS = 5000
PAUSE_MS = 20


class BookFile:
    """Where the book is, what it is called, and how it is opened."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.place = str(path)
        self.name = path.name

    @property
    def key(self) -> str:
        """What tells this file from others, however it was named."""
        return str(self.path.resolve())

    @property
    def is_gone(self) -> bool:
        """Whether there is no file; SQLite would make an empty one."""
        return not is_there(self.path)

    def beside(self, what: str) -> Path:
        """Say where things lie that go with the book."""
        return self.path.with_name(f"{self.path.name}.{what}")

    def engine(self) -> sa.Engine:
        """Make ready to open it; there is nothing in a new one."""
        make_folder(self.path.parent)
        make_private(self.path)
        # no pool: a book that nobody reads or writes is one file, which can be copied as it is
        book = sa.create_engine(
            address(self.path), poolclass=sa.NullPool, execution_options={"place": self.place}
        )
        sa.event.listen(book, "connect", prepare)
        sa.event.listen(book, "begin", begin)
        return book

    def make_ready(self, book: sa.Engine) -> None:
        """Switch a new book to a write-ahead log, so that reading and writing need not wait.

        SQLite does not wait for this lock by itself; another process may just be making the book.
        """
        tries = BUSY_TIMEOUT_MS // PAUSE_MS
        with explained(self.place), book.connect() as db:
            for left in reversed(range(tries)):
                try:
                    db.connection.cursor().execute("PRAGMA journal_mode = WAL")
                except sqlite3.OperationalError as error:
                    if error.sqlite_errorname != "SQLITE_BUSY" or not left:
                        raise
                    sleep(PAUSE_MS / 1000)
                else:
                    return

    def copy(self, book: sa.Engine, target: Path) -> None:
        """Copy it by SQLite’s own way, which sees it as it stands at one moment."""
        make_private(target)
        with (
            explained(self.place),
            closing(book.raw_connection()) as connection,
            closing(sqlite3.connect(target)) as made,
        ):
            source: Any = connection.driver_connection
            source.backup(made)


def address(path: Path) -> sa.URL:
    """Say how a book is opened: one that cannot be written, on a read-only disk say, as it lies.

    SQLite would want to make files beside it even to read. Where its log holds writing that is not
    in the book’s file yet, those files are there, and it is asked to read them as well.
    """
    if (
        not is_there(path)
        or not path.is_file()
        or (os.access(path, os.W_OK) and os.access(path.parent, os.W_OK))
    ):
        return sa.URL.create("sqlite", database=str(path))
    log = path.with_name(f"{path.name}-wal")
    as_it_lies = {} if log.exists() and log.stat().st_size else {"immutable": "1"}
    query = {"uri": "true", "mode": "ro"} | as_it_lies
    return sa.URL.create("sqlite", database=f"file:{quote(str(path))}", query=query)


def is_there(path: Path) -> bool:
    """Tell whether there is anything; a name that no file can have is not there."""
    with suppress(OSError, ValueError):
        return path.exists()
    return False


def make_folder(folder: Path) -> None:
    """Make the folder of a new book."""
    try:
        private_folder(folder)
    except OSError as error:
        raise BookError(
            f"The book's folder cannot be made: {error.strerror}.",
            where=str(folder),
            remedy="Name a book in a folder you may write to, with --book.",
        ) from error


def make_private(path: Path) -> None:
    """Make the file of a new book, which nobody but its owner may read; SQLite’s own copy that."""
    with suppress(OSError):  # SQLite says why it cannot be made
        os.close(os.open(path, os.O_CREAT | os.O_EXCL, 0o600))


def prepare(connection: Any, _record: object) -> None:  # noqa: ANN401  (the driver's own type)
    """Set up one connection to SQLite."""
    # transactions are begun by us alone: the driver would begin them too late to see a clash
    connection.isolation_level = None
    connection.execute(f"PRAGMA busy_timeout = {BUSY_TIMEOUT_MS}")
    connection.execute("PRAGMA foreign_keys = ON")
    # what is deleted of buyers is overwritten, not left in the file until its place is wanted
    connection.execute("PRAGMA secure_delete = ON")
    # without this, INSERT OR REPLACE would slip past the triggers that keep entries as they are
    connection.execute("PRAGMA recursive_triggers = ON")


def begin(db: sa.Connection) -> None:
    """Take the lock for writing at once, so that two writers queue instead of clashing midway."""
    writes = db.get_execution_options().get("writes", False)
    db.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")

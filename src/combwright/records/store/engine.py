"""Opening a book's file, and the two kinds of transaction on it."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from time import sleep
from typing import Any
from urllib.parse import quote, unquote

import sqlalchemy as sa

from combwright.records.store.failures import explained
from combwright.records.store.tables import CURRENT, version
from combwright.terms.errors import BookError

BUSY_TIMEOUT_MS = 5000
PAUSE_MS = 20


def open_engine(path: Path, *, must_exist: bool = False) -> sa.Engine:
    """Open a book; it is made when it is not there yet, and brought up to date when it is old.

    With ``must_exist`` it is refused, rather than made empty, where there is none.
    """
    place = str(path)
    if must_exist and not path.exists():
        raise BookError(
            "There is no book here yet.",
            where=place,
            remedy="Start one with `combwright book add FILE.csv`, or name another with --book.",
        )
    make_folder(path.parent)
    make_private(path)
    # no pool: a book that nobody reads or writes is one file, which can be copied as it is
    book = sa.create_engine(address(path), poolclass=sa.NullPool)
    sa.event.listen(book, "connect", prepare)
    sa.event.listen(book, "begin", begin)
    with reading(book) as db:
        found = version_of(db, place)
    if found != CURRENT:
        bring_up_to_date(book, place)
    return book


def address(path: Path) -> sa.URL:
    """Say how a book is opened: one that cannot be written, on a read-only disk say, as it lies.

    SQLite would want to make files beside it even to read. Where its log holds writing that is not
    in the book’s file yet, those files are there, and it is asked to read them as well.
    """
    if not path.is_file() or (os.access(path, os.W_OK) and os.access(path.parent, os.W_OK)):
        return sa.URL.create("sqlite", database=str(path))
    log = path.with_name(f"{path.name}-wal")
    as_it_lies = {} if log.exists() and log.stat().st_size else {"immutable": "1"}
    query = {"uri": "true", "mode": "ro"} | as_it_lies
    return sa.URL.create("sqlite", database=f"file:{quote(str(path))}", query=query)


@contextmanager
def writing(book: sa.Engine) -> Iterator[sa.Connection]:
    """One transaction that writes: all of it is kept, or nothing."""
    with (
        explained(place_of(book)),
        book.execution_options(writes=True).begin() as db,
    ):
        yield db


@contextmanager
def reading(book: sa.Engine) -> Iterator[sa.Connection]:
    """One transaction that reads: it sees the book as it stood when it began."""
    with explained(place_of(book)), book.begin() as db:
        yield db


def copy(book: sa.Engine, target: Path) -> None:
    """Copy a book by SQLite’s own way, which sees it as it stands at one moment."""
    make_private(target)
    with (
        explained(place_of(book)),
        closing(book.raw_connection()) as connection,
        closing(sqlite3.connect(target)) as made,
    ):
        source: Any = connection.driver_connection
        source.backup(made)


def place_of(book: sa.Engine) -> str:
    """Say where a book lies, for people."""
    return unquote(str(book.url.database).removeprefix("file:"))


def make_folder(folder: Path) -> None:
    """Make the folder of a new book."""
    try:
        for each in reversed([folder, *folder.parents]):
            each.mkdir(mode=0o700, exist_ok=True)
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
    # without this, INSERT OR REPLACE would slip past the triggers that keep entries as they are
    connection.execute("PRAGMA recursive_triggers = ON")


def begin(db: sa.Connection) -> None:
    """Take the lock for writing at once, so that two writers queue instead of clashing midway."""
    writes = db.get_execution_options().get("writes", False)
    db.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def version_of(db: sa.Connection, place: str) -> str | None:
    """Tell the version of a book, or ``None`` for a file that is still empty."""
    names = sa.inspect(db).get_table_names()
    if not names:
        return None
    if version.name not in names:
        raise BookError(
            "This file is a database, but not a Combwright book.",
            where=place,
            remedy="Name the book's own file with --book.",
        )
    found = db.scalar(sa.select(version.c.version_num))
    if found is not None and found > CURRENT:
        raise BookError(
            f"This book was written by a newer Combwright (book version {found}; "
            f"this program knows up to {CURRENT}).",
            where=place,
            remedy="Nothing was changed. Install the newer Combwright to use it.",
        )
    return found


def bring_up_to_date(book: sa.Engine, place: str) -> None:
    """Run the migrations that a book still lacks, all in one transaction."""
    from combwright.records.store.migrations.run import upgrade  # 0.3 s, not paid by a current book

    let_readers_go_on(book, place)
    with writing(book) as db:
        # another process may have been quicker while this one waited for the lock
        if version_of(db, place) != CURRENT:
            upgrade(db)


def let_readers_go_on(book: sa.Engine, place: str) -> None:
    """Switch a new book to a write-ahead log, so that reading and writing need not wait.

    SQLite does not wait for this lock by itself; another process may just be making the book.
    """
    tries = BUSY_TIMEOUT_MS // PAUSE_MS
    with explained(place), book.connect() as db:
        for left in reversed(range(tries)):
            try:
                db.connection.cursor().execute("PRAGMA journal_mode = WAL")
            except sqlite3.OperationalError as error:
                if error.sqlite_errorname != "SQLITE_BUSY" or not left:
                    raise
                sleep(PAUSE_MS / 1000)
            else:
                return

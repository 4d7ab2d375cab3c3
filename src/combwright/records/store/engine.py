"""Opening a book wherever it is kept, and the two kinds of transaction on it."""

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import TypeAlias

import sqlalchemy as sa

from combwright.records.store.failures import explained
from combwright.records.store.postgres_database import SCHEME, BookDatabase
from combwright.records.store.sqlite_file import BookFile
from combwright.records.store.tables import CURRENT, version
from combwright.terms.errors import BookError

AnyDatabase: TypeAlias = BookFile | BookDatabase


def kept_at(place: Path | str) -> AnyDatabase:
    """Tell a file from the address of a database."""
    named = str(place)
    is_address = isinstance(place, str) and named.startswith((f"{SCHEME}:", f"{SCHEME}+"))
    return BookDatabase(named) if is_address else BookFile(Path(place))


def open_engine(place: Path | str | AnyDatabase, *, must_exist: bool = False) -> sa.Engine:
    """Open a book; it is made when it is not there yet, and brought up to date when it is old.

    With ``must_exist`` it is refused, rather than made empty, where there is none.
    """
    kept = kept_at(place) if isinstance(place, Path | str) else place
    if must_exist and kept.is_gone:
        raise no_book(kept.place)
    with ExitStack() as unless_opened:
        book = kept.engine()
        unless_opened.callback(book.dispose)
        with reading(book) as db:
            found = version_of(db)
        if must_exist and found is None and isinstance(kept, BookDatabase):
            raise no_book(kept.place)
        if found != CURRENT:
            bring_up_to_date(book, kept)
        unless_opened.pop_all()
        return book


def no_book(place: str) -> BookError:
    """Say that there is no book."""
    return BookError(
        "There is no book here yet.",
        where=place,
        remedy="Start one with “combwright book add FILE.csv”, or name another with --book.",
    )


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


def place_of(book: sa.Engine | sa.Connection) -> str:
    """Say where a book lies, for people."""
    return str(book.get_execution_options()["place"])


def version_of(db: sa.Connection) -> str | None:
    """Tell the version of a book, or ``None`` where there is nothing yet."""
    names = sa.inspect(db).get_table_names()
    if not names:
        return None
    if version.name not in names:
        raise BookError(
            "This is a database, but not a Combwright book.",
            where=place_of(db),
            remedy="Name the book's own place with --book.",
        )
    found = db.scalar(sa.select(version.c.version_num))
    if found is not None and found > CURRENT:
        raise BookError(
            f"This book was written by a newer Combwright (book version {found}; "
            f"this program knows up to {CURRENT}).",
            where=place_of(db),
            remedy="Nothing was changed. Install the newer Combwright to use it.",
        )
    return found


def bring_up_to_date(book: sa.Engine, kept: AnyDatabase) -> None:
    """Run the migrations that a book still lacks, all in one transaction."""
    from combwright.records.store.migrations.run import upgrade  # 0.3 s, not paid by a current book

    kept.make_ready(book)
    with writing(book) as db:
        # another process may have been quicker while this one waited for the lock
        if version_of(db) != CURRENT:
            upgrade(db)

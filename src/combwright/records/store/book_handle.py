"""A book as a handle: opened once in the face, and passed down to whatever reads or writes it."""

from collections.abc import Callable, Iterator, Mapping
from contextlib import closing, contextmanager
from pathlib import Path
from threading import Lock
from typing import Final, Self, TypeAlias
from weakref import finalize

import sqlalchemy as sa

from combwright.kit.catalogue import Catalogue, catalogue
from combwright.records.store.contents import Contents
from combwright.records.store.engine import kept_at, open_engine, reading, writing
from combwright.records.store.integrity import quickly, thoroughly
from combwright.records.store.newly_written import marks, written_since
from combwright.records.store.pouring import Poured, pour
from combwright.records.store.sqlite_file import BookFile
from combwright.terms.entries import AnyEntry, NamesDeleted
from combwright.terms.errors import BookError

Transaction: TypeAlias = sa.Connection
DAMAGED: Final = (
    "It can still be read. Keep it as it is, look through it with “combwright book check”, and "
    "restore the last backup with “combwright restore”."
)


class Book:
    """One book, in a file or at the address of a database; untouched until it is read or written.

    With ``must_exist`` it is refused, rather than made empty, where there is none; in ``kit`` its
    hives are looked up; ``warn`` is told of one that is damaged: it is read, never written to.
    """

    def __init__(
        self,
        place: Path | str,
        *,
        must_exist: bool = False,
        kit: Catalogue | None = None,
        warn: Callable[[str], None] = lambda _: None,
    ) -> None:
        self._kept = kept_at(place)
        self.kit = kit or catalogue()
        self._must_exist = must_exist
        self._warn = warn
        self._engine: sa.Engine | None = None
        self._trouble = ""
        self._lock, self._opening = Lock(), Lock()
        self._history: list[AnyEntry] = []
        self._newest = Contents((), self.kit)

    @property
    def place(self) -> str:
        """Where the book is, for people."""
        return self._kept.place

    @property
    def name(self) -> str:
        """What the book is called."""
        return self._kept.name

    @property
    def file(self) -> Path | None:
        """The book's file, where it is one."""
        return self._kept.path if isinstance(self._kept, BookFile) else None

    @property
    def key(self) -> str:
        """What tells this book from others, however it was named."""
        return self._kept.key

    def beside(self, what: str) -> Path:
        """Say where things lie that go with the book, and are not in it, such as its photos."""
        return self._kept.beside(what)

    def open(self) -> Self:
        """Open the book now rather than when it is needed."""
        self._opened()
        return self

    @contextmanager
    def writing(self) -> Iterator[Transaction]:
        """One transaction that writes: all of it is kept, or nothing."""
        engine = self._opened()
        if self._trouble:
            raise BookError(
                f"The book is damaged, so nothing is written to it: {self._trouble}",
                where=self.place,
                remedy=DAMAGED,
            )
        with writing(engine) as db:
            yield db

    @contextmanager
    def reading(self) -> Iterator[Transaction]:
        """One transaction that reads: it sees the book as it stood when it began."""
        with reading(self._opened()) as db:
            yield db

    def now(self) -> Contents:
        """Give what stands in the book; only what was written since the last time is read."""
        with self._lock, self.reading() as db:
            last, weather = marks(db)
            if last < self._newest.last:  # another book was put in its place
                self._newest, self._history = Contents((), self.kit), []
            if last > self._newest.last:
                new = written_since(db, self._newest.last)
                if any(isinstance(each, NamesDeleted) for _, each in new):  # of those known already
                    new, self._history = written_since(db, 0), []
                self._history = [*self._history, *(each for _, each in new)]
            if (last, weather) != (self._newest.last, self._newest.weather):
                self._newest = Contents(self._history, self.kit, last, weather)
            return self._newest

    def copy_to(self, target: Path) -> None:
        """Copy the book into a file as it stands at one moment, while others go on writing."""
        if isinstance(self._kept, BookFile):
            self._kept.copy(self._opened(), target)
            return
        with closing(Book(target, kit=self.kit)) as copy, self.reading() as db:
            copy.take(db)

    def take(self, other: Transaction) -> Mapping[str, Poured]:
        """Take in all that another book holds, while this one is empty: all of it, or nothing."""
        with self.writing() as db:
            poured = pour(other, db)
            if wrong := thoroughly(db):
                raise BookError(wrong[0], where=self.place, remedy="Nothing was kept there.")
            return poured

    def check(self) -> list[str]:
        """Go through the whole book, and say what is wrong with it; it is not written to then."""
        with self.reading() as db:
            wrong = thoroughly(db)
        self._trouble = wrong[0] if wrong else ""
        return wrong

    @property
    def trouble(self) -> str:
        """What was found to be wrong with the book, for which nothing is written to it."""
        return self._trouble

    def close(self) -> None:
        """Let go of the book's file or server."""
        if self._engine is not None:
            self._engine.dispose()
            self._engine = None

    def _opened(self) -> sa.Engine:
        with self._opening:
            # a file that was taken away since is asked for again: SQLite would make an empty one
            if self._engine is None or self._kept.is_gone:
                self._engine = open_engine(self._kept, must_exist=self._must_exist)
                finalize(self, self._engine.dispose)
                self._look(self._engine)
            return self._engine

    def _look(self, engine: sa.Engine) -> None:
        with reading(engine) as db:
            self._trouble = quickly(db)
        if self._trouble:
            self._warn(f"The book {self.place} is damaged ({self._trouble}). {DAMAGED}")

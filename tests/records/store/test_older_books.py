"""Books as every program before left them are opened today, with every note and its seal.

``tests/data/books`` holds what programs of their time wrote: the first and the last of each state
of the tables that has been in use, named by its migration.
"""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from uuid import UUID

import pytest
import sqlalchemy as sa
from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.records.store.migrations.run import revisions, upgrade
from combwright.records.store.tables import CURRENT, seal, version
from combwright.records.store.weather_days import places_with_weather
from combwright.terms.entries import ENTRY, AnyEntry

WRITTEN = sorted((Path(__file__).parents[2] / "data" / "books").glob("*.sql"))
STRUCK = UUID(int=901)


def laid_out(written: Path, target: Path) -> Path:
    with closing(sqlite3.connect(target)) as db:
        db.executescript(written.read_text("utf-8"))
    return target


def as_written(path: Path) -> Iterator[AnyEntry]:
    with closing(sqlite3.connect(path)) as db:
        for (body,) in db.execute("SELECT body FROM entry ORDER BY sequence"):
            yield ENTRY.validate_python(json.loads(body))


def opened_today(path: Path, before: list[AnyEntry]) -> None:
    with closing(Book(path)) as book:
        assert book.check() == []
        assert book.now().history == before
        assert STRUCK not in {each.id for each in book.now().entries}
        with book.writing() as db:
            assert db.scalar(sa.select(version.c.version_num)) == CURRENT
            assert {place[0] for place in places_with_weather(db)} == {"Mill Lane"}
            assert keep(db, before) == 0
            assert keep(db, [a_visit(77)]) == 1
        assert book.check() == []


def test_a_book_of_each_state_is_kept() -> None:
    states = {path.name.split("-")[0] for path in WRITTEN}
    assert states >= {"0001", "0002"}
    assert states <= set(revisions())


@pytest.mark.parametrize("written", WRITTEN, ids=lambda path: path.stem)
def test_what_was_written_then_is_there_today(written: Path, tmp_path: Path) -> None:
    path = laid_out(written, tmp_path / "old.book")
    opened_today(path, list(as_written(path)))


@pytest.mark.parametrize("stop", revisions())
def test_from_every_step_on_the_way_it_goes_on(stop: str, tmp_path: Path) -> None:
    path = laid_out(WRITTEN[0], tmp_path / "old.book")
    engine = sa.create_engine(f"sqlite:///{path}", poolclass=sa.NullPool)
    with engine.begin() as db:
        upgrade(db, stop)
    opened_today(path, list(as_written(path)))


def test_seals_of_then_are_the_seals_of_today(tmp_path: Path) -> None:
    (sealed,) = (path for path in WRITTEN if path.name == "0002-first.sql")
    path = laid_out(sealed, tmp_path / "old.book")
    with closing(sqlite3.connect(path)) as db:
        then = db.execute("SELECT sequence, hash FROM seal ORDER BY sequence").fetchall()
    with closing(Book(path)) as book, book.reading() as now:
        found = now.execute(sa.select(seal).order_by(seal.c.sequence)).all()
        assert [tuple(row) for row in found] == then

"""Books as every program before left them are opened today, with every note and its seal.

``tests/data/books`` holds what programs of their time wrote: the first and the last of each state
of the tables that has been in use, named by its migration.
"""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import UUID

import pytest
import sqlalchemy as sa
from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.records.store.migrations.run import revisions, upgrade
from combwright.records.store.tables import CURRENT, seal, tables, version
from combwright.records.store.weather_days import places_with_weather
from combwright.terms.entries import ENTRY, AnyEntry

if TYPE_CHECKING:
    from tests.postgres import Server

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


def opened_today(path: Path | str, before: list[AnyEntry]) -> None:
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
    assert states == set(revisions()) - {CURRENT}


@pytest.mark.parametrize("written", WRITTEN, ids=lambda path: path.stem)
def test_what_was_written_then_is_there_today(written: Path, tmp_path: Path) -> None:
    path = laid_out(written, tmp_path / "old.book")
    opened_today(path, list(as_written(path)))


@pytest.mark.postgresql
@pytest.mark.parametrize("state", ["0002", "0003"])  # none was kept on a server before
def test_what_was_written_on_a_server_then_is_there_today(
    state: str, server: "Server", tmp_path: Path
) -> None:
    (written,) = (each for each in WRITTEN if each.stem == f"{state}-last")
    path, place = laid_out(written, tmp_path / "old.book"), server.empty()
    old, new = (sa.create_engine(at, poolclass=sa.NullPool) for at in (f"sqlite:///{path}", place))
    with old.connect() as source, new.begin() as db:
        upgrade(db, state)
        then = set(sa.inspect(source).get_table_names())
        for table in (each for each in tables.sorted_tables if each.name in then):
            if rows := source.execute(sa.select(table)).mappings().all():
                db.execute(sa.insert(table), [dict(row) for row in rows])
    opened_today(place, list(as_written(path)))


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

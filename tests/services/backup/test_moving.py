"""A book moved between a file and a server, and saved and restored there."""

import json
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import UUID

import numpy as np
import pytest
from tests.cli.typed import typed
from tests.noted import noted_in
from tests.services.book.test_photos import picture

from combwright.records.store.book_handle import Book
from combwright.records.store.seals import check_seals
from combwright.records.store.weather_days import keep_weather
from combwright.services.backup.backups import make_backup
from combwright.services.backup.moving import move_book
from combwright.services.backup.nightly import Nightly
from combwright.services.backup.restoring import check_backup, restore
from combwright.services.book.book import export
from combwright.services.book.photos import Photos
from combwright.terms.errors import BookError, PassingError
from combwright.terms.weather import DailyWeather

if TYPE_CHECKING:
    from tests.postgres import Server

pytestmark = pytest.mark.postgresql
NOW = datetime(2027, 4, 24, 2, 30, tzinfo=UTC)
OAK = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"
NOTE = UUID(int=7)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Book]:
    """Give a book in a file with notes, weather, a photo and a passphrase."""
    with closing(noted_in(Book(tmp_path / "a.book"), tmp_path, OAK)) as made:
        series = np.linspace(0.1, 9.7, 30)[np.newaxis, :]
        with made.writing() as db:
            keep_weather(db, "Top", DailyWeather(date(2027, 4, 1), *([series] * 5)), "station")
        Photos(made).keep(NOTE, picture())
        made.beside("access").write_text('{"passphrase": "hash"}')
        yield made


def all_of(book: Book) -> tuple[object, ...]:
    with book.reading() as db:
        seals = check_seals(db)
    photos = sorted(each.read_bytes() for each in book.beside("photos").iterdir())
    return export(book), seals, photos, book.beside("access").read_bytes(), book.check()


def test_there_and_back_it_is_the_same(book: Book, server: "Server", tmp_path: Path) -> None:
    with closing(Book(server.empty())) as there, closing(Book(tmp_path / "back.book")) as back:
        moved = move_book(book, there)
        assert moved.tables["weather_day"].rows == 30
        assert moved.tables["entry"].rows == moved.tables["seal"].rows == book.now().last
        again = move_book(there, back)
        assert again.tables == moved.tables
        assert all_of(back) == all_of(there) == all_of(book)


def test_what_holds_something_is_not_moved_into(book: Book, server: "Server") -> None:
    with closing(noted_in(Book(server.new()), Path(book.place).parent, OAK)) as full:
        before = export(full)
        for target in (full, book):
            with pytest.raises(BookError, match="already"):
                move_book(book, target)
        assert export(full) == before
        assert not full.beside("access").exists()


def test_what_fails_midway_leaves_nothing(book: Book, server: "Server") -> None:
    address = server.new()
    with closing(Book(address)) as there:
        schema = there.name.rpartition(".")[2]
        server.ask(f"ALTER TABLE {schema}.weather_day ADD CHECK (day < '2027-04-20')")
        with pytest.raises(Exception, match="violates check constraint"):
            move_book(book, there)
        assert there.now().last == 0
        assert not there.beside("access").exists()
        server.ask(f"ALTER TABLE {schema}.weather_day DROP CONSTRAINT weather_day_day_check")
        move_book(book, there)
        assert all_of(there) == all_of(book)


def test_nobody_notes_in_the_old_one_meanwhile(
    server: "Server", tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("combwright.records.store.postgres_database.LOCK_TIMEOUT_MS", 50)
    address = server.new()
    with (
        closing(Book(address)) as old,
        closing(Book(address)) as other,
        other.writing(),
        pytest.raises(PassingError, match="Another program"),
    ):
        move_book(old, Book(tmp_path / "new.book"))


def test_a_damaged_book_is_not_moved(book: Book, server: "Server") -> None:
    address = server.new()
    with closing(Book(address)) as old:
        schema = old.name.rpartition(".")[2]
        server.ask(f"ALTER TABLE {schema}.entry DISABLE TRIGGER USER")
        with pytest.raises(BookError, match="guard"):
            move_book(old, book)


def test_the_command_tells_what_was_compared(book: Book, server: "Server") -> None:
    address = server.empty().replace("keeper@", "keeper:hush@")
    there = typed("book", "move", "--book", book.place, "--to", address, "--json")
    told = json.loads(there.stdout)
    assert told["tables"]["entry"]["rows"] == book.now().last
    assert "hush" not in there.stdout
    words = typed("book", "move", "--book", address, "--to", f"{book.place}.back").stdout
    assert told["tables"]["entry"]["sha256"][:12] in words
    assert "hush" not in words
    assert typed("book", "check", "--book", address).returncode == 0


def test_a_backup_of_a_server_is_restored_into_a_file_and_onto_a_server(
    book: Book, server: "Server", tmp_path: Path
) -> None:
    with closing(Book(server.empty())) as there, closing(Book(server.empty())) as again:
        move_book(book, there)
        nightly = Nightly(there, lambda: NOW + timedelta(hours=1), tmp_path / "stick", keep=2)
        nightly.work()
        assert nightly.told == []
        (path,) = (tmp_path / "stick").iterdir()
        assert path.name.startswith(there.name)
        assert check_backup(path).wrong == ()
        assert restore(path, again.place).entries == book.now().last
        restore(path, tmp_path / "new" / "a.book")
        with closing(Book(tmp_path / "new" / "a.book")) as file:
            assert all_of(again) == all_of(file) == all_of(there)
        with pytest.raises(BookError, match="something in this book already"):
            restore(path, again.place)
        make_backup(again, None, NOW)
        assert len(list(again.beside("backups").iterdir())) == 1

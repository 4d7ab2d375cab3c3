import multiprocessing
import os
import resource
import signal
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from multiprocessing.connection import Connection
from pathlib import Path
from uuid import uuid4

import pytest
import sqlalchemy as sa
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from tests.records.samples import a_visit

from combwright.records.store import sqlite_file
from combwright.records.store.engine import open_engine, reading, writing
from combwright.records.store.kept_entries import history, keep
from combwright.records.store.tables import CURRENT, entry, tables, version
from combwright.terms.errors import BookError

SPAWN = multiprocessing.get_context("spawn")
FORK = multiprocessing.get_context("fork")


def some_entries(path: Path) -> list[object]:
    with reading(open_engine(path)) as db:
        return list(history(db))


@pytest.fixture
def kept(tmp_path: Path) -> Path:
    """Give a book that holds one visit."""
    path = tmp_path / "kept.book"
    with writing(open_engine(path)) as db:
        keep(db, [a_visit(1)])
    return path


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """Give a folder that every user of the machine may enter (pytest's own are private)."""
    with tempfile.TemporaryDirectory() as name:
        Path(name).chmod(0o755)
        yield Path(name)


def test_a_new_book_is_made_with_its_folder_in_wal_mode(tmp_path: Path) -> None:
    with reading(open_engine(tmp_path / "new" / "folder" / "a.book")) as db:
        assert db.scalar(sa.select(version.c.version_num)) == CURRENT
        assert db.exec_driver_sql("PRAGMA journal_mode").scalar() == "wal"
        assert db.exec_driver_sql("PRAGMA foreign_keys").scalar() == 1


def test_signs_of_a_web_address_in_the_path_are_only_letters(tmp_path: Path) -> None:
    open_engine(tmp_path / "a?b#c%20.book")
    assert (tmp_path / "a?b#c%20.book").exists()


def test_a_book_at_rest_is_one_file(kept: Path) -> None:
    assert [path.name for path in kept.parent.iterdir()] == ["kept.book"]


def test_the_migrations_make_the_tables_that_the_code_declares(kept: Path) -> None:
    def ours(_object: object, name: str | None, *_rest: object) -> bool:
        return name != version.name

    with reading(open_engine(kept)) as db:
        context = MigrationContext.configure(db, opts={"include_object": ours})
        assert compare_metadata(context, tables) == []


def test_a_current_book_is_opened_without_alembic(kept: Path) -> None:
    script = (
        "import sys, pathlib, combwright.records.store.engine as engine;"
        "engine.open_engine(pathlib.Path(sys.argv[1]));"
        "sys.exit('alembic' in sys.modules)"
    )
    subprocess.run([sys.executable, "-c", script, str(kept)], check=True)


def test_reading_needs_a_book(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="There is no book here yet") as caught:
        open_engine(tmp_path / "a.book", must_exist=True)
    assert caught.value.where == str(tmp_path / "a.book")
    assert not (tmp_path / "a.book").exists()


def test_a_book_from_a_newer_version_is_left_alone(kept: Path) -> None:
    with writing(open_engine(kept)) as db:
        db.execute(version.update().values(version_num="9999"))
    before = kept.read_bytes()
    with pytest.raises(BookError, match=r"newer Combwright \(book version 9999") as caught:
        open_engine(kept)
    assert caught.value.where == str(kept)
    assert "Install the newer Combwright" in caught.value.remedy
    assert kept.read_bytes() == before


def test_a_text_file_is_no_book(tmp_path: Path) -> None:
    path = tmp_path / "notes.csv"
    path.write_text("date,colony\n2026-04-01,Alder\n" * 99)
    with pytest.raises(BookError, match="not a Combwright book"):
        open_engine(path)
    assert path.read_text().startswith("date,colony")


def test_another_programs_database_is_no_book(tmp_path: Path) -> None:
    with sqlite3.connect(tmp_path / "other.db") as other:
        other.execute("CREATE TABLE entry (id INTEGER)")
    other.close()
    with pytest.raises(BookError, match="a database, but not a Combwright book"):
        open_engine(tmp_path / "other.db")


def test_a_folder_is_no_book(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="cannot be opened"):
        open_engine(tmp_path)


@pytest.mark.parametrize("name", ["x" * 300, "a/" * 3000])
def test_a_name_that_no_file_can_have_is_said(tmp_path: Path, name: str) -> None:
    for must_exist in (True, False):
        with pytest.raises(BookError):
            open_engine(tmp_path / name, must_exist=must_exist)
    assert not list(tmp_path.iterdir()), "folders on the way to a name that cannot be are not made"


def test_a_file_cannot_be_the_folder_of_a_book(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(BookError, match="folder cannot be made"):
        open_engine(tmp_path / "file" / "a.book")


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="needs a folder that nobody may write")
def test_a_book_cannot_be_made_where_nobody_may_write() -> None:
    with pytest.raises(BookError, match="cannot be opened"):
        open_engine(Path("/proc/self/a.book"))


def test_a_damaged_book_is_reported_as_such(kept: Path) -> None:
    whole = kept.read_bytes()
    kept.write_bytes(whole[:4096] + b"\xff" * (len(whole) - 4096))
    with pytest.raises(BookError, match="damaged"):
        some_entries(kept)


def test_a_locked_book_is_waited_for_then_reported(
    kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sqlite_file, "BUSY_TIMEOUT_MS", 50)
    other = sqlite3.connect(kept, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(BookError, match="Another program is writing"), writing(open_engine(kept)):
        pass
    assert some_entries(kept) == [a_visit(1)]  # reading goes on meanwhile
    other.close()


def test_a_full_disk_leaves_the_book_as_it_was(kept: Path) -> None:
    # SQLite's own limit stands in for the disk: it fails with the same code, SQLITE_FULL
    book = open_engine(kept)

    def leave_no_room(connection: sqlite3.Connection, _record: object) -> None:
        connection.execute("PRAGMA max_page_count = 1")  # at least as many as there are now

    sa.event.listen(book, "connect", leave_no_room)
    with pytest.raises(BookError, match="disk is full"), writing(book) as db:
        keep(db, [a_visit(at, remark="x" * 2000) for at in range(2, 99)])
    assert some_entries(kept) == [a_visit(1)]


def told(send: Connection, work: Callable[[], object]) -> None:
    """Do some work in a child process and send back what went wrong."""
    try:
        work()
        send.send("nothing went wrong")
    except BookError as error:
        send.send(str(error))


def told_by_a_child(prepare: Callable[[], None], work: Callable[[], object]) -> str:
    receive, send = FORK.Pipe()

    def run() -> None:
        prepare()
        told(send, work)

    child = FORK.Process(target=run)
    child.start()
    child.join()
    return str(receive.recv())


def write_much(path: Path) -> None:
    with writing(open_engine(path)) as db:
        keep(db, [a_visit(at, remark="x" * 2000) for at in range(2, 99)])


def test_a_write_that_the_system_refuses_leaves_the_book_as_it_was(kept: Path) -> None:
    def small_files_only() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (60_000, 60_000))

    sentence = told_by_a_child(small_files_only, lambda: write_much(kept))
    assert "The disk failed" in sentence
    assert str(kept) in sentence
    assert some_entries(kept) == [a_visit(1)]


def as_somebody_else() -> None:
    if os.geteuid() == 0:
        os.setuid(65534)


def test_a_read_only_book_is_left_alone(open_folder: Path) -> None:
    path = open_folder / "a.book"
    with writing(open_engine(path)) as db:
        keep(db, [a_visit(1)])
    path.chmod(0o444)
    open_folder.chmod(0o555)
    sentence = told_by_a_child(as_somebody_else, lambda: write_much(path))
    open_folder.chmod(0o755)
    assert "read-only" in sentence
    assert str(path) in sentence
    assert some_entries(path) == [a_visit(1)]


@pytest.mark.parametrize("still_open", [False, True])
def test_a_book_on_a_read_only_disk_can_be_read(open_folder: Path, still_open: bool) -> None:
    """While another program has it open, part of it lies in the log beside it."""
    path = open_folder / "a?b#1%20.book"
    other = open_engine(path).connect() if still_open else None
    with writing(open_engine(path)) as db:
        keep(db, [a_visit(1)])
    for each in open_folder.iterdir():
        each.chmod(0o444)
    open_folder.chmod(0o555)

    def read() -> None:
        assert len(some_entries(path)) == 1

    said = told_by_a_child(as_somebody_else, read)
    open_folder.chmod(0o755)
    if other is not None:
        other.close()
    assert said == "nothing went wrong"


def test_a_new_book_is_for_its_owner_alone(tmp_path: Path) -> None:
    path = tmp_path / "new" / "a.book"
    with writing(open_engine(path)) as db:
        keep(db, [a_visit(1)])
        assert {each.stat().st_mode & 0o077 for each in path.parent.iterdir()} == {0}
    assert path.parent.stat().st_mode & 0o077 == 0


def test_a_read_only_folder_takes_no_new_book(open_folder: Path) -> None:
    open_folder.chmod(0o555)
    sentence = told_by_a_child(as_somebody_else, lambda: open_engine(open_folder / "a.book"))
    open_folder.chmod(0o755)
    assert "cannot be opened" in sentence
    assert not list(open_folder.iterdir())


def write_one_by_one(path: Path, colony: str, count: int) -> None:
    for _ in range(count):
        with writing(open_engine(path)) as db:
            keep(db, [a_visit(colony=colony).model_copy(update={"id": uuid4()})])


def test_two_processes_may_make_and_write_one_book_at_once(tmp_path: Path) -> None:
    path = tmp_path / "shared.book"
    writers = [
        SPAWN.Process(target=write_one_by_one, args=(path, colony, 40))
        for colony in ("Alder", "Birch")
    ]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    assert [writer.exitcode for writer in writers] == [0, 0]
    with reading(open_engine(path)) as db:
        rows = db.execute(sa.select(entry.c.sequence, entry.c.colony)).all()
    assert sorted(row.sequence for row in rows) == list(range(1, 81))
    assert sorted(row.colony for row in rows) == ["Alder"] * 40 + ["Birch"] * 40


KILLED = """
import pathlib, sys, time
from combwright.records.store.engine import open_engine, writing
from combwright.records.store.kept_entries import keep
from tests.records.samples import a_visit

with writing(open_engine(pathlib.Path(sys.argv[1]))) as db:
    # more than the cache of pages holds, so that part of it lies in the file already
    keep(db, [a_visit(at, remark="x" * 2000) for at in range(2, 5000)])
    print("written", flush=True)
    time.sleep(60)
"""


def test_a_write_that_is_killed_leaves_nothing_half_done(kept: Path) -> None:
    root = Path(__file__).parents[3]
    with subprocess.Popen(
        [sys.executable, "-c", KILLED, str(kept)], stdout=subprocess.PIPE, text=True, cwd=root
    ) as child:
        assert child.stdout is not None
        assert child.stdout.readline() == "written\n"
        child.kill()
    with_log = kept.with_name(kept.name + "-wal")
    assert with_log.stat().st_size > 1_000_000  # the interrupted write had reached the disk
    assert some_entries(kept) == [a_visit(1)]

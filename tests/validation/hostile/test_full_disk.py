"""A disk that is full: it is said, nothing is lost, and noting goes on when there is room again.

The disk is a small one in memory, which only root may mount; elsewhere this is left out.
"""

import os
import subprocess
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from random import Random

import pytest
from tests import postgres
from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.terms.errors import BookError

pytestmark = [
    pytest.mark.validation,
    pytest.mark.skipif(os.geteuid() != 0, reason="only root may mount a small disk"),
]
TIMES, MOST = 10, 3000


@contextmanager
def small_disk(megabytes: int) -> Iterator[Path]:
    with tempfile.TemporaryDirectory(prefix="small-") as name:
        size = f"size={megabytes}m,mode=0755"
        subprocess.run(["mount", "-t", "tmpfs", "-o", size, "none", name], check=True)
        try:
            yield Path(name)
        finally:
            subprocess.run(["umount", "-l", name], check=True)


def hardly_smaller(number: int) -> str:
    """Give a remark that the server cannot make much smaller, so that the disk fills."""
    return Random(number).randbytes(1000).hex()  # noqa: S311  (repeatable on purpose)


def note_until_full(place: Path | str, first: int) -> tuple[int, str]:
    """Write notes until it is refused; give the number after the last one that was not."""
    with closing(Book(place)) as book:
        for number in range(first, first + MOST):
            try:
                with book.writing() as db:
                    keep(db, [a_visit(number, remark=hardly_smaller(number))])
            except BookError as error:
                return number, str(error)
    raise AssertionError("the disk was never full")


def fill(ballast: Path, bytes_left: int) -> None:
    told = os.statvfs(ballast.parent)
    room = told.f_bavail * told.f_frsize - bytes_left
    with ballast.open("wb") as file:
        file.write(bytes(max(0, room)))


def tried(disk: Path, place: Path | str, start: Callable[[], None] = lambda: None) -> str:
    said, following = set[str](), 1
    for _ in range(TIMES):
        fill(disk / "ballast", 300_000)
        following, told = note_until_full(place, following)
        said.add(told.split(": ", 1)[1])
        (disk / "ballast").unlink()
        start()
        with closing(Book(place)) as book:
            there = [each.id.int for each in book.now().history]
            # a server that dies in the midst may have kept a note that it did not acknowledge
            assert there in (list(range(1, following)), list(range(1, following + 1)))
            assert book.check() == []
    return f"{TIMES} times full, {following - 1} notes: {said}"


def test_in_a_file() -> None:
    with small_disk(20) as disk:
        print(tried(disk, disk / "a.book"))  # noqa: T201


FEW = ("-c", "min_wal_size=2MB")  # little of the log is made ahead


def test_on_a_server() -> None:
    with small_disk(150) as disk:
        room = disk / "server"
        room.mkdir()
        with postgres.running(*FEW, "-c", "max_wal_size=4MB", folder=room) as server:
            print(tried(disk, server.empty(), server.start))  # noqa: T201


def test_on_a_server_whose_log_is_full() -> None:
    """Without room for what it writes first, the whole server ends; what it said before holds."""
    with small_disk(8) as disk, postgres.running(*FEW, "-c", "wal_recycle=off") as server:
        server.log_to(disk)
        print(tried(disk, server.empty(), server.start))  # noqa: T201

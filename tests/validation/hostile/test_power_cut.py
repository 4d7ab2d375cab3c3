"""Power cuts on a disk that forgets what was not synced: what was acknowledged is there once.

``CUTS=20 python -m pytest -s -m validation tests/validation/hostile/test_power_cut.py`` cuts less
often. The disk is a layer of our own (``forgetting_disk.py``), in memory, as LazyFS and dm-flakey
want a kernel module or a mount; half of the cuts keep some of the blocks that were not synced.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path
from random import Random
from typing import Final

import pytest
from tests import postgres
from tests.validation.hostile.forgetting_disk import ForgettingDisk
from tests.validation.hostile.noting import written

from combwright.records.store.book_handle import Book

pytestmark = [
    pytest.mark.validation,
    pytest.mark.skipif(shutil.which("gcc") is None, reason="the layer wants a C compiler"),
]
CUTS: Final = int(os.environ.get("CUTS", "200"))
SEED: Final = int(os.environ.get("SEED", "20261127"))
NOTES: Final = 15  # at most between two cuts
LONGEST_S: Final = 0.8  # the longest time between two cuts
MEMORY: Final = Path("/dev/shm")  # noqa: S108  (never gives one inode to two files)


@pytest.fixture
def disk() -> Iterator[ForgettingDisk]:
    with tempfile.TemporaryDirectory(prefix="cut-", dir=MEMORY) as room:
        Path(room).chmod(0o755)
        yield ForgettingDisk(Path(room))


def looked_through(place: Path | str, acknowledged: set[int]) -> None:
    with closing(Book(place)) as book:
        assert book.check() == []
        there = [each.id.int for each in book.now().history]
        assert len(there) == len(set(there))
        assert acknowledged <= set(there)


def tried(
    disk: ForgettingDisk,
    place: Path | str,
    note: Callable[[int, float], set[int]],
    up: Callable[[], None] = lambda: None,
) -> str:
    """Note and have the power cut again and again; say what came of it."""
    luck = Random(SEED)  # noqa: S311  (repeatable on purpose)
    acknowledged = set[int]()
    for _ in range(CUTS):
        acknowledged |= note(1 + len(acknowledged), luck.uniform(0.0, LONGEST_S))
        disk.cut(luck)
        up()
        looked_through(place, acknowledged)
    return f"{CUTS} power cuts, {len(acknowledged)} notes acknowledged"


def test_in_a_file(disk: ForgettingDisk) -> None:
    place = disk.live / "a.book"
    command = [sys.executable, "-m", "tests.validation.hostile.noting"]
    with subprocess.Popen(
        command,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        env=os.environ | disk.environment,
    ) as writer:
        assert writer.stdin is not None
        assert writer.stdout is not None
        asks, answers = writer.stdin, writer.stdout

        def note(first: int, after_s: float) -> set[int]:
            asks.write(f"{first} {NOTES} {after_s} {place}\n")
            asks.flush()
            return {int(number) for number in answers.readline().split()}

        print(tried(disk, place, note, disk.sync_all))  # noqa: T201
        asks.close()


def test_on_a_server(disk: ForgettingDisk) -> None:
    with postgres.running(folder=disk.live, environment=disk.environment) as server:
        place = server.empty()
        server.kill()
        disk.sync_all()
        server.start()

        def note(first: int, after_s: float) -> set[int]:
            numbers = range(first, first + NOTES)
            told = written(place, numbers, after_s, lambda _: server.kill(), once_open=True)
            server.kill()
            return told

        print(tried(disk, place, note, server.start))  # noqa: T201

"""Ten thousand notes while the writer is killed at random moments: what was acknowledged is there.

``KILLS=50 python -m pytest -m validation tests/validation/hostile/test_kills.py`` kills less often.
"""

import os
import signal
import subprocess
import sys
from pathlib import Path
from random import Random
from threading import Timer
from typing import Final

import pytest

from combwright.records.store.book_handle import Book

pytestmark = pytest.mark.validation
KILLS: Final = int(os.environ.get("KILLS", "1000"))
SEED: Final = int(os.environ.get("SEED", "20261127"))
NOTES: Final = 10  # for each kill

WRITER = """
import sys
from pathlib import Path
from uuid import UUID
from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from tests.records.samples import a_visit

book, first, count = Book(Path(sys.argv[1])), int(sys.argv[2]), int(sys.argv[3])
print("ready", flush=True)
for number in range(first, first + count):
    with book.writing() as db:
        keep(db, [a_visit(number)])
    print(number, flush=True)
"""


def written(book: Path, first: int, root: Path, after_s: float) -> list[int]:
    """Write notes in a process that is killed after a while, and say which it acknowledged."""
    command = [sys.executable, "-c", WRITER, str(book), str(first), str(NOTES)]
    with subprocess.Popen(command, cwd=root, stdout=subprocess.PIPE, text=True) as writer:
        assert writer.stdout is not None
        assert writer.stdout.readline() == "ready\n"
        kill = Timer(after_s, writer.send_signal, [signal.SIGKILL])
        kill.start()
        told = [int(line) for line in writer.stdout.read().split("\n")[:-1]]
        kill.cancel()
    return told


def test_what_was_acknowledged_is_there_once(tmp_path: Path, root: Path) -> None:
    luck = Random(SEED)  # noqa: S311  (repeatable on purpose)
    place, acknowledged, killed = tmp_path / "a.book", set[int](), 0
    for kill in range(KILLS):
        first = 1 + NOTES * kill
        told = written(place, first, root, luck.uniform(0.0, 0.12))
        acknowledged |= set(told)
        killed += len(told) < NOTES
        while len(told) < NOTES:  # as a phone would, what was not acknowledged is sent again
            told = written(place, first, root, 60)
            acknowledged |= set(told)
    book = Book(place)
    there = [each.id.int for each in book.now().history]
    assert len(there) == len(set(there)) == NOTES * KILLS
    assert acknowledged <= set(there)
    assert book.check() == []
    assert killed > KILLS // 5  # the moments were such that they hit

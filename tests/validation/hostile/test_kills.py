"""Ten thousand notes while the writer is killed at random moments: what was acknowledged is there.

``KILLS=50 python -m pytest -m validation tests/validation/hostile/test_kills.py`` kills less often.
On PostgreSQL every twentieth time the whole server is killed too, in the midst of its work.
"""

import os
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path
from random import Random
from statistics import median
from time import monotonic
from typing import Final

import pytest
from tests import postgres
from tests.validation.hostile.noting import written

from combwright.records.store.book_handle import Book

pytestmark = pytest.mark.validation
KILLS: Final = int(os.environ.get("KILLS", "1000"))
SEED: Final = int(os.environ.get("SEED", "20261127"))
NOTES: Final = 10  # for each kill
SERVER: Final = 20  # kills of a writer for one of the server


@pytest.fixture
def killed_server() -> Iterator[postgres.Server]:
    """A server that writes to the disk as in earnest."""
    with postgres.running() as found:
        yield found


def tried(place: Path | str, kill_more: Callable[[int], None]) -> str:
    """Note and be killed again and again; say what came of it."""
    luck = Random(SEED)  # noqa: S311  (repeatable on purpose)
    acknowledged, killed, took = set[int](), 0, list[float]()
    for kill in range(KILLS):
        numbers = range(1 + NOTES * kill, 1 + NOTES * (kill + 1))
        usual = median(took) if took else 0.2
        told = written(place, numbers, luck.uniform(0.0, 1.2 * usual))
        acknowledged |= told
        killed += len(told) < NOTES
        kill_more(kill)
        began = monotonic()
        again = written(place, numbers)  # as a phone would, all is sent again
        took = [*took[-9:], monotonic() - began]
        assert again == set(numbers)
        acknowledged |= again
    with closing(Book(place)) as book:
        there = [each.id.int for each in book.now().history]
        assert len(there) == len(set(there)) == NOTES * KILLS
        assert acknowledged == set(there)
        assert book.check() == []
    assert killed > KILLS // 5  # the moments were such that they hit
    return f"{KILLS} kills, {killed} in the midst of {NOTES} notes, {len(there)} notes"


def test_in_a_file(tmp_path: Path) -> None:
    print(tried(tmp_path / "a.book", lambda _: None))  # noqa: T201


def test_on_a_server(killed_server: postgres.Server) -> None:
    def kill_more(kill: int) -> None:
        if kill % SERVER == SERVER - 1:
            killed_server.kill()
            killed_server.start()

    print(tried(killed_server.empty(), kill_more))  # noqa: T201

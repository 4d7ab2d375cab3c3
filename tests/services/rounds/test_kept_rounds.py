"""Rounds that are worked out in the background."""

from concurrent.futures import CancelledError
from pathlib import Path

import pytest
from tests.demo import copied

from combwright.records.store.book_handle import Book
from combwright.services.demo import ON, Paths
from combwright.services.rounds.kept_rounds import Rounds

MANY = 400  # members: too many to be ready before the rounds are closed


def test_closing_does_not_wait_for_the_round_in_work(demo: Paths, tmp_path: Path) -> None:
    book = Book(copied(demo, tmp_path))
    rounds = Rounds(book, members=MANY)
    working = rounds.begin(ON, 7)
    rounds.close()
    with pytest.raises(CancelledError):
        working.future.result()
    assert working.step.done < 16
    book.close()

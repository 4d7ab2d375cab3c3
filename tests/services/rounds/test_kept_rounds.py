"""Rounds that are worked out in the background."""

from concurrent.futures import CancelledError
from contextlib import closing
from pathlib import Path

import pytest
from tests.demo import copied

from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.demo import ON, Paths
from combwright.services.progress import READING, Step
from combwright.services.rounds.from_book import round_sheet
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


def test_the_first_hive_of_the_walk_is_planned_before_the_others_are_read(
    demo: Paths, tmp_path: Path
) -> None:
    told: list[Step] = []
    with closing(Book(copied(demo, tmp_path))) as book:
        sheet = round_sheet(book, ON, members=20, progress=told.append)
    parts = [step.part for step in told]
    first, *_ = (place for place, part in enumerate(parts) if isinstance(part, ColonySheet))
    planned = parts[first]
    assert isinstance(planned, ColonySheet)
    assert planned.colony == sheet.colonies[0].colony
    assert all(step.doing != READING for step in told[:first])
    come = [part.colony for part in parts[first + 1 :] if isinstance(part, ColonySheet)]
    assert come == [each.colony for each in sheet.colonies]

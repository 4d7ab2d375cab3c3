"""Second programs: what they believe and plan is found, is the same, and is never needed."""

import pickle
import sys
from io import BytesIO
from pathlib import Path
from time import sleep

import pytest
from tests.noted import noted
from tests.services.rounds.conftest import LINES

from combwright.planning.round import colony_sheet
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.kept_beliefs import KeptBeliefs
from combwright.services.beliefs.workers import WORKERS
from combwright.services.demo import ON
from combwright.services.rounds.kept_plans import rests_on
from combwright.services.rounds.second_programs import MANY, SecondPrograms, answer
from combwright.services.rounds.situations import AskedRound, Situations, situations_of

ASKED = AskedRound(ON, members=20)


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Book:
    """A book of which nothing is believed yet."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return Book(noted(tmp_path, *LINES))


def kept_by(situations: Situations) -> KeptBeliefs:
    """Where a program keeps and finds what it believes."""
    kept = situations.replay.kept
    assert isinstance(kept, KeptBeliefs)
    return kept


def test_what_one_believes_is_found_by_this_program_and_is_the_same(book: Book) -> None:
    """It answers each colony, also one that it does not know."""
    anew = situations_of(book, ASKED)
    believed = anew.follow("Oak").belief.colonies.tobytes()
    assert kept_by(anew).made
    assert book.file is not None
    asked = pickle.dumps((book.file, book.kit, ASKED))
    asked += b'["Elm", "lesson"]\n["Elm", "belief"]\n["Nobody", "plan"]\n'
    answers = BytesIO()
    answer(BytesIO(asked), answers)
    assert answers.getvalue() == 4 * b"\n"
    found = situations_of(book, ASKED)
    found.follow("Elm")
    assert kept_by(found).found
    assert not kept_by(found).made
    assert found.follow("Oak").belief.colonies.tobytes() == believed


@pytest.mark.skipif(WORKERS < 2, reason="one processor reads alone")
def test_one_is_started_reads_and_ends_and_its_end_stops_nobody(book: Book) -> None:
    with SecondPrograms(book, ASKED, many=1) as beside:
        beside.come(1)
        assert len(beside) >= 1
        found = situations_of(book, ASKED)
        key = rests_on("Oak", found)
        made = kept_by(found).made
        planned = beside.plan("Oak", key)
        while planned is None and next(iter(beside)).poll() is None:
            sleep(0.05)  # it is coming
            planned = beside.plan("Oak", key)
        followed = found.follow("Oak")
        assert kept_by(found).made == made
        assert planned == colony_sheet(followed, found.of(followed), 1)
        assert beside.plan("Oak", "of another book") is None
        programs = [*beside]
        for each in programs:
            each.kill()
        beside.read("Elm")
        beside.read("Elm")
    assert all(each.returncode is not None for each in programs)


def test_none_comes_for_few_colonies_or_where_it_cannot_be_started(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    with SecondPrograms(book, ASKED) as beside:
        beside.come(MANY - 1)
        monkeypatch.setattr(sys, "executable", "/nowhere/python")
        beside.come(MANY)
        beside.read("Oak")
        assert len(beside) == 0

"""One colony's past and future, and the scores of past forecasts, from the demo's book."""

from datetime import date, timedelta
from itertools import pairwise

import numpy as np
import pytest

from combwright.records.store.book_handle import Book
from combwright.services.beliefs.colony_history import SHOWN, colony_history
from combwright.services.beliefs.score import score_book
from combwright.services.demo import Paths
from combwright.services.progress import READING, Step
from combwright.terms.errors import CombwrightError


def test_past_and_future_in_one_line_of_days(demo: Paths) -> None:
    told = colony_history(Book(demo.book), "Bramble", demo.on, weeks_ahead=3, members=50)
    assert all(a < b for a, b in pairwise(told.days))
    assert told.days[-1] == demo.on + timedelta(days=21)
    assert demo.on in told.days
    assert set(told.series) == set(SHOWN)
    for series in told.series.values():
        assert len(series.low) == len(told.days)
        for low, mid, high in zip(series.low, series.mid, series.high, strict=True):
            assert 0 <= low <= mid <= high < np.inf
    assert told.notes["frames_of_bees"][0][0] == told.days[0]


def test_the_future_is_less_sure_than_the_present(demo: Paths) -> None:
    told = colony_history(Book(demo.book), "Bramble", demo.on, members=100)
    now = told.days.index(demo.on)
    bees = told.series["frames_of_bees"]
    assert bees.high[-1] - bees.low[-1] > bees.high[now] - bees.low[now]


def test_the_same_question_has_the_same_answer(demo: Paths) -> None:
    asked = [colony_history(Book(demo.book), "Sorrel", demo.on, members=30) for _ in range(2)]
    assert asked[0] == asked[1]


@pytest.mark.parametrize(
    ("colony", "weeks", "words"),
    [("Nobody", 4, "Nobody"), ("Bramble", 0, "0 weeks"), ("Bramble", 99, "99 weeks")],
)
def test_what_cannot_be_shown(demo: Paths, colony: str, weeks: int, words: str) -> None:
    with pytest.raises(CombwrightError, match=words):
        colony_history(Book(demo.book), colony, demo.on, weeks_ahead=weeks, members=20)


def test_every_note_but_the_first_is_scored(demo: Paths) -> None:
    steps: list[Step] = []
    report = score_book(Book(demo.book), demo.on, members=50, progress=steps.append)
    assert steps[1:] == [Step(READING, done, 16) for done in range(17)]
    bees = next(line for line in report.together if line.quantity == "frames_of_bees")
    assert bees.forecasts == sum(
        line.forecasts for line in report.by_colony if line.quantity == "frames_of_bees"
    )
    for line in (*report.together, *report.by_colony):
        assert 0.0 <= line.within_50 <= line.within_90 <= 1.0
        assert 0.0 <= line.error < 20.0
        assert line.in_words.endswith(".")


def test_a_score_does_not_know_what_came_later(demo: Paths) -> None:
    early = demo.on - timedelta(days=14)
    long = score_book(Book(demo.book), demo.on, colony="Bramble", members=40)
    short = score_book(Book(demo.book), early, colony="Bramble", members=40)
    assert {line.quantity for line in short.together} <= {line.quantity for line in long.together}
    assert short.together[0].forecasts < long.together[0].forecasts


def test_nothing_to_score_is_said(demo: Paths) -> None:
    with pytest.raises(CombwrightError, match="can be scored yet"):
        score_book(Book(demo.book), date(2027, 3, 8), members=20)
    with pytest.raises(CombwrightError, match="no colony"):
        score_book(Book(demo.book), demo.on, colony="Nobody", members=20)

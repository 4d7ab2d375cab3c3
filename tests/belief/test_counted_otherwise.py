"""Brood counted as combs with brood in them, and noted as frames: the tried case."""

from datetime import date, timedelta

import numpy as np
import pytest
from tests.validation.belief.keeper import Habits, Truth, believed, live

from combwright.belief.following.followed import Followed
from combwright.belief.sharing.pooling import moments_of, pool
from combwright.belief.weighing.filter import QUANTITIES

COLONIES = 4
Case = tuple[Truth, date, list[Followed]]


def followed(number: int, otherwise: float) -> Case:
    habits = Habits(
        eyes={"brood_otherwise": otherwise},
        troubles=False,
        rounds_to_halves=True,
        visits=8,
        counts_mites=False,
    )
    truth = live(f"way {number}", 640_000 + number, habits)
    on = truth.states[-1][0] + timedelta(days=1)
    book, _ = believed(truth, on, members=200)  # as many as the sheet has
    return truth, on, [after for _, after in book.course(truth.name, on)]


@pytest.fixture(scope="module")
def combs() -> list[Case]:
    """Colonies whose brood was counted as combs, though the heading says frames."""
    return [followed(number, 1.0) for number in range(COLONIES)]


@pytest.fixture(scope="module")
def frames() -> list[Case]:
    """The same, counted as the heading says."""
    return [followed(number, 0.0) for number in range(COLONIES)]


def asked(course: list[Followed]) -> bool:
    questions = [one for followed in course for one in followed.belief.questions]
    return any("Your counts of brood fit" in one for one in questions)


def too_strong(case: Case) -> float:
    """How many times the bees that there are, at the last note."""
    truth, _, course = case
    believed_bees = np.median(QUANTITIES["frames_of_bees"](course[-1].belief.colonies))
    return float(believed_bees / QUANTITIES["frames_of_bees"](truth.states[-1][1])[0])


def test_no_colony_is_believed_too_strong_in_silence(combs: list[Case]) -> None:
    """In the trial before, half the colonies came out 25 % too strong, and nobody was asked."""
    assert all(asked(case[2]) or too_strong(case) < 1.25 for case in combs)
    assert sum(asked(case[2]) for case in combs) >= 3
    assert np.median([too_strong(case) for case in combs]) < 1.15


def test_who_counts_as_the_heading_says_is_not_asked(frames: list[Case]) -> None:
    assert not any(asked(course) for _, _, course in frames)


def test_neighbours_teach_which_way_is_counted(combs: list[Case], frames: list[Case]) -> None:
    doubts = {"brood_otherwise": 0.15}
    told = [
        pool([moments_of(course[3].belief) for _, _, course in cases], doubts).middle
        for cases in (combs, frames)
    ]
    assert told[0]["brood_otherwise"] > 2.0
    assert told[1]["brood_otherwise"] < -2.0

"""Where some members have died, the plan is that of the living, and the death is told."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from tests.advice.situations import Case, situation

from combwright.advice.plan import plan
from combwright.advice.situation import Situation
from combwright.simulation import observe

CASE = Case(date(2027, 4, 24), 6.0, 3.0, 2.5, 8)


def _some_dead(share: float) -> Situation:
    at = situation(CASE)
    colonies = at.colonies.copy()
    dead = slice(0, round(share * len(colonies)))
    for column in ("nest", "foragers", "winter"):
        colonies[column][dead] = 0.0
    return replace(at, colonies=colonies)


def test_half_dead_members_change_nothing_that_is_given() -> None:
    """A dead colony needs nothing, so that what is decided is for the one that lives."""
    at = _some_dead(0.5)
    half = plan(at, with_branches=False)
    living = plan(at.with_members(np.arange(30, 60)), with_branches=False)
    assert half.actions[1:] == living.actions  # but for the word that it may be dead
    assert half.portion.grams > 0


def test_a_likely_death_is_told_and_an_unlikely_one_is_not() -> None:
    told = [any("dead" in job for job in plan(_some_dead(d)).jobs) for d in (0.0, 0.02, 0.4)]
    assert told == [False, False, True]


def test_a_colony_that_is_surely_dead_is_still_planned_for() -> None:
    assert plan(_some_dead(1.0)).jobs


@pytest.mark.parametrize("on", [date(2027, 4, 24), date(2027, 5, 20), date(2027, 8, 16)])
@pytest.mark.parametrize("share", [0.05, 0.3])
def test_a_starving_handful_is_as_good_as_dead(on: date, share: float) -> None:
    """It takes no feed, and no look helps: food “may run out” by tomorrow beside a full feeder."""
    at = situation(replace(CASE, on=on))
    colonies = at.colonies.copy()
    gone = slice(0, round(share * len(colonies)))
    for column in ("nest", "foragers", "winter"):
        colonies[column][gone] *= 20.0 / observe.adults(at.colonies)[gone].reshape(
            -1, *[1] * (colonies[column].ndim - 1)
        )
    colonies["ripe"][gone] = 0.0
    told = plan(replace(at, colonies=colonies), with_branches=False)
    living = at.with_members(np.arange(gone.stop, len(colonies)))
    living = replace(living, known_swarm_loss=None)  # of those that live, as above
    assert told.next_visit == plan(living, with_branches=False).next_visit
    assert told.portion == plan(living, with_branches=False).portion

"""Minutes by task learned from visits: the keeper's own the more, the more of them there are."""

from datetime import date, timedelta
from typing import cast
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.advice.kit_acts import Feeding, Frames
from combwright.planning.task_minutes import learned_minutes, usual_minutes
from combwright.terms.entries import ENTRY, Noted

ON = date(2027, 5, 1)
LOOK = 6.0
FED = Feeding(feed="syrup", grams=900, sugar_fraction=0.6)


def noted(kind: str, day: int, **told: object) -> Noted:
    whole = {"id": UUID(int=1), "kind": kind, "on": ON + timedelta(days=day), "colony": "A", **told}
    return cast("Noted", ENTRY.validate_python(whole))


def visits(number: int, look: float, feed: float) -> list[Noted]:
    """Make visits of which every second one feeds too."""
    found = []
    for day in range(number):
        is_fed = day % 2 == 1
        found.append(noted("visit", day, minutes=look + feed * is_fed))
        if is_fed:
            found.append(noted("feed", day, grams=900, sugar_fraction=0.6))
    return found


def test_without_notes_the_usual_minutes_stand() -> None:
    assert learned_minutes([noted("visit", 1)], LOOK) == usual_minutes(LOOK)
    assert usual_minutes(LOOK).of([Frames(more=2), FED]) == LOOK + 2 * 1.0 + 2.0


def test_many_visits_tell_the_look_from_the_feed() -> None:
    own = learned_minutes(visits(200, 10.0, 5.0), LOOK)
    assert own.visits == 200
    assert own.look == pytest.approx(10.0, abs=0.3)
    assert own.tasks["feed"] == pytest.approx(5.0, abs=0.5)
    assert own.tasks["super"] == usual_minutes(LOOK).tasks["super"]  # never timed
    assert own.of([FED]) == pytest.approx(15.0, abs=0.3)


@given(st.integers(1, 30), st.floats(7.0, 60.0))
def test_more_visits_of_the_same_length_move_the_look_further(number: int, took: float) -> None:
    fewer, more = (learned_minutes(visits(n, took, 2.0), LOOK).look for n in (number, number + 1))
    assert LOOK < fewer < took
    assert fewer <= more + 1e-9


def test_a_visit_after_which_the_stack_was_described_anew_is_left_out() -> None:
    told = [noted("visit", 1, minutes=90.0), noted("stack", 1, supers=2)]
    assert learned_minutes(told, LOOK) == usual_minutes(LOOK)

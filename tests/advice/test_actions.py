"""Typed actions: they come back from JSON as they went, and each has words of its own."""

from datetime import date
from typing import get_args

import pytest
from pydantic import TypeAdapter
from tests.advice.situations import drawn, situation

from combwright.advice.actions import Action, days_asked_for
from combwright.advice.bee_acts import KnockDown, Look, Seen
from combwright.advice.decisions.found import at_any_colony, from_outside
from combwright.advice.plan import plan
from combwright.advice.words.action_words import words
from combwright.advice.words.found_words import FOUND
from combwright.advice.words.look_words import LOOKS

ACTIONS: TypeAdapter[tuple[Action, ...]] = TypeAdapter(tuple[Action, ...])
KINDS = get_args(get_args(Action)[0])


@pytest.mark.parametrize("number", range(24))
def test_a_plan_s_actions_come_back_from_json(number: int) -> None:
    asked = plan(situation(drawn(number)), with_branches=False).actions
    assert ACTIONS.validate_json(ACTIONS.dump_json(asked)) == asked


def test_no_two_kinds_of_action_share_their_name() -> None:
    names = [kind.model_fields["do"].default for kind in KINDS]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("on", [date(2027, 1, 10), date(2027, 5, 20), date(2027, 9, 1)])
def test_all_that_may_be_found_is_told_with_its_code(on: date) -> None:
    for found in (*at_any_colony(on), *from_outside()):
        assert found.code in FOUND
        assert all(words(action) for action in found.actions)


def test_whatever_is_looked_at_has_its_words() -> None:
    assert set(get_args(Seen)) - {"cups"} == set(LOOKS)


def test_every_day_on_an_action_is_found() -> None:
    first, last = date(2027, 5, 1), date(2027, 5, 7)
    assert days_asked_for((KnockDown(on=first, again_by=last),)) == [first, last]
    assert days_asked_for((Look(at="colony", by=last),)) == [last]

"""Candidates are tried under the same luck: equal ones end equal, and in any order."""

from datetime import date

import numpy as np
from tests.advice.situations import Case, situation

from combwright.advice.kit_acts import Boards, Feeding, Frames
from combwright.advice.trial import doing, try_all

AT = situation(Case(date(2027, 4, 24), 6.0, 3.0, 2.5, 8, nectar=0.0))
FED = (Feeding(feed="syrup", grams=1500, sugar_fraction=0.6),)


def test_equal_candidates_end_equal() -> None:
    one, other = try_all(AT, [doing(AT, FED), doing(AT, FED)])
    assert one.chances == other.chances
    assert np.array_equal(one.colonies, other.colonies)


def test_what_stands_beside_a_candidate_changes_nothing() -> None:
    (alone,) = try_all(AT, [doing(AT, FED)])
    _, beside = try_all(AT, [doing(AT, ()), doing(AT, FED)])
    assert np.array_equal(alone.colonies, beside.colonies)


def test_trying_leaves_the_colony_as_it_was() -> None:
    before = AT.colonies.copy()
    try_all(AT, [doing(AT, (Frames(more=1), *FED))])
    assert np.array_equal(AT.colonies, before)


def test_actions_on_the_stack_and_on_food_can_come_in_any_order() -> None:
    work = (Frames(more=1), Boards(more=-1), *FED)
    one, other = try_all(AT, [doing(AT, work), doing(AT, work[::-1])])
    assert np.array_equal(one.colonies, other.colonies)


def test_every_chance_is_a_chance() -> None:
    for tried in try_all(AT, [doing(AT, ()), doing(AT, FED)]):
        assert all(0.0 <= chance <= 1.0 for chance in tried.chances.values())


def test_what_happened_before_the_visit_is_not_counted_against_it() -> None:
    """Such as a swarm, robbers or hungry days of earlier weeks."""
    troubled = situation(Case(date(2027, 5, 24), 6.0, 3.0, 12.0, 11))
    for column in ("hungry_days", "sour_days", "swarmed", "short_of_room_most", "super_syrup"):
        troubled.colonies[column] = 50.0
    (tried,) = try_all(troubled, [doing(troubled, ())])
    harms = ("hunger", "sour", "syrup in honey")
    assert {name: tried.chances[name] for name in harms} == dict.fromkeys(harms, 0.0)

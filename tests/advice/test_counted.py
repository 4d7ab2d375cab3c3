"""Hunger is not left unseen: a look that found no food stands above what was forecast."""

from dataclasses import replace
from datetime import timedelta
from functools import cache
from uuid import UUID

import numpy as np
import pytest
from tests.advice.situations import Case, drawn, situation

from combwright.advice.bee_acts import Uniting
from combwright.advice.counted import as_counted
from combwright.advice.kit_acts import SuperOff, SuperOn
from combwright.advice.plan import Plan, plan
from combwright.advice.situation import Situation
from combwright.simulation import observe
from combwright.terms.entries import Feed, Visit

BELIEVED = [
    replace(case, stores_kg=max(2.5, min(case.stores_kg, 6.0)), nectar=0.0, feeder_g=0.0)
    for case in (drawn(number) for number in range(7000, 7300))
    if 4 <= case.on.month <= 7 and case.queen == "laying" and not case.disease_signs
][:16]


def seen_bare(case: Case, kilograms: float = 0.0, days: int = 1, fed_g: float = 0.0) -> Situation:
    on = case.on - timedelta(days=days)
    visit = Visit(id=UUID(int=8), on=on, colony="colony", stores_kg=kilograms)
    fed = Feed(id=UUID(int=9), on=on, colony="colony", grams=fed_g or 1.0)
    return replace(situation(case), history=(visit, *((fed,) if fed_g else ())))


@cache
def planned(number: int) -> Plan:
    return plan(seen_bare(BELIEVED[number]))


@pytest.mark.parametrize("number", range(len(BELIEVED)))
def test_a_colony_that_was_seen_bare_without_a_flow_is_fed(number: int) -> None:
    told = planned(number)
    assert told.portion.grams > 0 or BELIEVED[number].signs_at
    assert not told.asks(SuperOn)


@pytest.mark.parametrize("number", range(len(BELIEVED)))
def test_it_is_never_given_a_super(number: int) -> None:
    flow = replace(BELIEVED[number], nectar=0.6)
    assert not plan(seen_bare(flow), with_branches=False).asks(SuperOn)


@pytest.mark.parametrize("number", range(len(BELIEVED)))
def test_its_supers_come_off_before_it_is_fed(number: int) -> None:
    told = planned(number)
    if BELIEVED[number].supers and told.portion.grams:
        assert told.asks(SuperOff)
        assert told.set_up.supers == 0


@pytest.mark.parametrize(
    ("kilograms", "days", "fed_g"), [(3.0, 1, 0.0), (0.0, 30, 0.0), (0.0, 1, 3000.0)]
)
def test_food_that_was_seen_long_ago_or_fed_since_leaves_the_belief(
    kilograms: float, days: int, fed_g: float
) -> None:
    at = seen_bare(BELIEVED[0], kilograms, days, fed_g)
    assert as_counted(at) is at


def test_nobody_has_more_than_was_counted_and_little_stays_little() -> None:
    at = seen_bare(BELIEVED[0], 0.5)
    assert observe.stores_kg(as_counted(at).colonies).max() <= 0.5 + 1e-9
    assert np.array_equal(as_counted(at).colonies["nest"], at.colonies["nest"])


@pytest.mark.parametrize(("believed", "counted", "united"), [(9.0, 2.0, False), (3.2, 2.5, True)])
def test_a_strong_colony_is_not_united_for_a_slip_of_the_count(
    believed: float, counted: float, *, united: bool
) -> None:
    september = BELIEVED[0].on.replace(month=9, day=20)
    case = Case(september, believed, 0.5, 12.0, 11)
    seen = Visit(id=UUID(int=8), on=september, colony="colony", frames_of_bees=counted)
    at = replace(situation(case), history=(seen,))
    assert bool(plan(at, with_branches=False).asks(Uniting)) is united

"""The next visit: the day that pays best, no later than food, room and the swarm allow."""

from dataclasses import replace
from datetime import date

from hypothesis import given
from hypothesis import strategies as st
from tests.advice.situations import Case, drawn, situation

from combwright.advice.bee_acts import LeaveShut, Look
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import visits
from combwright.advice.decisions.visits import LONGEST_WAIT, USUAL_WAIT
from combwright.advice.plan import plan

WEEK = 7  # in which a case of the season is seen again unless the day is weighed otherwise
MAY = Case(date(2027, 5, 10), 7.0, 4.0, 9.0, 9)


def days(case: Case) -> float:
    return Deciding(situation(case)).of(visits.decide).inputs["days_at_most"]


def told_day(case: Case) -> float:
    return Deciding(situation(case)).of(visits.decide).inputs["days"]


def test_in_winter_the_usual_day_is_the_longest() -> None:
    for month in (1, 2, 10, 11, 12):
        case = replace(MAY, on=date(2027, month, 10), frames_of_brood=2.0)
        assert 1 <= told_day(case) <= days(case) <= USUAL_WAIT[month]


@given(st.integers(0, 400))
def test_it_lies_within_the_limits_and_dearer_trips_never_make_it_sooner(number: int) -> None:
    case = drawn(number)
    dear = replace(case, prices=replace(case.prices, road_to_a_hive=10.0))
    assert 1 <= told_day(case) <= days(case) <= max(LONGEST_WAIT, days(case))
    assert told_day(case) <= told_day(dear)


def test_a_swarm_that_may_leave_unseen_brings_the_day_nearer() -> None:
    strong = replace(MAY, frames_of_bees=11.0, frames_of_brood=8.0, frames=11, supers=1)
    quiet = replace(strong, on=date(2027, 7, 20))
    assert told_day(strong) <= WEEK
    later = Deciding(situation(quiet)).of(visits.decide)
    assert later.inputs["days"] > WEEK
    assert "more than a trip by 27 Jul" in later.because[0]


def test_a_colony_that_will_starve_under_its_supers_is_seen_sooner() -> None:
    hungry = replace(MAY, stores_kg=0.6, nectar=0.0, frames=11, frames_of_bees=10.0, queen="laying")
    assert days(replace(hungry, signs_at="Sorrel", supers=1)) < days(MAY)


def test_a_look_before_the_usual_day_is_told_with_its_reason() -> None:
    hungry = replace(
        MAY, stores_kg=0.3, nectar=0.0, supers=1, frames=11, signs_at="Sorrel", days=14
    )
    told = plan(situation(hungry), with_branches=False)
    looks = [each for each in told.asks(Look) if each.at == "colony"]
    assert [each.due for each in looks] == ["food may run out"]
    assert told.next_visit == looks[0].by


def test_a_virgin_is_next_seen_when_she_should_lay() -> None:
    told = plan(situation(replace(MAY, queen="virgin")), with_branches=False)
    assert told.next_visit == told.asks(LeaveShut)[0].until

"""What a keeper does once: what the book tells of it fades, and counts in its own year alone."""

from datetime import date, timedelta
from uuid import UUID

from hypothesis import given
from hypothesis import strategies as st

from combwright.advice.bee_acts import Give
from combwright.advice.kit_acts import Treat
from combwright.advice.lately import done_by, done_lately, had_this_winter, nucs_of
from combwright.terms.entries import Noted, Split, Treatment

ON = date(2027, 8, 20)


def split(days_ago: int) -> Noted:
    made = {"new_colony": "Nuc", "hive": "nuc 6 polystyrene", "frames_of_bees": 2}
    on = ON - timedelta(days=days_ago)
    return Split.model_validate({"id": UUID(int=1), "on": on, "colony": "Oak", **made})


def treated(on: date) -> Noted:
    return Treatment(id=UUID(int=2), on=on, colony="Oak", substance="thymol")


@given(st.integers(0, 200), st.integers(0, 200))
def test_a_donor_recovers_with_the_days(first: int, more: int) -> None:
    before, after = (done_lately([split(days)], ON).nuc for days in (first, first + more))
    assert 1.0 >= before >= after >= 0.0


def test_several_gifts_are_no_more_than_one_nuc() -> None:
    assert nucs_of([Give(frames_of_brood=3), Give(frames_of_brood=3)]) == 1.0
    assert nucs_of([]) == 0.0


def test_the_treatment_of_the_year_is_the_late_one_of_this_year() -> None:
    days = [date(2027, 8, 10), date(2027, 4, 10), date(2026, 8, 10)]
    assert [done_lately([treated(day)], ON).treated for day in days] == [1.0, 0.0, 0.0]
    treat = [Treat(substance="thymol", way="gel")]
    assert [done_by(treat, day).treated for day in days[:2]] == [1.0, 0.0]


@given(st.dates(date(2027, 9, 1), date(2028, 3, 31)), st.integers(0, 400))
def test_what_this_winter_had_was_given_since_its_bees_were_reared(on: date, days: int) -> None:
    begun = on - timedelta(days=days)
    had = had_this_winter([treated(begun)], on)
    assert had == ({"thymol"} if begun >= date(2027, 9, 1) else set())


@given(st.dates(date(2028, 4, 1), date(2028, 8, 31)))
def test_outside_winter_there_is_nothing_to_repeat(on: date) -> None:
    assert not had_this_winter([treated(date(2027, 12, 15)), treated(on)], on)

from datetime import date
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.records.samples import noted_as

from combwright.kit.catalogue import catalogue
from combwright.records.replay.clashes import check
from combwright.records.replay.far_days import last_meant

TODAY = date(2026, 4, 10)
START = [
    noted_as("yard", 901, "2026-03-01", yard="Mill Lane"),
    noted_as("colony", 902, "2026-03-01", colony="Alder", yard="Mill Lane", hive="national timber"),
]


@pytest.mark.parametrize("on", ["2037-04-01", "9999-12-31", "1026-04-01", "2101-01-01"])
def test_a_day_that_nobody_can_mean_is_refused(on: str) -> None:
    visit = noted_as("visit", 1, on, colony="Alder", frames_of_bees=5)
    told = [one for one in check([*START, visit], catalogue(), TODAY) if one.field == "on"]
    assert [one.entry for one in told] == [visit.id]
    assert told[0].blocks
    assert "year" in told[0].remedy


@pytest.mark.parametrize("on", ["2026-04-09", "2027-05-01"])
def test_a_season_may_be_planned_ahead(on: str) -> None:
    visit = noted_as("visit", 1, on, colony="Alder", frames_of_bees=5)
    assert not check([*START, visit], catalogue(), TODAY)


def test_after_years_without_bees_notes_go_on() -> None:
    colony = noted_as("visit", 1, "2031-04-01", colony="Alder", frames_of_bees=5)
    assert not check([*START, colony], catalogue(), date(2031, 4, 2))


def test_a_book_that_lies_in_another_time_is_taken_whole() -> None:
    assert not check(START, catalogue(), date(2019, 1, 1))


@given(st.lists(st.dates(date(1990, 1, 1), date(2100, 12, 31)), min_size=1))
def test_one_day_far_ahead_changes_nothing_before_it(days: list[date]) -> None:
    last = last_meant(days, TODAY)
    assert last is not None
    assert last_meant([day for day in days if day <= last], TODAY) == last
    assert last_meant([*days, date(9999, 12, 31)], TODAY) == last


def test_an_unknown_climate_or_district_is_refused_with_those_that_are_known() -> None:
    for field, known in (("climate", "Dublin Airport"), ("district", "heather moor")):
        (told,) = check([noted_as("yard", 1, yard="Moor", **{field: "Atlantis"})], catalogue())
        assert (told.entry, told.field) == (UUID(int=1), field)
        assert known in told.remedy

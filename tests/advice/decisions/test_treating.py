"""Mites: treated where they pass the level and something works; counted where nobody knows."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import treating
from combwright.advice.decisions.going import goes
from combwright.advice.kit_acts import Counting, CutDrones, Tray, Treat, WriteDown
from combwright.advice.plan import plan
from combwright.advice.prices import Prices
from combwright.terms.entries import Treatment

AUGUST = Case(date(2027, 8, 20), 9.0, 4.0, 15.0, 11, mites=1500.0)


def decided(case: Case) -> Decision:
    return Deciding(situation(case)).of(treating.decide)


def test_many_mites_in_late_summer_are_treated_and_that_is_written_down() -> None:
    told = decided(AUGUST)
    assert told.asks(Treat)
    assert told.asks(WriteDown)
    assert told.is_told


def test_hardly_any_are_not() -> None:
    assert not decided(replace(AUGUST, mites=3.0)).asks(Treat)


@pytest.mark.parametrize("few", [3.0, 30.0, 300.0])
def test_more_mites_pass_the_level_more_likely(few: float) -> None:
    low, high = (
        decided(replace(AUGUST, mites=n)).inputs["chance_of_passing"] for n in (few, 3000.0)
    )
    assert low <= high


def test_without_brood_in_midwinter_the_acid_for_broodless_colonies_is_taken() -> None:
    case = replace(AUGUST, on=date(2027, 12, 20), frames_of_brood=0.0, warmer_k=3.0)
    assert {each.substance for each in decided(case).asks(Treat)} <= {"oxalic acid"}


def test_a_weak_colony_gets_no_formic_acid() -> None:
    for bees in (2.0, 3.0, 4.0):
        case = replace(AUGUST, frames_of_bees=bees, frames_of_brood=1.0)
        assert "formic acid" not in {each.substance for each in decided(case).asks(Treat)}


def test_while_a_treatment_is_at_work_no_other_is_begun() -> None:
    assert not decided(replace(AUGUST, treated_days_ago=10)).asks(Treat)


def test_a_count_is_asked_for_in_the_season_only() -> None:
    few = replace(AUGUST, mites=3.0)
    assert decided(replace(few, on=date(2027, 5, 10))).asks(Counting)
    assert not decided(replace(few, on=date(2027, 1, 10), frames_of_brood=0.0)).asks(Counting)


def test_a_colony_with_a_virgin_is_left_alone() -> None:
    assert not decided(replace(AUGUST, queen="virgin")).actions


@pytest.mark.parametrize("month", [4, 5, 6, 7, 8, 9])
@pytest.mark.parametrize("warmer_k", [-2.0, 0.0, 6.0])
def test_one_sheet_sets_the_tray_one_way(month: int, warmer_k: float) -> None:
    """A count pushes the tray in: it is not drawn out for the warmth on the same sheet."""
    case = Case(date(2027, month, 14), 7.0, 4.0, 8.0, 11, mites=30.0, warmer_k=warmer_k)
    told = plan(situation(case), with_branches=False)
    assert len([*told.asks(Tray), *told.asks(Counting)]) <= 1
    for count in told.asks(Counting):
        assert told.set_up.tray_open_mm == count.tray_open_mm


def test_over_a_solid_floor_no_tray_is_asked_for() -> None:
    told = plan(situation(Case(date(2027, 5, 14), 7.0, 4.0, 8.0, 10, hive="wbc", mites=30.0)))
    solid = situation(Case(date(2027, 5, 14), 7.0, 4.0, 8.0, 10, hive="wbc")).standing.hive.floor
    (count,) = told.asks(Counting)
    assert solid == "solid"
    assert not count.on_tray
    assert "tray" not in " ".join(told.jobs)


@pytest.mark.parametrize("month", [4, 5, 6, 7])
@pytest.mark.parametrize("mites", [800.0, 2000.0])
def test_many_mites_under_supers_are_never_met_with_silence(month: int, mites: float) -> None:
    """What can be done now, what was considered and cannot be, and by when."""
    case = replace(AUGUST, on=date(2027, month, 14), mites=mites, supers=1, warmer_k=2.0)
    told = decided(case)
    assert told.is_told
    if not told.asks(Treat):
        assert told.asks(CutDrones)
        assert "honey supers" in told.because[-1]
        assert " By " in told.because[-1]


@pytest.mark.parametrize("month", [3, 4, 5, 6])
@pytest.mark.parametrize("bees", [4.0, 8.0])
@pytest.mark.parametrize("mites", [None, 60.0, 900.0])
def test_nothing_is_treated_uncounted_where_no_month_asks_for_it(
    month: int, bees: float, mites: float | None
) -> None:
    """However many are believed: common practice, no source."""
    case = Case(date(2027, month, 14), bees, 0.45 * bees, 8.0, 10, warmer_k=2.0, mites=mites)
    told = decided(case)
    assert not told.asks(Treat)
    assert told.asks(Counting)


@pytest.mark.parametrize("mites", [100.0, 400.0, 1500.0])
def test_a_dearer_treatment_is_never_given_sooner(mites: float) -> None:
    case = replace(AUGUST, mites=mites)
    given = [
        bool(decided(replace(case, prices=replace(Prices(), treatment=price))).asks(Treat))
        for price in (1.0, 40.0, 2000.0)
    ]
    assert given == sorted(given, reverse=True)
    assert not given[-1]


def test_few_mites_in_late_summer_are_left() -> None:
    assert not decided(replace(AUGUST, mites=8.0)).asks(Treat)


def test_of_what_is_open_the_one_that_stops_no_laying_comes_first_and_then_another() -> None:
    """Formic acid and thymol stop part of the laying of winter bees (``treatments.toml``)."""
    (first,) = decided(replace(AUGUST, mites=400.0)).asks(Treat)
    assert first.substance == "amitraz"
    at = situation(replace(AUGUST, mites=400.0))
    before = Treatment(id=UUID(int=4), on=date(2026, 8, 10), colony="colony", substance="amitraz")
    used = Deciding(replace(at, history=(*at.history, before))).of(treating.decide)
    assert {each.substance for each in used.asks(Treat)} <= {"formic acid", "thymol"}


def test_without_late_summer_treated_midwinter_treats_a_hundred() -> None:
    december = replace(AUGUST, on=date(2027, 12, 15), frames_of_brood=0.0, warmer_k=2.0)
    assert decided(replace(december, mites=150.0)).asks(Treat)
    assert not decided(replace(december, mites=8.0)).asks(Treat)


@pytest.mark.parametrize(("bees", "mites"), [(4.0, 300.0), (8.0, 150.0), (8.0, 1500.0)])
@pytest.mark.parametrize("before", [14, 40, 75])
def test_a_winter_has_one_treatment_without_brood(bees: float, mites: float, before: int) -> None:
    """Labels allow it once: what the first left behind waits for spring, however many they are."""
    december = Case(date(2027, 12, 15), bees, 0.0, 15.0, 11, mites=mites, warmer_k=2.0)
    at = situation(december)
    last_winter, this_winter = (
        Treatment(id=UUID(int=3), on=day, colony="colony", substance="oxalic acid")
        for day in (date(2026, 12, 15), at.on - timedelta(days=before))
    )
    first = Deciding(replace(at, history=(*at.history, last_winter))).of(treating.decide)
    again = Deciding(replace(at, history=(*at.history, this_winter))).of(treating.decide)
    assert first.asks(Treat)
    assert not again.asks(Treat)
    assert "15 Dec" not in " ".join(again.because)


@pytest.mark.parametrize("mites", [150.0, 900.0])
@pytest.mark.parametrize("bees", [1.8, 2.4])
def test_what_is_united_is_not_treated_first(bees: float, mites: float) -> None:
    weak = Case(date(2027, 9, 12), bees, 1.0, 6.0, 8, mites=mites, warmer_k=2.0)
    told = Deciding(situation(weak))
    assert goes(told)
    assert not told.of(treating.decide).asks(Treat)


@pytest.mark.parametrize("month", [4, 5, 6])
def test_what_forbids_several_is_said_once(month: int) -> None:
    told = decided(replace(AUGUST, on=date(2027, month, 14), mites=2000.0, supers=1))
    assert told.because[-1].count("honey supers off") == 1
    assert all(name in told.because[-1] for name in ("formic acid", "thymol", "amitraz"))


@pytest.mark.parametrize("on", [date(2027, 2, 12), date(2027, 4, 10), date(2027, 11, 20)])
@pytest.mark.parametrize("brood", [0.0, 2.0])
def test_what_hangs_between_combs_is_not_begun_where_no_hive_is_opened(
    on: date, brood: float
) -> None:
    """Common practice, no source: acid alone is given in the cold, from above or by the fumes."""
    case = Case(on, 6.0, brood, 9.0, 11, mites=900.0, warmer_k=-6.0)
    begun = [each.substance for each in decided(case).asks(Treat)]
    assert begun in ([], ["oxalic acid"])

"""Laying and the ageing of brood."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples

from combwright.simulation.columns import LAYING
from combwright.simulation.step.rearing import age_brood, brood_risk, laid, vigour, wanted

BIO = samples.numbers()
Share = st.floats(0, 1)
Cells = st.floats(0, 60_000)


def brood_of(colony: Any) -> float:
    return float(colony.eggs.sum() + colony.larvae.sum() + colony.sealed.sum())


@given(samples.colonies(), Share, st.floats(0, 5000))
def test_only_a_laying_queen_wants_to_lay(colony: Any, season: float, income: float) -> None:
    eggs = wanted(colony, season, 0.0, income, BIO)
    assert eggs >= 0.0
    assert colony.queen == LAYING or eggs == 0.0


@given(
    samples.colonies(),
    st.sampled_from(["nest", "ripe", "pollen", "queen_potential"]),
    st.floats(1, 3),
)
def test_more_of_what_she_needs_never_holds_her_back(colony: Any, of: str, factor: float) -> None:
    colony.queen = LAYING
    before = wanted(colony, 0.7, 100.0, 100.0, BIO)
    colony[of] *= factor
    after = wanted(colony, 0.7, 100.0, 100.0, BIO)
    if of != "nest" or colony.winter == 0.0:  # more summer bees thin out the winter bees' protein
        assert after >= before * (1 - 1e-12)


@given(st.floats(0, 2500), st.floats(0, 500))
def test_a_queen_grows_into_laying_and_fades(age: float, later: float) -> None:
    assert 0.0 <= vigour(age, BIO) <= 1.0
    if age > BIO.queen_begins_days:
        assert vigour(age + later, BIO) <= vigour(age, BIO)
    assert vigour(365.0, BIO) == 1.0


@given(st.floats(0, 3000), Cells, Cells)
def test_she_lays_what_she_finds_room_for(eggs: float, room: float, more: float) -> None:
    found = laid(eggs, room, BIO)
    assert 0.0 <= found <= min(eggs, room)
    assert found <= laid(eggs, room + more, BIO) + 1e-9


@given(samples.colonies(), st.floats(0, 3000))
def test_without_deaths_no_brood_is_lost(colony: Any, eggs: float) -> None:
    colony.brood_mortality = 0.0
    before = brood_of(colony)
    emerging = age_brood(colony, eggs, 0.0, 0.0, BIO)
    assert brood_of(colony) + emerging == pytest.approx(before + eggs)


@given(samples.colonies(), Share, Share)
def test_with_deaths_none_is_made(colony: Any, chill: float, hunger: float) -> None:
    before = brood_of(colony)
    emerging = age_brood(colony, 1000.0, chill, hunger, BIO)
    assert emerging >= 0.0
    assert brood_of(colony) + emerging <= before + 1000.0 + 1e-6


@given(samples.colonies(), st.floats(0, 12), st.floats(0, 5))
def test_brood_outside_the_warm_nest_is_chilled(colony: Any, warm: float, more: float) -> None:
    chill, _ = brood_risk(colony, brood_of(colony), warm, BIO)
    assert 0.0 <= chill <= BIO.chill_death
    assert brood_risk(colony, brood_of(colony), warm + more, BIO)[0] <= chill


def test_eggs_emerge_after_twenty_one_days() -> None:
    colony = samples.row({"brood_mortality": 0.0})
    born = [age_brood(colony, float(day == 0), 0.0, 0.0, BIO) for day in range(30)]
    assert born.index(1.0) == 21

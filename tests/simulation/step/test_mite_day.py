"""Brood against mites."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples

from combwright.simulation.step.mite_day import (
    age_mites,
    arriving_mites,
    hurt_share,
    killed_today,
)

BIO = samples.numbers()
Cells = st.floats(0, 2500)
Luck = st.floats(0.1, 4)  # a factor


def mites_of(colony: Any) -> float:
    return float(colony.mites + colony.mites_worker.sum() + colony.mites_drone.sum())


@given(samples.colonies(), Cells, Cells, st.floats(0, 50), Luck)
def test_every_mite_is_accounted_for(
    colony: Any, workers: float, drones: float, arriving: float, luck: float
) -> None:
    before = mites_of(colony)
    born, died, fallen = age_mites(colony, workers, drones, arriving, luck, BIO)
    assert mites_of(colony) == pytest.approx(before + born + arriving - died)
    assert -1e-9 <= fallen <= died + 1e-9
    assert colony.mites >= -1e-9


@given(samples.colonies(), Cells, Luck)
def test_without_brood_no_mite_enters_a_cell(colony: Any, workers: float, luck: float) -> None:
    colony.mites_worker[:] = 0.0
    colony.mites_drone[:] = 0.0
    age_mites(colony, 0.0, 0.0, 0.0, luck, BIO)
    assert colony.mites_worker.sum() == colony.mites_drone.sum() == 0.0
    if colony.mites > 1.0 and workers > 1.0:
        age_mites(colony, workers, 0.0, 0.0, luck, BIO)
        assert colony.mites_worker[0] > 0.0


@given(samples.colonies(), Cells, st.floats(0, 0.5))
def test_a_treatment_leaves_fewer_mites(colony: Any, workers: float, kill: float) -> None:
    colony.kill_bees = colony.kill_cells = 0.0
    treated = samples.row({name: colony[name] for name in colony.dtype.names})
    treated.kill_bees, treated.kill_cells, treated.kill_pace = kill, kill, 1.0
    age_mites(colony, workers, 0.0, 0.0, 1.0, BIO)
    age_mites(treated, workers, 0.0, 0.0, 1.0, BIO)
    assert mites_of(treated) <= mites_of(colony) * (1 + 1e-12) + 1e-9


@given(st.floats(0, 0.9), st.floats(0.3, 3), st.floats(0.3, 3))
def test_a_treatment_kills_more_in_the_warmth(share: float, one: float, other: float) -> None:
    cool, warm = sorted((one, other))
    assert 0.0 <= killed_today(share, cool) <= killed_today(share, warm) <= 1.0
    assert killed_today(share, 1.0) == share


@given(st.floats(0, 1e4), st.floats(0, 1e4), st.floats(0, 1e4))
def test_more_mothers_hurt_more_cells(cells: float, one: float, other: float) -> None:
    few, many = sorted((one, other))
    assert 0.0 <= hurt_share(few, cells) <= hurt_share(many, cells) <= 1.0


@given(samples.colonies(), st.floats(1, 366), st.floats(-3, 3))
def test_mites_are_carried_in_between_spring_and_winter_only(
    colony: Any, day: float, luck: float
) -> None:
    carried = arriving_mites(colony, samples.today(np.full(9, luck), day=day))
    assert carried >= 0.0
    if day <= BIO.invade_summer_from or day >= BIO.invade_until:
        assert carried == 0.0

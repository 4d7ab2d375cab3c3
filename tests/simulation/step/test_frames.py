"""Comb under the keeper's hands: counted as NumPy counts, and nothing stands where no comb is."""

from typing import Any

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples
from tests.simulation.reference.day import record

from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.step.frames import stack_of

BROOD = ("eggs", "larvae", "sealed")
FOOD = ("ripe", "unripe", "water", "pollen")
CELLS = 5000.0


@given(samples.states())
def test_brood_is_added_up_as_numpy_does_to_the_last_digit(colony: dict[str, Any]) -> None:
    one = record(colony)
    workers = sum(one[name].sum(axis=-1) for name in BROOD)
    drones = one["drone_open"].sum(axis=-1) + one["drone_sealed"].sum(axis=-1)
    assert observe.brood(one) == workers
    assert observe.brood_cells(one) == workers + BIOLOGY.drone_cell * drones


@given(samples.states())
def test_what_finds_no_comb_is_gone_and_what_does_stays(colony: dict[str, Any]) -> None:
    before, after = record(colony), record(colony)
    samples.fit_comb(after)
    brood, room = observe.brood_cells(after), after["drawn"]
    assert (brood <= room * (1 + 1e-12) + 1e-9).all()
    if (observe.brood_cells(before) <= room).all():
        assert all(np.array_equal(after[name], before[name]) for name in BROOD)
        left = room + after["super_drawn"] - brood
        if (observe.food_cells(before) <= left).all():
            assert all(np.array_equal(after[name], before[name]) for name in FOOD)


@given(samples.states(), st.integers(1, 11), st.integers(0, 11), st.integers(0, 3), st.booleans())
def test_frames_and_supers_stand_as_they_were_put(
    colony: dict[str, Any],
    frames: int,
    sheets: int,
    supers: int,
    honey_stays: bool,
) -> None:
    one = record(colony)
    honey = one["super_ripe"].copy()
    stack_of(one, frames * CELLS, sheets * CELLS, float(supers), 3000.0, honey_stays)
    assert np.allclose(one["drawn"] + one["foundation"], frames * CELLS)
    assert (one["supers"] == supers).all()
    assert (one["super_ripe"] <= honey * (1 + 1e-12)).all()
    if supers == 0:
        assert (one["super_drawn"] == 0.0).all() or colony["supers"] == 0.0

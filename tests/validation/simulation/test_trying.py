"""How implausible a world is."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.validation.simulation.trying import FREE, cells, ends, free_of, implausible, world

from combwright.evidence.targets import Target, targets
from combwright.simulation.biology import BIOLOGY

TARGETS = st.sampled_from(list(targets().values()))


@given(TARGETS)
def test_the_edge_of_a_band_is_two_standard_deviations_off_and_its_middle_none(
    target: Target,
) -> None:
    values = np.array([target.low, (target.low + target.high) / 2.0, target.high])
    assert implausible(target, values, 0.0) == pytest.approx([2.0, 0.0, 2.0], abs=1e-9)


@given(TARGETS, st.floats(-3.0, 3.0), st.floats(0.0, 2.0), st.floats(0.01, 2.0))
def test_less_is_ruled_out_by_what_is_less_sure(
    target: Target, place: float, chance: float, more: float
) -> None:
    values = np.array([target.low + place * (target.high - target.low)])
    wide = (target.high - target.low) / 4.0
    sure = implausible(target, values, chance * wide)
    assert implausible(target, values, (chance + more) * wide) <= sure
    assert implausible(target, values, chance * wide, more * wide) <= sure


def test_a_world_in_which_all_die_is_ruled_out() -> None:
    assert implausible(targets()["bees_may"], np.array([np.nan]), 1e9) > 3.0


def test_a_world_is_made_of_its_free_numbers() -> None:
    assert world(free_of(BIOLOGY)) == BIOLOGY
    low, high = ends()
    assert ((low <= free_of(BIOLOGY)) & (free_of(BIOLOGY) <= high)).all()
    assert (free_of(world(high)) == high).all()
    assert len(set(FREE)) == len(FREE)


def test_a_target_is_fitted_to_or_held_out() -> None:
    fitted, apart = set(cells(held_out=False)), set(cells(held_out=True))
    assert not fitted & apart
    assert {name for _, name, _ in fitted | apart} == set(targets())
    assert len({name for _, name, _ in apart}) >= 8

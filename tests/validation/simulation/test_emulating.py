"""The quick stand-in for four-year lives."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from tests.validation.simulation.emulating import Emulator


def quadratic(unit: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray(3.0 + unit @ [2.0, -1.0, 0.0] + unit**2 @ [0.0, 4.0, 1.0])


@given(st.integers(0, 1000))
def test_it_learns_a_quadratic_and_knows_that_it_has(seed: int) -> None:
    rng = np.random.default_rng(seed)
    known, new = rng.random((400, 3)), rng.random((50, 3))
    emulator = Emulator.learned(known, quadratic(known))
    assert np.abs(emulator.says(new) - quadratic(new)).max() < 0.1
    assert emulator.error < 0.1


@given(st.integers(0, 1000), st.floats(0.5, 5.0))
def test_its_error_is_that_of_what_it_cannot_know(seed: int, noise: float) -> None:
    rng = np.random.default_rng(seed)
    known = rng.random((400, 3))
    emulator = Emulator.learned(known, quadratic(known) + noise * rng.standard_normal(400))
    assert 0.8 * noise < emulator.error < 1.25 * noise


def test_worlds_in_which_nothing_was_seen_teach_nothing() -> None:
    known = np.random.default_rng(1).random((100, 3))
    values = quadratic(known)
    gone = np.where(np.arange(100) % 4 == 0, np.nan, values)
    some = Emulator.learned(known[np.isfinite(gone)], values[np.isfinite(gone)])
    assert np.allclose(Emulator.learned(known, gone).coefficients, some.coefficients)

"""Weights and resampling; exact values computed by hand and with independent numpy code."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.belief.weighing.weights import (
    Weights,
    gentle_share,
    moved_apart,
    pick,
    quantiles,
    systematic,
)

some_weights = st.lists(st.floats(1e-6, 1.0), min_size=1, max_size=40).map(
    lambda values: np.array(values) / np.sum(values)
)


def test_effective_members() -> None:
    weights = Weights(np.log(np.array([0.1, 0.2, 0.3, 0.4])))
    assert weights.effective == pytest.approx(10 / 3)


def test_logarithms_do_not_underflow() -> None:
    weights = Weights(np.array([-1000.0, -1001.0, -1002.0]))
    assert weights.log_sum == pytest.approx(-999.5923940355556, abs=1e-12)
    assert weights.normal == pytest.approx([0.66524096, 0.24472847, 0.09003057], abs=1e-8)
    assert weights.effective == pytest.approx(1.9586986534143882)


@pytest.mark.parametrize(
    ("count", "position", "ancestors"),
    [
        (4, 0.5, [1, 2, 3, 3]),
        (4, 0.1, [0, 1, 2, 3]),
        (10, 0.5, [0, 1, 1, 2, 2, 2, 3, 3, 3, 3]),
    ],
)
def test_systematic_resampling(count: int, position: float, ancestors: list[int]) -> None:
    # numpy's ladder of .1, .2, .3, .4 passes .6 by one unit in the last place
    found = systematic(np.array([0.1, 0.2, 0.3, 0.4]), count, position)
    assert found.tolist() == ancestors


@given(some_weights, st.integers(1, 200), st.floats(0, 1, exclude_max=True))
def test_copies_are_the_whole_number_below_or_above(
    weights: np.ndarray, count: int, position: float
) -> None:
    copies = np.bincount(systematic(weights, count, position), minlength=len(weights))
    assert copies.sum() == count
    assert (copies > count * weights - 1 - 1e-6).all()
    assert (copies < count * weights + 1 + 1e-6).all()


@given(some_weights, st.integers(1, 50))
def test_what_nothing_explains_leaves_the_weights_as_they_were(
    weights: np.ndarray, count: int
) -> None:
    nothing = np.full(len(weights), -np.inf)
    picked = pick(np.log(weights), nothing, count, 0.5)
    assert picked.weights == pytest.approx(weights)
    assert picked.log_evidence == -np.inf
    unknown = pick(np.log(weights), np.full(len(weights), np.nan), count, 0.5)
    assert np.isfinite(unknown.weights).all()


@pytest.mark.parametrize("shrink", [0.95, 0.98, 0.99])
def test_moving_apart_keeps_means_and_covariances(shrink: float) -> None:
    rng = np.random.default_rng(5)
    values = rng.multivariate_normal([1.0, -2.0], [[1.0, 0.6], [0.6, 0.5]], 20000)
    moved = moved_apart(values, shrink, rng)
    assert moved.mean(axis=0) == pytest.approx(values.mean(axis=0), abs=0.02)
    assert np.cov(moved.T) == pytest.approx(np.cov(values.T), rel=0.05)
    assert np.unique(moved[:, 0]).size == len(values)


def test_copies_come_apart_but_what_is_certain_stays_certain() -> None:
    rng = np.random.default_rng(6)
    values = np.stack([np.repeat([0.0, 1.0], 50), np.full(100, 3.0)], axis=1)
    moved = moved_apart(values, 0.9, rng)
    assert np.unique(moved[:, 0]).size == 100
    assert moved[:, 1] == pytest.approx(3.0)


@given(st.floats(-50, 50), st.integers(2, 60))
def test_a_note_taken_gently_leaves_members_enough(steep: float, count: int) -> None:
    likely = steep * np.linspace(0.0, 1.0, count)
    share = gentle_share(Weights.even(count).log, likely, 0.5 * count)
    assert 0.0 < share <= 1.0
    left = Weights.even(count).times(share * likely).effective
    assert left >= 0.5 * count - 1e-9 or share <= 1e-3


@given(some_weights)
def test_quantiles_rise(weights: np.ndarray) -> None:
    values = np.linspace(-1.0, 3.0, len(weights))
    low, middle, high = quantiles(values, weights, (0.05, 0.5, 0.95))
    assert -1.0 <= low <= middle <= high <= 3.0

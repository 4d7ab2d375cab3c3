import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from combwright.science.mites.invasion import (
    cells_to_trap,
    drone_preference,
    drone_share,
    growth_rate,
    invasion_rate,
    share_on_bees,
    trapped_share,
)
from combwright.terms.errors import OutOfRangeError

Rate = st.floats(0.005, 2)
Leaving = st.floats(0.3, 2.5)

# Closed form apart from this code: invasion, mites out per mite in, growth, % on bees.
GROWTH = [
    (0.10, 1.3, 0.0097, 47),
    (0.10, 1.7, 0.0230, 49),
    (0.15, 1.5, 0.0203, 39),
    (0.20, 1.5, 0.0226, 32),
    (0.30, 1.5, 0.0255, 24),
    (0.40, 1.3, 0.0172, 19),
    (0.40, 1.7, 0.0359, 20),
]


def test_trapping_comb_of_boot() -> None:  # Boot et al. 1995, Apidologie 26:109-118
    assert trapped_share(0, 462, 1000) == pytest.approx(0.95, abs=0.005)
    assert drone_preference() == pytest.approx(11.6, abs=0.3)


def test_both_constants_follow_from_the_trapping_comb() -> None:
    per_drone_cell = np.log(20) / 462 * 1000
    assert invasion_rate(0, 1000, 1000) == pytest.approx(per_drone_cell, rel=0.01)
    assert invasion_rate(1000, 0, 1000) == pytest.approx(per_drone_cell / 11.6, rel=0.01)


@pytest.mark.parametrize(
    ("workers", "drones", "grams", "rate", "share"),
    [
        (1000, 0, 2500, 0.224, 0),
        (1500, 0, 3000, 0.280, 0),
        (1500, 50, 3000, 0.388, 0.28),
        (800, 100, 2500, 0.439, 0.59),
    ],
)
def test_worked_examples(
    workers: float, drones: float, grams: float, rate: float, share: float
) -> None:
    assert invasion_rate(workers, drones, grams) == pytest.approx(rate, abs=5e-4)
    assert drone_share(workers, drones) == pytest.approx(share, abs=5e-3)


@given(st.floats(0.01, 0.99), st.floats(100, 10_000))
def test_cells_to_trap_is_the_inverse(share: float, grams: float) -> None:
    assert trapped_share(0, cells_to_trap(share, grams), grams) == pytest.approx(share)
    workers = cells_to_trap(share, grams, "worker")
    assert trapped_share(workers, 0, grams) == pytest.approx(share)


@pytest.mark.parametrize(("a", "leaving", "growth", "percent"), GROWTH)
def test_growth_in_closed_form(a: float, leaving: float, growth: float, percent: float) -> None:
    assert growth_rate(a, leaving) == pytest.approx(growth, abs=6e-5)
    assert 100 * share_on_bees(a, leaving) == pytest.approx(percent, abs=0.6)


@given(Rate, Leaving, st.floats(0, 0.05))
def test_growth_agrees_with_a_root_finder(a: float, leaving: float, m: float) -> None:
    def gap(r: float) -> float:
        return a * leaving * float(np.exp(-r * 12)) - a - m - r

    assert growth_rate(a, leaving, 12, m) == pytest.approx(brentq(gap, -3, 3, xtol=1e-14), abs=1e-9)


def test_growth_agrees_with_the_cycle_run_day_by_day() -> None:
    """A fine-grained count: mites enter cells, and their brood comes out 12 days later."""
    a, leaving, m, days, h = 0.2, 1.5, 0.006, 12, 0.01
    lag = round(days / h)
    on_bees = np.ones(60 * lag)
    for step in range(lag, len(on_bees)):
        out = leaving * a * on_bees[step - lag]
        on_bees[step] = on_bees[step - 1] + h * (out - (a + m) * on_bees[step - 1])
    growth = np.log(on_bees[-1] / on_bees[-1 - lag]) / days
    assert growth == pytest.approx(float(growth_rate(a, leaving)), rel=1e-3)


@given(Rate, Leaving, st.floats(1.01, 2))
def test_more_offspring_more_growth(a: float, leaving: float, factor: float) -> None:
    assert growth_rate(a, leaving * factor) > growth_rate(a, leaving)


@given(Rate, Leaving)
def test_shares_are_shares(a: float, leaving: float) -> None:
    assert 0 < share_on_bees(a, leaving) < 1


def test_level_numbers_have_a_share_too() -> None:
    assert growth_rate(0.2, 1.0, 12, 0.0) == pytest.approx(0, abs=1e-15)
    assert share_on_bees(0.2, 1.0, 12, 0.0) == pytest.approx(1 / (1 + 0.2 * 12))


def test_kilograms_are_noticed() -> None:
    with pytest.raises(OutOfRangeError, match="Give grams"):
        invasion_rate(1000, 0, 2.5)

"""The 2013 model of Khoury, Barron and Myerscough, PLoS ONE 8:e59084."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import OdeSolution, solve_ivp

from combwright.science.foraging.limits import (
    critical_store_g,
    life_limit,
    multiplier_limits,
    piling_limit,
)
from combwright.science.foraging.recruitment import Floats
from combwright.science.foraging.with_food import Regime, critical_food_factor, food_balance
from combwright.science.foraging.with_food_days import run

# Worked out apart from this code: death rate, hive bees, foragers, open brood, gain or store.
PILES = [
    (0.10, 46_129, 18_044, 16_240, 1063),
    (0.154, 31_797, 11_222, 15_554, 541),
    (0.30, 18_594, 5_254, 14_185, 103),
    (0.40, 15_000, 3_750, 13_500, 0.75),
]
STEADY = [
    (0.42, 9_802, 2_749, 10_391, 1304),
    (0.44, 4_895, 1_578, 6_247, 767),
    (0.46, 496, 188, 778, 479),
]
# Delay run apart from this code, from 16 000 hive bees, 8000 foragers, nothing else.
RUNS = [
    (0.154, 10, 10_568, 4_160, 7_877, 3_946),
    (0.154, 50, 18_768, 6_468, 13_539, 8_755),
    (0.154, 100, 28_307, 9_929, 15_184, 26_558),
    (0.30, 100, 16_131, 4_591, 13_405, 4_907),
    (0.50, 100, 3_423, 1_133, 4_585, 611),
]


@pytest.mark.parametrize(("m", "hive", "foragers", "brood", "gain"), PILES)
def test_food_piles_up(m: float, hive: int, foragers: int, brood: int, gain: float) -> None:
    at = food_balance(m)
    assert at.regime == "food piles up"
    assert (at.hive_bees, at.foragers, at.open_brood) == pytest.approx(
        (hive, foragers, brood), abs=0.6
    )
    assert at.food_gain_g_per_day == pytest.approx(gain, abs=0.5)
    assert at.food_g is None


@pytest.mark.parametrize(("m", "hive", "foragers", "brood", "food"), STEADY)
def test_food_in_balance(m: float, hive: int, foragers: int, brood: int, food: float) -> None:
    at = food_balance(m)
    assert at.regime == "balance"
    ours = (at.hive_bees, at.foragers, at.open_brood, at.food_g)
    assert ours == pytest.approx((hive, foragers, brood, food), abs=0.6)


# A. Fritzler, bachelor thesis, TU Munich, 2026: at 0.154 a day.
def test_thresholds_of_the_thesis() -> None:
    assert multiplier_limits(0.154) == pytest.approx((0.518, 0.415, 0.319), abs=0.001)
    assert critical_store_g(0.154) == pytest.approx(313, abs=0.5)
    assert life_limit() == pytest.approx(3 * 0.154, abs=0.001)


@pytest.mark.parametrize(
    ("m", "regime"),
    [(0.4009, "food piles up"), (0.4012, "balance"), (0.4622, "balance"), (0.4626, "dies")],
)
def test_regimes_change_at_the_published_rates(m: float, regime: Regime) -> None:
    assert food_balance(m).regime == regime


@given(st.floats(0.5, 3))
def test_richer_forage_bears_more_deaths(multiplier: float) -> None:
    assert piling_limit(multiplier) < life_limit(multiplier)
    assert piling_limit(multiplier * 1.1) > piling_limit(multiplier)


@given(st.floats(0.05, 1.9), st.floats(0, 3))
def test_balances_are_never_negative(m: float, multiplier: float) -> None:
    at = food_balance(m, multiplier)
    assert min(at.hive_bees, at.foragers, at.open_brood, at.food_gain_g_per_day) >= 0
    assert (at.food_g is None) == (at.regime == "food piles up")
    assert 0 < critical_food_factor(m) <= 1


@pytest.mark.parametrize("published", RUNS)
def test_delay_run(published: tuple[float, ...]) -> None:
    m, day, *colony = published
    at = run(day, m)
    ours = [at.hive_bees, at.foragers, at.open_brood, at.food_g]
    assert ours == pytest.approx(colony, rel=1e-3)


@pytest.mark.parametrize("m", [0.154, 0.30, 0.50])
def test_delay_run_agrees_with_scipy_interval_by_interval(m: float) -> None:
    """The method of steps: in each 12 days the sealed brood is known from the 12 before."""
    state: Floats = np.array([16_000.0, 8_000.0, 0.0, 0.0])
    past: OdeSolution | None = None

    for start in range(0, 48, 12):
        run_of_steps = solve_ivp(
            _published, (start, start + 12), state, args=(m, past), dense_output=True, rtol=1e-9
        )
        state, past = run_of_steps.y[:, -1], run_of_steps.sol
    at = run(48, m)
    ours = (at.hive_bees, at.foragers, at.open_brood, at.food_g)
    assert ours == pytest.approx(tuple(state), rel=2e-4)


def _published(
    day: float,
    state: Floats,
    m: float,
    past: OdeSolution | None,
) -> list[float]:
    """Write the equations out again, as in the paper, with its constants."""
    hive, foragers, brood, food = state
    sealed_then = past(day - 12)[2] / 9 if past is not None else 0.0
    s = food**2 / (food**2 + 500**2)
    recruited = hive * (0.25 + 0.25 * (1 - s) - 0.75 * foragers / (hive + foragers))
    return [
        sealed_then - recruited,
        recruited - m * foragers,
        2000 * s * hive / (hive + 5000) - brood / 9,
        0.1 * foragers - 0.007 * (foragers + hive) - 0.018 * brood,
    ]

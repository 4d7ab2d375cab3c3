import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from combwright.science.queens.mating import flight_chance, mated_chance, no_flight_chance
from combwright.terms.errors import OutOfRangeError

Chances = st.lists(st.floats(0, 1), min_size=1, max_size=20)


# COLOSS BEEBOOK, behaviour chapter 13.2: above 20 °C; the ramp below is our own.
@pytest.mark.parametrize(("degrees", "chance"), [(15.9, 0), (20, 1), (25, 1)])
def test_warmth_of_a_mating_day(degrees: float, chance: float) -> None:
    assert flight_chance(degrees) == chance


@given(st.floats(-10, 40), st.floats(0, 10))
def test_warmer_is_never_worse(degrees: float, more: float) -> None:
    assert flight_chance(degrees + more) >= flight_chance(degrees)


def test_rain_clouds_and_wind_take_away() -> None:
    assert flight_chance(25, rain_mm=1.0) == 0
    assert flight_chance(25, sun=0.5, calm=0.5) == 0.25


def test_fahrenheit_is_noticed() -> None:
    with pytest.raises(OutOfRangeError, match="Fahrenheit"):
        flight_chance(68)


@given(st.floats(0, 1), st.integers(1, 20), st.integers(1, 4))
def test_equal_days_follow_the_binomial(chance: float, days: int, needed: int) -> None:
    ours = mated_chance(np.full(days, chance), days_needed=needed, lost=0)
    assert ours == pytest.approx(binom.sf(needed - 1, days, chance), abs=1e-12)


@given(Chances)
def test_the_order_of_the_days_does_not_matter(chances: list[float]) -> None:
    turned = chances[::-1]
    assert mated_chance(turned, 2) == pytest.approx(mated_chance(chances, 2), abs=1e-12)


@given(Chances, st.floats(0, 1))
def test_one_day_more_never_harms(chances: list[float], another: float) -> None:
    assert mated_chance([*chances, another], 2) >= mated_chance(chances, 2) - 1e-12


def test_birds_take_their_share() -> None:
    assert mated_chance([1.0], 1, lost=0.12) == pytest.approx(0.88)


def test_independent_days_are_too_hopeful_in_june() -> None:
    counted_at_dublin = 0.19  # share of 14-day windows of June 1991-2020 without a fit day
    assert no_flight_chance(5.20, 30, 14) < counted_at_dublin

"""What falls by itself: against measured ranges, the simulated colony, and the law of its parts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.evidence import simulated_mites
from combwright.science.mites.counts import fall_multiplier
from combwright.science.mites.natural_fall import daily_deaths, mites_per_fallen

Bees = st.floats(3000.0, 50_000.0)
Brood = st.floats(0.0, 45_000.0)


@pytest.mark.parametrize("month", [4, 5, 6, 7, 8])
def test_with_brood_it_is_what_was_measured(month: int) -> None:
    # 20-40 Martin 1998 (from memory); 27 and 23-54 Delaplane & Hood 1997, 1999 (read)
    assert 20.0 < fall_multiplier(month).value < 40.0


@pytest.mark.parametrize("month", [11, 12, 1])
def test_without_brood_it_is_what_was_measured(month: int) -> None:
    # 100-500 Martin 1998; 400 National Bee Unit (both from memory)
    assert 100.0 < fall_multiplier(month).value < 500.0


@pytest.mark.parametrize(
    ("day", "brood", "bees"), [(105, 9000.0, 18_000.0), (60, 0.0, 13_000.0)], ids=["April", "none"]
)
def test_the_calculator_tells_of_a_fall_what_the_simulated_colony_does(
    day: int, brood: float, bees: float
) -> None:
    simulated = simulated_mites.mites_per_fallen(day, brood)
    assert mites_per_fallen(brood, bees) == pytest.approx(simulated, rel=0.1)


@given(Brood, Bees, st.floats(0.0, 0.2))
def test_a_fall_means_most_mites_where_there_is_no_brood(
    brood: float, bees: float, drones: float
) -> None:
    assert 1.0 < mites_per_fallen(brood, bees, drones) <= mites_per_fallen(0.0, bees) + 1e-6


@given(Brood)
def test_deaths_lie_between_those_of_winter_and_of_summer(brood: float) -> None:
    assert 0.0024 <= daily_deaths(brood, 0.0024, 0.006, 1000.0) < 0.006

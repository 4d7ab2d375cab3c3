"""Honey: laws, round trips and what confused numbers are told."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.honey import moisture
from combwright.science.honey.moisture import (
    density_kg_per_l,
    gravity_20_20,
    water_activity,
    water_percent_of_index,
)
from combwright.science.syrup.strength import density_kg_per_l as syrup_density_kg_per_l
from combwright.terms.errors import OutOfRangeError

# White's table of specific gravity 20/20; from memory, 17 and 18 % confirmed by pages read.
WHITE = [(13, 1.4457), (15, 1.4350), (17, 1.4237), (18, 1.4171), (20, 1.4027), (21, 1.3950)]


@given(st.floats(1.475, 1.505), st.floats(10.0, 39.0), st.floats(0.1, 1.0))
def test_a_warmer_prism_means_drier_honey(index: float, celsius: float, more: float) -> None:
    warmer = water_percent_of_index(index, celsius + more)
    assert warmer < water_percent_of_index(index, celsius)


@pytest.mark.parametrize(("water", "gravity"), WHITE)
def test_gravity_is_the_table(water: float, gravity: float) -> None:
    assert float(gravity_20_20(water)) == pytest.approx(gravity, abs=1e-12)


@given(st.floats(12.0, 24.5), st.floats(0.01, 0.5))
def test_wetter_honey_is_lighter_and_more_active(water: float, more: float) -> None:
    assert density_kg_per_l(water + more) < density_kg_per_l(water)
    wet, wetter = water_activity(max(water, 13.0)), water_activity(max(water, 13.0) + more)
    assert wet < wetter


@given(st.floats(16.0, 21.0))
def test_honey_is_lighter_than_sucrose_of_equal_solids(water: float) -> None:
    assert density_kg_per_l(water) < syrup_density_kg_per_l(1.0 - water / 100.0)


@pytest.mark.parametrize(
    ("index", "said"),
    [
        (1.33, "That is the index of water"),
        (1.40, "syrup or nectar"),
        (18.0, "looks like percent of water"),
        (80.3, "looks like a Brix reading"),
        (float("nan"), "cannot be nan"),
        ([1.49, 1.333], "cannot be 1.333.*That is the index of water"),
    ],
)
def test_what_is_no_index_is_named(index: float | list[float], said: str) -> None:
    with pytest.raises(OutOfRangeError, match=said):
        water_percent_of_index(index)


@pytest.mark.parametrize(
    ("water", "said"),
    [(0.18, "write 18"), (82.0, "looks like Brix"), (3.0, "about 14 to 22")],
)
def test_what_is_no_water_content_is_named(water: float, said: str) -> None:
    with pytest.raises(OutOfRangeError, match=said):
        moisture.water_within(water)


def test_a_reading_in_fahrenheit_is_recognised() -> None:
    with pytest.raises(OutOfRangeError, match=r"looks like Fahrenheit; that would be 20 °C"):
        water_percent_of_index(1.4915, 68.0)

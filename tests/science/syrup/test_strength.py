"""Syrup: laws, unit traps, and the cubic of the NBS table as a second opinion on density."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.syrup.strength import (
    density_kg_per_l,
    sugar_fraction,
    sugar_fraction_of_ratio,
    volume_l,
    water_kg,
)
from combwright.terms.errors import OutOfRangeError

FRACTIONS = st.floats(0.0, 0.8)
TEMPERATURES = st.floats(0.0, 80.0)
CRYSTAL_KG_PER_L = 1.5879  # density of crystalline sucrose, from memory


@pytest.mark.parametrize("percent", [5.0, 10.0, 15.0, 20.0, 30.0, 40.0])
def test_density_read_by_the_nbs_cubic_gives_the_fraction(percent: float) -> None:
    # NBS Circular 440 fit, read second-hand; valid to 40 %, for specific gravity in air.
    air = 0.0012
    gravity = (float(density_kg_per_l(percent / 100)) - air) / (float(water_kg(1.0)) - air)
    brix = ((182.4601 * gravity - 775.6821) * gravity + 1262.7794) * gravity - 669.5622
    assert brix == pytest.approx(percent, abs=0.05)


@given(FRACTIONS, st.floats(0.001, 0.05), TEMPERATURES)
def test_more_sugar_is_denser(fraction: float, more: float, celsius: float) -> None:
    assert density_kg_per_l(fraction + more, celsius) > density_kg_per_l(fraction, celsius)


@given(FRACTIONS, st.floats(4.0, 79.0), st.floats(0.01, 1.0))
def test_warmer_syrup_is_lighter(fraction: float, celsius: float, more: float) -> None:
    assert density_kg_per_l(fraction, celsius + more) < density_kg_per_l(fraction, celsius)


@given(TEMPERATURES)
def test_no_sugar_is_water(celsius: float) -> None:
    assert density_kg_per_l(0.0, celsius) == pytest.approx(water_kg(1.0, celsius))


@given(st.floats(0.01, 1000.0), st.floats(0.5, 1000.0))
def test_a_mix_is_more_than_the_water_and_hardly_less_than_both(
    sugar: float, water_litres: float
) -> None:
    water = float(water_kg(water_litres))
    if sugar / (sugar + water) > 0.67:
        return  # beyond saturation the crystals are no longer a meaningful volume to add
    volume, both = float(volume_l(sugar, water)), water_litres + sugar / CRYSTAL_KG_PER_L
    assert water_litres < volume <= both * 1.0005
    assert volume > both * 0.995


@given(st.floats(0.1, 3.0), st.floats(0.1, 100.0))
def test_the_ratio_does_not_depend_on_the_batch(ratio: float, water: float) -> None:
    assert sugar_fraction(ratio * water, water) == pytest.approx(sugar_fraction_of_ratio(ratio))


def test_arrays_broadcast() -> None:
    assert density_kg_per_l(np.array([0.5, 0.6])[:, None], np.array([10.0, 20.0])).shape == (2, 2)


@pytest.mark.parametrize(
    ("fraction", "said"),
    [
        (62.0, r"If that is a percentage, write 0\.62"),
        (-0.1, r"lies between 0 and 0\.85"),
        (float("nan"), "cannot be nan"),
        ([0.5, 62.5], r"write 0\.625"),
    ],
)
def test_a_percentage_is_not_a_fraction(fraction: float | list[float], said: str) -> None:
    with pytest.raises(OutOfRangeError, match=said):
        density_kg_per_l(fraction)


def test_fahrenheit_is_not_celsius() -> None:
    with pytest.raises(OutOfRangeError, match=r"looks like Fahrenheit; that would be 37\.8 °C"):
        density_kg_per_l(0.6, 100.0)


def test_dry_sugar_is_no_syrup() -> None:
    with pytest.raises(OutOfRangeError, match="needs some water"):
        sugar_fraction(1.0, 0.0)

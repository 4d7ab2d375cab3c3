"""Water against IAPWS-95 as CoolProp has it."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.syrup.water import (
    water_density_kg_per_m3,
)
from combwright.terms.errors import OutOfRangeError


@pytest.mark.parametrize("celsius", [0.1, 4.0, 10.0, 20.0, 30.0, 45.0, 60.0, 80.0, 95.0])
def test_density_agrees_with_iapws(celsius: float) -> None:
    from CoolProp.CoolProp import PropsSI

    reference = PropsSI("D", "T", celsius + 273.15, "P", 101325.0, "Water")
    assert float(water_density_kg_per_m3(celsius)) == pytest.approx(reference, abs=0.02)


@given(st.floats(4.0, 99.0), st.floats(0.01, 1.0))
def test_warmer_water_is_lighter(celsius: float, more: float) -> None:
    assert water_density_kg_per_m3(celsius + more) < water_density_kg_per_m3(celsius)


def test_arrays_go_in_and_come_out() -> None:
    assert water_density_kg_per_m3(np.array([[10.0, 20.0]])).shape == (1, 2)


@pytest.mark.parametrize("celsius", [-1.0, 101.0, float("nan"), float("inf")])
def test_impossible_temperatures_are_refused(celsius: float) -> None:
    with pytest.raises(OutOfRangeError, match="temperature of water cannot be"):
        water_density_kg_per_m3(celsius)


def test_fahrenheit_is_recognised() -> None:
    with pytest.raises(OutOfRangeError, match=r"looks like Fahrenheit; that would be 98\.9"):
        water_density_kg_per_m3(210.0)

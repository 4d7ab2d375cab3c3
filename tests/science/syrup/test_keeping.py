"""Crystals, ice and yeasts: laws, and vapour pressures after Murphy and Koop for the ice."""

from math import exp, log, tanh

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.syrup.keeping import (
    freezing_c,
    keeps_for,
    saturation_temperature_c,
    solubility_fraction,
    water_activity,
)


def ice_over_water(celsius: float) -> float:
    """Murphy and Koop 2005, doi:10.1256/qj.04.94, equations 7 and 10; from memory."""
    t = celsius + 273.15
    ice = 9.550426 - 5723.265 / t + 3.53068 * log(t) - 0.00728332 * t
    water = (
        54.842763
        - 6763.22 / t
        - 4.210 * log(t)
        + 0.000367 * t
        + tanh(0.0415 * (t - 218.8)) * (53.878 - 1331.22 / t - 9.44523 * log(t) + 0.014025 * t)
    )
    return exp(ice - water)


def test_the_reference_for_ice_is_one_at_the_triple_point() -> None:
    assert ice_over_water(0.01) == pytest.approx(1.0, abs=1e-4)


@pytest.mark.parametrize("fraction", [0.1, 0.3, 0.5, 0.6, 2 / 3])
def test_syrup_freezes_where_its_vapour_pressure_is_that_of_ice(fraction: float) -> None:
    celsius = float(freezing_c(fraction))
    assert ice_over_water(celsius) == pytest.approx(float(water_activity(fraction)), abs=0.003)


@given(st.floats(0.0, 99.0), st.floats(0.01, 1.0))
def test_warmer_water_dissolves_more(celsius: float, more: float) -> None:
    assert solubility_fraction(celsius + more) > solubility_fraction(celsius)


@given(st.floats(0.0, 95.0))
def test_saturation_round_trip(celsius: float) -> None:
    back = saturation_temperature_c(solubility_fraction(celsius))
    assert float(back) == pytest.approx(celsius, abs=1e-6)


@given(st.floats(0.0, 0.84), st.floats(0.001, 0.01))
def test_more_sugar_leaves_less_water_to_yeasts(fraction: float, more: float) -> None:
    assert 0.0 < water_activity(fraction + more) < water_activity(fraction) <= 1.0


@given(st.floats(0.0, 0.69), st.floats(0.001, 0.01))
def test_more_sugar_freezes_later(fraction: float, more: float) -> None:
    assert freezing_c(fraction + more) < freezing_c(fraction)


def test_no_liquid_syrup_stops_sugar_loving_yeasts() -> None:
    # They grow down to a water activity of about 0.62 (Beuchat 1981).
    assert float(water_activity(solubility_fraction(40.0))) > 0.62


@given(st.floats(0.0, 0.8), st.floats(0.0, 0.05))
def test_stronger_syrup_never_keeps_shorter(fraction: float, more: float) -> None:
    order = ["days", "weeks", "months"]
    assert order.index(keeps_for(fraction)) <= order.index(keeps_for(fraction + more))

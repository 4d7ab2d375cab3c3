import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.syrup.sucrose import index_of_brix, viscosity_mpa_s
from combwright.terms.errors import OutOfRangeError


@given(st.floats(0.0, 94.0), st.floats(0.01, 1.0))
def test_more_sugar_bends_light_more(brix: float, more: float) -> None:
    assert index_of_brix(brix + more) > index_of_brix(brix)


@given(st.floats(0.0, 0.8), st.floats(0.001, 0.05), st.floats(0.0, 30.0))
def test_more_sugar_is_thicker(fraction: float, more: float, celsius: float) -> None:
    assert viscosity_mpa_s(fraction + more, celsius) > viscosity_mpa_s(fraction, celsius)


@given(st.floats(0.0, 0.8), st.floats(0.0, 79.0), st.floats(0.1, 1.0))
def test_warmer_syrup_is_thinner(fraction: float, celsius: float, more: float) -> None:
    assert viscosity_mpa_s(fraction, celsius + more) < viscosity_mpa_s(fraction, celsius)


def test_cold_two_to_one_is_many_times_as_thick_as_warm_sixty_percent() -> None:
    times = float(viscosity_mpa_s(0.667, 10.0) / viscosity_mpa_s(0.6, 30.0))
    assert times == pytest.approx(15.0, rel=0.05)  # worked out apart: 495 over 33.8


def test_water_is_as_thin_as_water() -> None:
    # 1.002 mPa·s at 20 °C (IAPWS 2008, from memory); the equation is made for syrup.
    assert float(viscosity_mpa_s(0.0, 20.0)) == pytest.approx(1.002, rel=0.05)


@pytest.mark.parametrize("brix", [-1.0, 101.0, float("nan")])
def test_impossible_readings_are_refused(brix: float) -> None:
    with pytest.raises(OutOfRangeError, match="grams per 100 g"):
        index_of_brix(brix)

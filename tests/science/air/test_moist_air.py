"""Moist air against psychrolib (ASHRAE) and CoolProp (IAPWS, humid air as a real gas)."""

import psychrolib
import pytest
from CoolProp.CoolProp import PropsSI
from CoolProp.HumidAirProp import HAPropsSI
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.air.moist_air import (
    condensing,
    dew_point_c,
    humidity_from_dew_point,
    saturation_pa,
    water_g_per_kg,
)
from combwright.terms.errors import OutOfRangeError

POINTS = [(0.0, 0.8), (5.0, 0.8), (10.0, 0.7), (15.0, 0.6), (20.0, 0.5), (34.0, 0.5), (35.0, 0.65)]
PRESSURE = 101325.0
temperatures = st.floats(-40, 60)
humidities = st.floats(0.01, 1)


@pytest.fixture(scope="module", autouse=True)
def si_units() -> None:
    psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize(("celsius", "humidity"), POINTS)
def test_dew_point_agrees_with_psychrolib(celsius: float, humidity: float) -> None:
    reference = psychrolib.GetTDewPointFromRelHum(celsius, humidity)
    assert float(dew_point_c(celsius, humidity)) == pytest.approx(reference, abs=2e-3)


@pytest.mark.parametrize(("celsius", "humidity"), POINTS)
def test_dew_point_agrees_with_coolprop(celsius: float, humidity: float) -> None:
    reference = HAPropsSI("D", "T", celsius + 273.15, "P", PRESSURE, "R", humidity) - 273.15
    assert float(dew_point_c(celsius, humidity)) == pytest.approx(reference, abs=0.01)


@pytest.mark.parametrize("celsius", [-30.0, -5.0, 0.0, 10.0, 40.0])
def test_saturation_agrees_with_psychrolib(celsius: float) -> None:
    assert float(saturation_pa(celsius)) == pytest.approx(psychrolib.GetSatVapPres(celsius))


@pytest.mark.parametrize("celsius", [5.0, 20.0, 35.0, 55.0])
def test_saturation_agrees_with_iapws(celsius: float) -> None:
    reference = PropsSI("P", "T", celsius + 273.15, "Q", 1, "Water")
    assert float(saturation_pa(celsius)) == pytest.approx(reference, rel=4e-4)


@pytest.mark.parametrize(("celsius", "humidity"), POINTS)
def test_vapour_agrees_with_psychrolib_and_within_half_a_percent_with_a_real_gas(
    celsius: float, humidity: float
) -> None:
    ours = float(water_g_per_kg(celsius, humidity))
    theirs = psychrolib.GetHumRatioFromRelHum(celsius, humidity, PRESSURE)
    assert ours == pytest.approx(1000 * theirs)
    real = HAPropsSI("W", "T", celsius + 273.15, "P", PRESSURE, "R", humidity)
    assert ours == pytest.approx(1000 * real, rel=6e-3)


@given(temperatures, humidities)
def test_dew_point_is_never_above_the_air(celsius: float, humidity: float) -> None:
    assert float(dew_point_c(celsius, humidity)) <= celsius


@given(temperatures, st.floats(0.01, 0.98), st.floats(0.001, 0.02))
def test_moister_air_has_a_higher_dew_point(celsius: float, humidity: float, more: float) -> None:
    assert dew_point_c(celsius, humidity + more) > dew_point_c(celsius, humidity)


@given(temperatures, humidities)
def test_dew_point_and_back(celsius: float, humidity: float) -> None:
    dew = dew_point_c(celsius, humidity)
    assert float(humidity_from_dew_point(celsius, dew)) == pytest.approx(humidity, rel=1e-9)


@given(temperatures, humidities, temperatures)
def test_a_surface_is_wet_below_the_dew_point_only(
    celsius: float, humidity: float, surface: float
) -> None:
    dew = float(dew_point_c(celsius, humidity))
    share = float(condensing(celsius, humidity, surface))
    assert 0 <= share < 1
    if abs(surface - dew) > 1e-6:
        assert (share > 0) == (surface < dew)


@pytest.mark.parametrize(
    ("celsius", "humidity", "said"),
    [(68.0, 0.5, "Fahrenheit"), (20.0, 50.0, "50 % as 0.5"), (20.0, float("nan"), "cannot be nan")],
)
def test_impossible_air_is_refused(celsius: float, humidity: float, said: str) -> None:
    with pytest.raises(OutOfRangeError, match=said):
        dew_point_c(celsius, humidity)


def test_pressure_in_hectopascal_is_recognised() -> None:
    with pytest.raises(OutOfRangeError, match="1013 hPa are 101300 Pa"):
        water_g_per_kg(20, 0.5, 1013)

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.queens.mating import flight_chance
from combwright.terms.errors import OutOfRangeError


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

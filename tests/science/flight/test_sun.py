"""The sun against the worked examples of FAO-56, and against the positions of pvlib."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pvlib.irradiance import get_extra_radiation, pd
from pvlib.solarposition import get_solarposition

from combwright.science.flight.sun import (
    daylight_h,
    extraterrestrial_mj,
    global_radiation_mj,
)


# the published examples: FAO Irrigation and Drainage Paper 56, examples 8, 9 and 10
def test_agrees_with_fao56_example_8() -> None:
    assert float(extraterrestrial_mj(246, -20)) == pytest.approx(32.2, abs=0.05)


def test_agrees_with_fao56_example_9() -> None:
    assert float(daylight_h(246, -20)) == pytest.approx(11.7, abs=0.05)


def test_agrees_with_fao56_example_10() -> None:
    assert float(extraterrestrial_mj(135, -22.9)) == pytest.approx(25.1, abs=0.05)
    assert float(daylight_h(135, -22.9)) == pytest.approx(10.9, abs=0.05)
    assert float(global_radiation_mj(135, -22.9, 220 / 31, 0.25, 0.5)) == pytest.approx(
        14.5, abs=0.05
    )


@given(st.floats(1, 366), st.floats(-66, 66), st.floats(0, 24), st.floats(0, 1))
def test_more_sun_means_more_radiation_up_to_what_comes(
    day: float, latitude: float, sun: float, less: float
) -> None:
    full = float(global_radiation_mj(day, latitude, sun))
    assert float(global_radiation_mj(day, latitude, sun * less)) <= full
    assert 0 <= full < 0.8 * float(extraterrestrial_mj(day, latitude)) + 1e-12


@pytest.mark.parametrize("latitude", [69.6, 78.2, 89.9])
def test_the_polar_day_and_night(latitude: float) -> None:
    assert float(daylight_h(172, latitude)) == pytest.approx(24.0)
    assert float(daylight_h(355, latitude)) == 0.0
    assert float(extraterrestrial_mj(355, latitude)) == pytest.approx(0.0)


@pytest.mark.parametrize("latitude", [-34.0, 0.0, 40.0, 53.4, 60.0])
def test_agrees_with_the_sun_followed_through_the_day(latitude: float) -> None:
    """Within 1 MJ/m² and 20 minutes, for FAO-56 has one wave for the declination (judgement)."""
    for start in pd.date_range("2025-01-01", "2025-12-31", freq="30D"):
        moments = pd.date_range(start, periods=288, freq="5min", tz="UTC")
        zenith = get_solarposition(moments, latitude, 0.0)["zenith"].to_numpy()
        height = np.cos(np.radians(zenith)).clip(0)
        day = start.day_of_year
        came = get_extra_radiation(day) * height.sum() * 300 / 1e6
        assert float(extraterrestrial_mj(day, latitude)) == pytest.approx(came, abs=1.0)
        assert float(daylight_h(day, latitude)) == pytest.approx((height > 0).sum() / 12, abs=1 / 3)

"""The sun against the NREL solar position algorithm (pvlib) and FAO-56's worked examples."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from pvlib.solarposition import pd, sun_rise_set_transit_spa

from combwright.science.flight.sun import (
    day_length_h,
    daylight_h,
    extraterrestrial_mj,
    global_radiation_mj,
)
from combwright.terms.errors import OutOfRangeError

PLACES = [(53.35, -6.26), (51.85, -8.49), (54.60, -5.93), (51.51, -0.13), (-36.8, 174.8)]
DAYS = [date(2025, month, 15) for month in range(1, 13)] + [date(2024, 2, 29), date(2025, 6, 21)]


@pytest.mark.parametrize(("latitude", "longitude"), PLACES)
@pytest.mark.parametrize("on", DAYS)
def test_day_length_agrees_with_spa(on: date, latitude: float, longitude: float) -> None:
    noon = pd.DatetimeIndex([pd.Timestamp(on) - pd.Timedelta(hours=longitude / 15 - 12)], tz="UTC")
    found = sun_rise_set_transit_spa(noon, latitude, longitude)
    reference = (found["sunset"] - found["sunrise"]).iloc[0].total_seconds() / 3600 % 24
    assert day_length_h(on, latitude, longitude) == pytest.approx(reference, abs=0.025)


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


@pytest.mark.parametrize("latitude", [69.6, 78.2, 90.0])
def test_the_polar_day_and_night(latitude: float) -> None:
    assert day_length_h(date(2025, 6, 21), latitude) == 24.0
    assert day_length_h(date(2025, 12, 21), latitude) == 0.0
    assert float(daylight_h(172, min(latitude, 89.9))) == pytest.approx(24.0)
    assert float(daylight_h(355, min(latitude, 89.9))) == 0.0
    assert float(extraterrestrial_mj(355, min(latitude, 89.9))) == pytest.approx(0.0)


def both_days_h(latitude_deg: float, declination_deg: float, below_deg: float) -> float:
    """A day and that of the same latitude on the other half, counted from `below_deg` to it.

    Day length is 24/π arccos(-a - b) with a = tan φ tan δ and b = sin h / (cos φ cos δ); on the
    other half a changes its sign. The sum grows with the declination and with h.
    """
    phi, delta, below = np.radians([latitude_deg, declination_deg, below_deg])
    a, b = np.tan(phi) * np.tan(delta), np.sin(below) / (np.cos(phi) * np.cos(delta))
    return float(24 / np.pi * (np.arccos(-a - b) + np.arccos(a - b)))


@given(st.dates(date(1990, 1, 1), date(2060, 12, 30)), st.floats(-65, 65))
@example(date(2025, 6, 21), 65.0)
@example(date(2025, 3, 20), 65.0)
@example(date(2025, 12, 21), 0.0)
def test_one_half_of_the_world_has_what_the_other_lacks(on: date, latitude: float) -> None:
    """The two days make 24 hours and what refraction and the disc add.

    The disc shows while its centre is no more than 0.80 ± 0.05° below the horizon (16' of disc and
    29' to 34' of refraction); the sun goes from the equator to 23.45° and no further; noon comes
    up to 30 s later from day to day. Nearer to the poles than 65° one of the two may be a night.
    """
    noon_drifts_h = 30 / 3600
    both = day_length_h(on, latitude) + day_length_h(on, -latitude)
    assert both > both_days_h(latitude, 0, 0.75) - noon_drifts_h
    assert both < both_days_h(latitude, 23.45, 0.85) + noon_drifts_h


@given(st.floats(1, 366), st.floats(-66, 66), st.floats(0, 24), st.floats(0, 1))
def test_more_sun_means_more_radiation_up_to_what_comes(
    day: float, latitude: float, sun: float, less: float
) -> None:
    full = float(global_radiation_mj(day, latitude, sun))
    assert float(global_radiation_mj(day, latitude, sun * less)) <= full
    assert 0 <= full < 0.8 * float(extraterrestrial_mj(day, latitude)) + 1e-12


def test_a_year_of_days_changes_smoothly() -> None:
    days = [day_length_h(date(2025, 1, 1) + timedelta(days=at), 53.35) for at in range(365)]
    assert np.abs(np.diff(days)).max() < 5 / 60


@pytest.mark.parametrize("latitude", [91.0, float("nan")])
def test_impossible_places_are_refused(latitude: float) -> None:
    with pytest.raises(OutOfRangeError, match="latitude"):
        day_length_h(date(2025, 6, 21), latitude)
    with pytest.raises(OutOfRangeError, match="latitude"):
        daylight_h(172, latitude)

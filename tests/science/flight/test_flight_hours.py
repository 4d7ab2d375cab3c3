"""Hours of flight: the published thresholds (in the evidence), and what must hold on any day."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.flight.daytime import daylight_moments, watts
from combwright.science.flight.flight_hours import (
    dry_share,
    flight_hours,
    suitability,
)
from combwright.science.flight.sun import daylight_h, global_radiation_mj
from combwright.terms.errors import OutOfRangeError

days = st.integers(1, 366)
latitudes = st.floats(-60, 65)
Day = dict[str, float]


def a_day(warmest: float = 50.0) -> st.SearchStrategy[Day]:
    """A day of weather whose highest temperature is not above ``warmest``."""
    made = {
        "day_of_year": days,
        "latitude_deg": latitudes,
        "t_max_c": st.floats(-20, warmest),
        "span": st.floats(0, 25),
        "rain_mm": st.floats(0, 80),
        "sun_h": st.floats(0, 14),
        "wind_m_s": st.floats(0, 25),
    }
    return st.fixed_dictionaries(made).map(
        lambda day: (
            {key: value for key, value in day.items() if key != "span"}
            | {"t_min_c": day["t_max_c"] - day["span"]}
        )
    )


def hours(day: Day, **more: float) -> float:
    """The flight hours of a day, with something added to its weather."""
    return float(flight_hours(**day | {key: day[key] + much for key, much in more.items()}))


@given(a_day())
def test_bees_fly_by_day_only(day: Day) -> None:
    assert 0 <= hours(day) <= float(daylight_h(day["day_of_year"], day["latitude_deg"])) + 1e-9


@given(a_day(warmest=11.9))
def test_no_flight_on_a_day_below_twelve_degrees(day: Day) -> None:
    assert hours(day) == 0


@given(a_day(), st.floats(0.1, 10))
def test_warmer_days_have_no_fewer_hours(day: Day, more: float) -> None:
    assert hours(day, t_max_c=more, t_min_c=more) >= hours(day) - 1e-9


@given(a_day(), st.floats(0.1, 10))
def test_rain_and_wind_take_hours_and_sun_gives_them(day: Day, more: float) -> None:
    found = hours(day)
    assert hours(day, rain_mm=more) <= found
    assert hours(day, wind_m_s=more) <= found
    assert hours(day, sun_h=more) >= found - 1e-9


@given(days, latitudes)
def test_the_stretches_of_a_day_make_up_its_daylight_and_share_its_light(
    day: int, latitude: float
) -> None:
    moments = list(daylight_moments(day, latitude, points=64))
    length = float(sum(moment.length_h for moment in moments))
    assert length == pytest.approx(float(daylight_h(day, latitude)))
    assert all(0 <= float(moment.warmth) <= 1 for moment in moments)
    shared = float(sum(moment.length_h * moment.light_per_h for moment in moments))
    assert shared == pytest.approx(1.0, abs=2e-3)


@given(st.floats(-10, 40), st.floats(0, 1000), st.floats(0, 5), st.floats(0, 200))
def test_more_warmth_and_more_light_never_hinder(
    warm: float, light: float, warmer: float, lighter: float
) -> None:
    here = float(suitability(np.array(warm), np.array(light)))
    assert 0 <= here <= 1
    assert here <= float(suitability(np.array(warm + warmer), np.array(light + lighter))) + 1e-12


def test_sixteen_stretches_are_enough() -> None:
    """Against the sum over 480 stretches of three minutes, for sampled days of all seasons."""
    rng = np.random.default_rng(1)
    day = np.arange(1.0, 366.0)
    low = 3 + 8 * np.sin(2 * np.pi * (day - 110) / 365) + 3 * rng.standard_normal((20, 365))
    high, sun = low + 3 + 7 * rng.random((20, 365)), 8 * rng.random((20, 365))
    quick = flight_hours(day, 53.4, high, low, 0, sun, 0)
    fine = np.zeros_like(quick)
    radiation = global_radiation_mj(day, 53.4, sun)
    for moment in daylight_moments(day, 53.4, points=480):
        light = watts(radiation, moment.light_per_h)
        fine += moment.length_h * suitability(low + (high - low) * moment.warmth, light)
    by_month = [slice(start, start + 30) for start in range(60, 300, 30)]
    for month in by_month:
        assert quick[:, month].mean() == pytest.approx(fine[:, month].mean(), rel=0.01)


@pytest.mark.parametrize(("rain", "share"), [(0.0, 1.0), (1000.0, 0.0)])
def test_ends_of_the_rain(rain: float, share: float) -> None:
    assert float(dry_share(rain)) == pytest.approx(share)


@pytest.mark.parametrize(
    ("weather", "said"),
    [
        ((68.0, 50.0, 0.0, 5.0, 3.0), "Fahrenheit"),
        ((18.0, 9.0, -1.0, 5.0, 3.0), "rain"),
        ((18.0, 9.0, 0.0, 25.0, 3.0), "sunshine"),
        ((18.0, 9.0, 0.0, 5.0, float("nan")), "wind"),
    ],
)
def test_impossible_weather_is_refused(weather: tuple[float, ...], said: str) -> None:
    with pytest.raises(OutOfRangeError, match=said):
        flight_hours(150, 53.4, *weather)

"""Sampled weather: reproducible, possible, and like the stations (values in the evidence)."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from combwright.terms.errors import NotFoundError, OutOfRangeError
from combwright.terms.weather import DailyWeather
from combwright.weather.climates import climate, climates
from combwright.weather.generator import continue_from, generate
from combwright.weather.month_spread import correlation, rain_variance
from combwright.weather.months import LENGTHS, calendar_days, smooth
from combwright.weather.sunshine import censored, uncensored

DUBLIN = climate("Dublin Airport")
QUANTITIES = ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")
starts = st.dates(date(2000, 1, 1), date(2040, 12, 31))


def same(one: DailyWeather, other: DailyWeather) -> bool:
    return all((getattr(one, key) == getattr(other, key)).all() for key in QUANTITIES)


def part(weather: DailyWeather, first: date, days: int, scenarios: int) -> DailyWeather:
    lead = (first - weather.first).days
    cut = (slice(0, scenarios), slice(lead, lead + days))
    return DailyWeather(first, *(getattr(weather, key)[cut] for key in QUANTITIES))


@settings(max_examples=20)
@given(starts, st.integers(0, 60), st.integers(1, 60), st.integers(1, 5), st.integers(0, 2**32))
def test_a_date_has_its_weather_whatever_is_asked_for(
    first: date, lead: int, days: int, scenarios: int, seed: int
) -> None:
    long = generate(DUBLIN, first, lead + days + 20, 6, seed)
    short = generate(DUBLIN, first + timedelta(days=lead), days, scenarios, seed)
    assert same(short, part(long, short.first, days, scenarios))


@settings(max_examples=20)
@given(starts, st.integers(1, 90), st.sampled_from(climates()), st.integers(0, 2**32))
def test_weather_is_possible(first: date, days: int, name: str, seed: int) -> None:
    place = climate(name)
    weather = generate(place, first, days, 3, seed)
    for key in QUANTITIES:
        values = getattr(weather, key)
        assert values.shape == (3, days)
        assert np.isfinite(values).all()
    assert (weather.t_max_c > weather.t_min_c).all()
    assert ((weather.rain_mm == 0) | (weather.rain_mm >= 0.2)).all()
    assert (weather.sun_h >= 0).all()
    assert (weather.sun_h <= 17.2).all()
    assert (weather.wind_m_s >= 0).all()


def test_other_seeds_and_scenarios_have_other_weather() -> None:
    one, other = (generate(DUBLIN, date(2026, 5, 1), 30, 2, seed) for seed in (1, 2))
    assert not same(one, other)
    assert (one.t_max_c[0] != one.t_max_c[1]).any()


def test_neighbours_share_their_luck() -> None:
    """A warm spell in Dublin is one in Cork; how much so is judgement, that it is so is not."""
    here, there = (
        generate(climate(name), date(2026, 5, 1), 92, 50, 1) for name in ("Dublin", "Cork")
    )
    assert np.corrcoef(here.t_max_c.ravel(), there.t_max_c.ravel())[0, 1] > 0.8


@settings(max_examples=20)
@given(starts, st.integers(1, 20), st.integers(0, 30), st.integers(1, 4), st.integers(0, 999))
def test_known_days_stay_as_they_are(
    first: date, known_days: int, days: int, scenarios: int, seed: int
) -> None:
    known = generate(DUBLIN, first, known_days, 1, seed + 1)
    longer = continue_from(known, DUBLIN, days, scenarios, seed)
    assert longer.days == known_days + days
    for key in QUANTITIES:
        assert (getattr(longer, key)[:, :known_days] == getattr(known, key)).all()
        assert np.isfinite(getattr(longer, key)).all()


def test_what_follows_leans_on_the_last_known_day_and_then_forgets_it() -> None:
    first = date(2026, 5, 1)
    usual = float(smooth(DUBLIN.mean(DUBLIN.t_max_c))[calendar_days(first, 1)[0]])

    def after(anomaly: float) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
        values = (usual + anomaly, usual + anomaly - 9, 0.0, 7.0, 4.0)
        known = DailyWeather(first, *(np.array([[value]]) for value in values))
        onward = continue_from(known, DUBLIN, 40, 2000, 5)
        return np.asarray(onward.t_max_c.mean(axis=0))

    difference = after(6) - after(-6)
    # 12 °C apart: the matrix of Dublin remembers a bit more than half of it after a day
    assert 5 < difference[1] < 9
    assert abs(difference[-1]) < 0.1


def test_continuing_what_was_sampled_gives_what_was_sampled_on_wet_and_dry_days() -> None:
    """The chain goes on from the state of the last day, with the same luck."""
    whole = generate(DUBLIN, date(2026, 5, 1), 60, 1, 9)
    known = part(whole, whole.first, 20, 1)
    onward = continue_from(known, DUBLIN, 40, 1, 9)
    assert ((onward.rain_mm > 0) == (whole.rain_mm > 0)).all()


@pytest.mark.parametrize("name", climates())
def test_parameters_make_sense(name: str) -> None:
    place = climate(name)
    assert (place.wet_after_dry < place.wet_after_wet).all()
    assert (place.wet_after_wet < 1).all()
    assert 49 < place.latitude_deg < 60
    assert place.attribution
    assert np.abs(np.linalg.eigvals(place.memory)).max() < 1
    # B Bᵀ = M0 - A M0 Aᵀ with a correlation matrix M0: Richardson 1981
    assert np.diag(correlation(place)) == pytest.approx(np.ones(3), abs=0.02)


def test_dublin_lies_near_the_published_matrix() -> None:
    """Richardson 1981, as read in published code: the row of the highest temperature."""
    assert DUBLIN.memory[0] == pytest.approx([0.567, 0.086, -0.002], abs=0.05)
    assert DUBLIN.shock[0, 0] == pytest.approx(0.781, abs=0.05)


@pytest.mark.parametrize(
    ("name", "rain", "sun"),
    [("Armagh", 825.1, 1281), ("Oxford", 681.4, 1615), ("Sheffield", 834.0, 1469)],
)
def test_a_derived_climate_keeps_the_means_of_its_station(
    name: str, rain: float, sun: float
) -> None:
    """Met Office historic station series 1991-2020, yearly sums."""
    weather = generate(climate(name), date(2023, 1, 1), 365, 300, 4)
    assert float(weather.rain_mm.sum(axis=1).mean()) == pytest.approx(rain, rel=0.03)
    assert float(weather.sun_h.sum(axis=1).mean()) == pytest.approx(sun, rel=0.03)
    assert float(weather.t_max_c[:, 181:212].mean()) == pytest.approx(
        float(climate(name).mean(climate(name).t_max_c)[6]), abs=0.2
    )


def test_days_alone_make_years_too_alike() -> None:
    """400 years of the chain alone: 82.6 mm in the year and 18.5 mm in February (computed)."""
    alone = rain_variance(DUBLIN)
    assert float(np.sqrt(alone.sum())) == pytest.approx(82.6, rel=0.06)
    assert float(np.sqrt(alone[1])) == pytest.approx(18.5, rel=0.06)


@given(st.lists(st.floats(-20, 30), min_size=12, max_size=12))
def test_smoothing_keeps_every_month(by_month: list[float]) -> None:
    by_day = smooth(np.array(by_month))
    lengths = np.round(LENGTHS + 0.26).astype(int)  # of a leap year
    for month, stop in enumerate(np.cumsum(lengths)):
        mean = by_day[stop - lengths[month] : stop].mean()
        assert mean == pytest.approx(by_month[month], abs=1e-9)


@given(st.floats(0.1, 0.9), st.floats(0.2, 0.75), st.floats(4, 17))
def test_sunshine_is_cut_off_without_moving_its_mean(
    share: float, spread: float, most: float
) -> None:
    mean = np.array(share * most)
    sd = np.array(spread * np.sqrt(share * (1 - share)) * most)
    found = censored(*uncensored(mean, sd, np.array(most)), np.array(most))
    assert float(found[0]) == pytest.approx(float(mean), rel=1e-3)
    assert float(found[1]) == pytest.approx(float(sd), rel=1e-3)


@pytest.mark.parametrize(
    ("name", "said"), [("", "There are: Dublin"), ("port", "could be several")]
)
def test_an_unknown_climate_is_answered_with_the_known_ones(name: str, said: str) -> None:
    with pytest.raises(NotFoundError, match=said):
        climate(name)


@pytest.mark.parametrize(("days", "scenarios"), [(-1, 1), (10, 0)])
def test_impossible_wishes_are_refused(days: int, scenarios: int) -> None:
    with pytest.raises(OutOfRangeError):
        generate(DUBLIN, date(2026, 1, 1), days, scenarios, 1)


def test_known_weather_in_another_number_of_versions_is_refused() -> None:
    known = generate(DUBLIN, date(2026, 1, 1), 5, 2, 1)
    with pytest.raises(OutOfRangeError, match="2 versions cannot be continued in 3"):
        continue_from(known, DUBLIN, 5, 3, 1)

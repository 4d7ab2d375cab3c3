from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from combwright.science.mites.arrivals import REINVASION, arriving_per_day
from combwright.science.mites.counts import Estimate
from combwright.science.mites.growth import (
    GROWTH_WITH_BROOD,
    days_back,
    days_to,
    doubling_days,
    grown,
    rate_from_fold,
    winter_loss,
    year_fold,
)
from combwright.science.mites.season_ahead import expected, growth_in, usual_bees

# Arithmetic table: growth a day, doubling, twelvefold, hundredfold in days.
TIMES = [(0.021, 33.0, 118, 219), (0.0215, 32.2, 116, 214), (0.025, 27.7, 99, 184)]


@pytest.mark.parametrize(("rate", "double", "twelve", "hundred"), TIMES)
def test_times(rate: float, double: float, twelve: float, hundred: float) -> None:
    assert doubling_days(rate) == pytest.approx(double, abs=0.1)
    assert days_to(1, 12, rate) == pytest.approx(twelve, abs=0.7)
    assert days_to(1, 100, rate) == pytest.approx(hundred, abs=0.7)


# Days back at growth 0.025 and 0.021: arithmetic. The UK leaflet of 2005: 80 % in 2.5 months.
@pytest.mark.parametrize(
    ("kill", "soon", "late"),
    [(0.5, 28, 33), (0.8, 64, 77), (0.9, 92, 110), (0.95, 120, 143), (0.99, 184, 219)],
)
def test_days_back(kill: float, soon: float, late: float) -> None:
    assert days_back(kill, 0.025) == pytest.approx(soon, abs=0.7)
    assert days_back(kill, 0.021) == pytest.approx(late, abs=0.7)


def test_eighty_percent_is_back_in_two_and_a_half_months() -> None:
    assert 60 <= days_back(0.8) <= 90


@given(st.floats(0, 0.999), st.floats(0.005, 0.1))
def test_days_back_undoes_the_kill(kill: float, rate: float) -> None:
    assert grown(1 - kill, rate, min(400, days_back(kill, rate))) <= 1 + 1e-9


@given(st.floats(0.01, 1e5), st.floats(0.001, 0.1), st.floats(1, 300))
def test_growth_and_its_rate_are_inverse(mites: float, rate: float, days: float) -> None:
    fold = float(grown(mites, rate, days)) / mites
    if fold < 1e6:
        assert rate_from_fold(fold, days) == pytest.approx(rate)


@given(st.floats(0, 1000), st.floats(-0.02, 0.05), st.floats(1, 200), st.floats(0, 80))
def test_growth_with_arrivals_solves_its_equation(
    mites: float, rate: float, days: float, coming: float
) -> None:
    run = solve_ivp(lambda _, m: rate * m + coming, (0, days), [mites], rtol=1e-9, atol=1e-9)
    assert grown(mites, rate, days, coming) == pytest.approx(run.y[0, -1], rel=1e-6, abs=1e-6)


# Korpela et al. 1992: 8.2- to 24.6-fold a year, 39.8 % lost in a winter of 150 to 210 days.
def test_a_year_in_finland() -> None:
    assert 8.2 <= year_fold(140, 225) <= 24.6
    assert winter_loss(210) == pytest.approx(0.398, abs=0.1)


def test_fall_limits_of_the_uk_rise_as_mites_grow() -> None:
    """From 6 a day in May to 33 in August: within the growth seen in brood season."""
    assert GROWTH_WITH_BROOD.low <= rate_from_fold(33 / 6, 92) <= GROWTH_WITH_BROOD.high


# Frey & Rosenkranz 2014: 72-248 and 266-1171 mites in 3.5 months; Greatti et al. 1992: to 75.6.
def test_reinvasion() -> None:
    assert arriving_per_day(72, 105) == pytest.approx(REINVASION["low"].low, abs=0.05)
    assert arriving_per_day(248, 105) == pytest.approx(REINVASION["low"].high, abs=0.05)
    assert arriving_per_day(266, 105) == pytest.approx(REINVASION["moderate"].low, abs=0.05)
    assert arriving_per_day(1171, 105) == pytest.approx(REINVASION["moderate"].high, abs=0.05)
    assert REINVASION["heavy"].high == 75.6


@given(st.integers(0, 365), st.integers(0, 120))
def test_expected_mites_keep_their_order(start: int, days: int) -> None:
    first = date.fromordinal(date(2026, 1, 1).toordinal() + start)
    later = expected(Estimate(50, 100, 200), first, days)
    assert 0 < later.low <= later.mid <= later.high


def test_a_month_of_summer_is_plain_growth() -> None:
    ahead = expected(Estimate(50, 100, 200), date(2026, 6, 1), 30).mid
    assert ahead == pytest.approx(float(grown(100, GROWTH_WITH_BROOD.value, 30)))


def test_mites_decline_in_winter_and_in_a_broodless_colony() -> None:
    now = Estimate(50, 100, 200)
    assert expected(now, date(2026, 12, 1), 30).mid < 100
    assert expected(now, date(2026, 6, 1), 21, "no brood").mid < 100
    assert growth_in(12).high < 0 < growth_in(6).low


def test_usual_bees_follow_the_year() -> None:
    bees = np.array([usual_bees(month).value for month in range(1, 13)])
    assert bees.argmax() == 6  # July
    assert bees.argmin() == 2  # March

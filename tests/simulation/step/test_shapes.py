"""Shapes that the processes share."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.simulation.step.shapes import between, in_season, lucky, pass_on, spread

Any = st.floats(-1e4, 1e4)
Ends = st.tuples(st.floats(0, 100), st.floats(101, 200), st.floats(201, 300), st.floats(301, 366))


@given(Any, Any, st.floats(0.1, 1e4))
def test_a_ramp_is_a_share_that_never_falls(value: float, low: float, width: float) -> None:
    high = low + width
    assert spread(low, low, high) == 0.0
    assert spread(high, low, high) == 1.0
    assert 0.0 <= spread(value, low, high) <= spread(value + 1.0, low, high) <= 1.0


@given(Any, Any)
def test_a_mixture_begins_and_ends_where_it_should(low: float, high: float) -> None:
    assert between(low, high, 0.0) == low
    assert between(low, high, 1.0) == pytest.approx(high, abs=1e-9)
    assert between(low, high, 0.5) == pytest.approx((low + high) / 2, abs=1e-9)


@given(st.floats(1, 366), Ends)
def test_a_season_is_on_between_its_days_only(
    day: float, ends: tuple[float, float, float, float]
) -> None:
    begins, full, fades, stops = ends
    on = in_season(day, begins, full, fades, stops)
    assert 0.0 <= on <= 1.0
    assert (on == 0.0) == (day <= begins or day >= stops)
    assert (on == 1.0) == (full <= day <= fades)


@pytest.mark.parametrize("sd", [0.1, 0.5, 1.0])
def test_luck_favours_nobody(sd: float) -> None:
    points, weights = np.polynomial.hermite_e.hermegauss(60)
    factors = [lucky(sd, point) for point in points]
    assert np.average(factors, weights=weights) == pytest.approx(1.0)


@given(st.lists(st.floats(0, 1e4), min_size=1, max_size=6), st.floats(0, 1e4), st.floats(0, 1))
def test_a_chain_loses_and_makes_nothing(held: list[float], entering: float, rate: float) -> None:
    spells = np.array(held)
    leaving = pass_on(spells, entering, rate)
    assert spells.sum() + leaving == pytest.approx(sum(held) + entering)
    assert (spells >= -1e-9).all()


def test_a_chain_passes_on_in_the_mean_what_enters_after_its_length() -> None:
    spells, days, rate = np.zeros(5), 200, 5 / 14.5
    left = np.array([pass_on(spells, float(day == 0), rate) for day in range(days)])
    assert left.sum() == pytest.approx(1.0)
    assert (left * np.arange(days)).sum() == pytest.approx(14.5)

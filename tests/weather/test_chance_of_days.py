"""The luck of the weather: whole months, so that a date has its luck whatever is asked for."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.weather.chance_of_days import chance
from combwright.weather.climates import climate
from combwright.weather.month_spread import correlation

DUBLIN = climate("Dublin Airport")
dates = st.dates(date(2020, 1, 1), date(2030, 12, 31))


@given(dates, st.integers(0, 70), st.integers(0, 70), st.integers(0, 2**32))
def test_a_date_has_its_luck_whatever_is_asked_for(
    first: date, lead: int, days: int, seed: int
) -> None:
    whole = chance(first, lead + days, 3, seed, DUBLIN)
    part = chance(first + timedelta(days=lead), days, 2, seed, DUBLIN)
    for one, other in zip(whole, part, strict=True):
        assert (one[..., lead:, :2] == other).all()


def test_days_of_a_month_share_its_luck_and_no_other() -> None:
    drawn = chance(date(2026, 1, 1), 59, 4, 7, DUBLIN)
    for shared in (drawn.month, drawn.rain_month[None]):
        january, february = shared[:, :31], shared[:, 31:]
        assert (january == january[:, :1]).all()
        assert (february == february[:, :1]).all()
        assert (january[:, 0] != february[:, 0]).all()


def test_it_has_the_shape_that_the_place_needs() -> None:
    drawn = chance(date(2026, 5, 1), 31, 3000, 1, DUBLIN)
    assert ((drawn.occurrence >= 0) & (drawn.occurrence < 1)).all()
    assert drawn.amount.mean() == pytest.approx(DUBLIN.amount_shape[4], rel=0.03)
    assert np.cov(drawn.month[:, 0]) == pytest.approx(correlation(DUBLIN), abs=0.08)

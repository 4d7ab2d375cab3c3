import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.colony.laying import eggs_in_year, eggs_per_day, peak_day, resting

# Schmickl & Crailsheim 2007, Ecol. Modelling 204:219-245: the published curve, computed apart
# from this code. Day of the year, eggs a day.
SEASON = [
    (32, 34),
    (60, 199),
    (74, 424),
    (91, 845),
    (105, 1184),
    (121, 1428),
    (135, 1527),
    (149, 1571),
    (166, 1513),
    (182, 1370),
    (196, 1121),
    (213, 687),
    (227, 366),
    (244, 139),
    (274, 20),
]


@pytest.mark.parametrize(("day", "eggs"), SEASON)
def test_the_published_season(day: int, eggs: int) -> None:
    assert eggs_per_day(day) == pytest.approx(eggs, abs=0.5)


def test_the_peak_is_on_29_may() -> None:
    assert peak_day() == 149


def test_the_year_total() -> None:
    assert eggs_in_year() == pytest.approx(191_900, rel=1e-3)


@given(st.floats(0, 366))
def test_the_season_takes_a_share(day: float) -> None:
    assert 0 <= resting(day) <= 1


def test_laying_rises_to_the_peak_and_falls_after_it() -> None:
    eggs = eggs_per_day(np.arange(1, 366))
    assert np.all(np.diff(eggs[: peak_day()]) > 0)
    assert np.all(np.diff(eggs[peak_day() :]) < 0)


@given(st.floats(0, 4000))
def test_the_year_scales_with_the_peak(peak: float) -> None:
    assert eggs_in_year(peak) == pytest.approx(eggs_in_year(1.0) * peak)

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.colony.laying import season_share

# Schmickl & Crailsheim 2007, Ecol. Modelling 204:219-245: the published curve, computed apart
# from this code. Day of the year, eggs a day of 1600 at most.
MOST = 1600.0
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
YEAR = range(1, 366)


@pytest.mark.parametrize(("day", "eggs"), SEASON)
def test_the_published_season(day: int, eggs: int) -> None:
    assert MOST * season_share(day) == pytest.approx(eggs, abs=0.5)


def test_the_year_total() -> None:
    assert MOST * sum(map(season_share, YEAR)) == pytest.approx(191_900, rel=1e-3)


@given(
    st.floats(0, 366),
    st.tuples(st.floats(1, 1000), st.floats(10, 60), st.floats(1, 100)),
    st.tuples(st.floats(100, 250), st.floats(10, 60)),
)
def test_it_is_a_share(
    day: float, spring: tuple[float, float, float], autumn: tuple[float, float]
) -> None:
    rise, rise_days, fall = spring
    assert 0 <= season_share(day, rise, rise_days, fall, *autumn) <= 1


def test_laying_rises_to_29_may_and_falls_after_it() -> None:
    shares = [season_share(day) for day in YEAR]
    assert shares[:149] == sorted(shares[:149])
    assert shares[148:] == sorted(shares[148:], reverse=True)


@given(st.floats(1, 300), st.floats(0, 60))
def test_a_later_autumn_never_lowers_a_day(day: float, later: float) -> None:
    assert season_share(day, fall_day=155.0 + later) >= season_share(day)

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.colony.brood import STAGE_DAYS, Caste, alive_next_day, stage_days

Share = st.floats(0, 1)


# Stage days of textbooks: 21 and 24 days.
@pytest.mark.parametrize(("caste", "days"), [("worker", 21), ("drone", 24)])
def test_egg_to_adult(caste: Caste, days: float) -> None:
    assert stage_days(caste).emerges_on == pytest.approx(days, abs=0.5)


@pytest.mark.parametrize("caste", STAGE_DAYS)
def test_stages_follow_each_other(caste: Caste) -> None:
    days = stage_days(caste)
    assert 0 < days.egg.value < days.sealed_on < days.emerges_on


def test_survival_is_that_of_fukuda_and_sakagami() -> None:
    """Fukuda & Sakagami 1968, Res. Popul. Ecol. 10:31-39: of 100 eggs in the middle of the nest.

    The daily deaths are those of Torres et al. 2015, from the same family of data.
    """
    larvae = 100 * alive_next_day(0.03) ** 3
    sealed = larvae * alive_next_day(0.01) ** 5
    adults = sealed * alive_next_day(0.001) ** 12
    assert (larvae, sealed, adults) == pytest.approx((94.2, 86.4, 85.1), abs=3)


@given(Share, st.floats(0, 50), st.floats(0, 50))
def test_a_worse_colony_loses_more_and_never_more_than_all(
    deaths: float, one: float, other: float
) -> None:
    better, worse = sorted((one, other))
    assert 0 <= alive_next_day(deaths, worse) <= alive_next_day(deaths, better) <= 1

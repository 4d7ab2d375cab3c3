from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from combwright.science.mites.intervals import Estimate
from combwright.science.mites.season_ahead import expected, growth_in


@given(st.integers(0, 365), st.integers(0, 120))
def test_expected_mites_keep_their_order(start: int, days: int) -> None:
    first = date.fromordinal(date(2026, 1, 1).toordinal() + start)
    later = expected(Estimate(50, 100, 200), first, days)
    assert 0 < later.low <= later.mid <= later.high


def test_mites_decline_in_winter_and_in_a_broodless_colony() -> None:
    now = Estimate(50, 100, 200)
    assert expected(now, date(2026, 12, 1), 30).mid < 100
    assert expected(now, date(2026, 6, 1), 21, "no brood").mid < 100
    assert growth_in(12).high < 0 < growth_in(6).low

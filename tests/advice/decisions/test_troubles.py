"""Troubles that may be found: each in its season, each with something to do."""

from datetime import date, timedelta

import pytest

from combwright.advice.bee_acts import Uniting
from combwright.advice.decisions.troubles import troubles
from combwright.advice.kit_acts import Feeding


@pytest.mark.parametrize("week", range(0, 52, 4))
def test_each_is_told_once_with_what_to_do_and_why(week: int) -> None:
    found = list(troubles(date(2027, 1, 1) + timedelta(weeks=week)))
    assert len({each.code for each in found}) == len(found)
    assert all(each.actions and each.because for each in found)


def test_what_only_summer_or_winter_brings_is_told_then() -> None:
    winter, may, august = (
        {each.code: each for each in troubles(date(2027, month, 15))} for month in (1, 5, 8)
    )
    assert set(winter) == {"cold day"}
    assert "cold day" not in august
    assert "robbers" in august
    assert isinstance(may["drone brood only"].actions[0], Uniting)
    starving = may["empty combs"].portion
    assert isinstance(starving, Feeding)
    assert starving.grams > 0
    robbed = [each for each in august["robbers"].actions if isinstance(each, Feeding)]
    assert [each.grams for each in robbed] == [0]  # feed draws robbers

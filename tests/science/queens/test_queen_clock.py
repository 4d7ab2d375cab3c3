"""The clock of a queen: what must hold from any start; the published days are in the evidence."""

from typing import get_args

import pytest

from combwright.science.queens.queen_clock import AGE, CLOCK, Start, queen_clock


@pytest.mark.parametrize("start", get_args(Start))
def test_what_follows_comes_in_order_and_what_is_past_is_left_out(start: Start) -> None:
    clock = queen_clock(start)
    until_sale = [days for milestone, days in clock.items() if milestone != "too late"]
    for ends in ("low", "usual", "high"):
        at = [getattr(days, ends) for days in until_sale]
        assert at == sorted(at)
    assert all(0 <= days.low <= days.usual <= days.high for days in clock.values())
    assert {stage for stage, day in CLOCK.items() if day.high <= AGE[start].low}.isdisjoint(clock)


# Queen-cell clock of guides: sealed on day 8 or 9, emerges on day 15 to 17, egg for 3 days.
def test_a_charged_cell_found_today() -> None:
    clock = queen_clock("charged cell")
    assert (clock["sealed"].low, clock["sealed"].high) == (0, 6)
    assert (clock["emerges"].low, clock["emerges"].high) == (7, 14)


def test_a_virgin_found_today_no_longer_emerges() -> None:
    assert "emerges" not in queen_clock("virgin")


def test_to_know_the_day_narrows_the_band() -> None:
    known, seen = queen_clock("egg")["lays"], queen_clock("egg in a cup")["lays"]
    assert known.high - known.low < seen.high - seen.low

from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.colony.brood import total_days
from combwright.science.queens.queen_clock import (
    Found,
    Route,
    emergency_clock,
    grafts_per_nuc,
    nuc_timeline,
    queen_clock,
)

# Timelines of guides, in days since the nuc was made: laying, own sealed brood, own bees.
TIMELINES: list[tuple[Route, tuple[float, float], tuple[float, float], tuple[float, float]]] = [
    ("mated queen", (3, 7), (12, 16), (24, 28)),
    ("ripe cell", (16, 24), (25, 33), (37, 45)),
    ("charged cell", (22, 33), (31, 42), (43, 54)),
    ("walk-away", (26, 34), (35, 43), (47, 55)),
]


@pytest.mark.parametrize(("route", "laying", "sealed", "adults"), TIMELINES)
def test_timelines_of_nucs(
    route: Route,
    laying: tuple[float, float],
    sealed: tuple[float, float],
    adults: tuple[float, float],
) -> None:
    timeline = nuc_timeline(route)
    assert (timeline.laying.low, timeline.laying.high) == laying
    assert (timeline.sealed_brood.low, timeline.sealed_brood.high) == sealed
    assert (timeline.own_bees.low, timeline.own_bees.high) == adults


@pytest.mark.parametrize("found", get_args(Found))
def test_what_follows_comes_in_order_and_what_is_past_is_left_out(found: Found) -> None:
    clock = queen_clock(found)
    lows = [days.low for days in clock.values()]
    assert lows == sorted(lows)
    assert all(days.low <= days.high for days in clock.values())
    assert found not in clock


# Queen-cell clock of guides: sealed on day 8 or 9, emerges on day 15 to 17, egg for 3 days.
def test_a_charged_cell_found_today() -> None:
    clock = queen_clock("charged")
    assert (clock["sealed"].low, clock["sealed"].high) == (0, 6)
    assert (clock["emerges"].low, clock["emerges"].high) == (7, 14)


def test_a_virgin_found_today_no_longer_emerges() -> None:
    assert "emerges" not in queen_clock("virgin")


def test_emergency_cells_start_from_larvae_of_up_to_36_hours() -> None:
    emerges = emergency_clock()["emerges"]
    oldest_larva, youngest_larva = 3 + 1.5, 3.0
    assert emerges.low <= total_days("queen") - oldest_larva <= emerges.high
    assert emerges.low <= total_days("queen") - youngest_larva <= emerges.high


def test_grafts_for_a_nuc() -> None:  # trade rule: about 2.5 grafts or 1.8 sealed cells
    assert grafts_per_nuc() == pytest.approx(2.5, abs=0.05)
    assert grafts_per_nuc(acceptance=1) == pytest.approx(1.8, abs=0.05)


@given(st.floats(0.01, 1), st.floats(0.01, 1))
def test_more_losses_need_more_grafts(one: float, other: float) -> None:
    worse, better = sorted((one, other))
    assert grafts_per_nuc(mating=worse) >= grafts_per_nuc(mating=better) > 1

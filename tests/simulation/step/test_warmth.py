"""Space against warmth, process by process."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples

from combwright.simulation.step.warmth import brood_of, frames_covered, warmth

BIO = samples.numbers()
Air = st.floats(-15, 30)


@given(samples.colonies(), Air, st.floats(0, 10))
def test_cold_draws_bees_together_never_beyond_the_box(
    colony: Any, air_c: float, by: float
) -> None:
    cold, warm = (
        frames_covered(colony, samples.today(night_c=night)) for night in (air_c, air_c + by)
    )
    assert 0.0 <= cold <= warm <= colony.frames


@given(samples.colonies(), Air, st.floats(0, 8))
def test_only_covered_frames_are_warm(colony: Any, mean_c: float, lower: float) -> None:
    today = samples.today(mean_c=mean_c, night_c=mean_c - lower)
    warm, heat_w, sugar, tied = warmth(colony, brood_of(colony), today, BIO)
    assert 0.0 <= warm <= frames_covered(colony, today) * (1 + 1e-12)
    assert min(heat_w, sugar, tied) >= 0.0


@given(samples.colonies(), Air, st.floats(1.01, 3))
def test_leakier_walls_cost_heat_and_warm_no_frame_more(
    colony: Any, mean_c: float, leakier: float
) -> None:
    today = samples.today(mean_c=mean_c, night_c=mean_c - 3.0)
    warm, heat_w, sugar, _ = warmth(colony, brood_of(colony), today, BIO)
    colony.heat_loss *= leakier
    warm_then, heat_then, sugar_then, _ = warmth(colony, brood_of(colony), today, BIO)
    assert heat_then >= heat_w
    assert sugar_then >= sugar
    assert warm_then <= warm * (1 + 1e-12)


@given(samples.colonies(), Air, st.integers(1, 8))
def test_empty_frames_beside_the_nest_never_help(colony: Any, mean_c: float, more: int) -> None:
    colony.loss_per_frame = 0.0  # the walls of the larger box left out
    today = samples.today(mean_c=mean_c, night_c=mean_c - 3.0)
    small = warmth(colony, brood_of(colony), today, BIO)
    if frames_covered(colony, today) < colony.frames:
        colony.frames += more
        large = warmth(colony, brood_of(colony), today, BIO)
        assert large[0] <= small[0] * (1 + 1e-9)
        assert large[1] >= small[1] * (1 - 1e-9)

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.belief.weighing.counting import CURVE, counted, in_frames


@given(frames=st.floats(0.0, 20.0), name=st.sampled_from(sorted(CURVE)))
def test_what_is_counted_the_other_way_turns_back_into_frames(frames: float, name: str) -> None:
    assert in_frames(name, float(counted(name, np.array(frames)))) == pytest.approx(frames)


@given(frames=st.floats(0.1, 11.0), name=st.sampled_from(sorted(CURVE)))
def test_more_combs_or_seams_than_the_frames_that_they_fill(frames: float, name: str) -> None:
    assert counted(name, np.array(frames)) > frames


def test_a_nest_reaches_over_no_more_combs_than_a_ball() -> None:
    """A ball of one frame's worth of a National: 6.4 dm² of comb, 35 mm from comb to comb."""
    worth = np.linspace(0.25, 2.0, 8)
    radius = (3.0 * worth * 640.0 * 3.5 / (4.0 * np.pi)) ** (1.0 / 3.0)
    assert (counted("combs_with_brood", worth) < 2.0 * radius / 3.5).all()

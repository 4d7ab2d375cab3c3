"""The chance of a swarm keeps the order of the members' shares and is never certain."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.advice.swarm_chance import calibrated

MEMBERS = st.integers(20, 1000)


@given(MEMBERS, st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_more_members_that_swarm_are_a_greater_chance(
    members: int, one: float, other: float
) -> None:
    low, high = sorted((one, other))
    assert 0.0 < calibrated(low, members) <= calibrated(high, members) < 1.0


def test_a_small_share_tells_less_than_it_says_and_a_large_one_more() -> None:
    """What the study found: one in twenty members, one swarm in fifty weeks."""
    assert calibrated(0.05, 200) == pytest.approx(0.018, abs=0.005)
    assert calibrated(0.9, 200) > 0.9

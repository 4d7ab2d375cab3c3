import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.colony.swarms import (
    NO_TRIGGER,
    SIGNS,
    SWARM_FRACTION,
    prime_swarm,
    wild_colonies_next_year,
)
from combwright.terms.errors import OutOfRangeError


def test_three_quarters_leave() -> None:  # Rangel & Seeley 2012
    assert prime_swarm(20_000).swarm == 15_000


@given(st.floats(0, 120_000), st.floats(0, 1))
def test_no_bee_is_lost_in_the_parting(bees: float, fraction: float) -> None:
    parting = prime_swarm(bees, fraction)
    assert parting.swarm + parting.stay == pytest.approx(bees)
    assert min(parting.swarm, parting.stay) >= 0


def test_a_percentage_is_refused_as_a_fraction() -> None:
    with pytest.raises(OutOfRangeError, match=r"Give 75 % as 0\.75"):
        prime_swarm(20_000, 75)


def test_wild_colonies_hold_their_number() -> None:  # rates of Seeley 2017, Apidologie 48:743
    assert wild_colonies_next_year() == pytest.approx(1, abs=0.1)


@given(st.floats(0, 5), st.floats(0, 5))
def test_more_swarms_more_colonies(swarms: float, more: float) -> None:
    assert wild_colonies_next_year(swarms + more) >= wild_colonies_next_year(swarms)


def test_nothing_is_claimed_as_a_law_of_swarming() -> None:
    assert "No validated numeric trigger" in NO_TRIGGER
    assert all(sign.source for sign in SIGNS)
    assert SWARM_FRACTION.verified == "read"

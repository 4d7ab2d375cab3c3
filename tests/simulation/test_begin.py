"""Colonies at the start: near what was described, spread over what was not, and possible."""

from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples
from tests.simulation.hands.test_actions import whole

from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.terms.errors import ClashError
from combwright.terms.set_up import SetUp

maybe = st.none() | st.floats(0, 40)


@given(
    bees=maybe,
    brood=maybe,
    stores=maybe,
    mites=st.none() | st.floats(0, 5000),
    on=st.dates(date(2024, 1, 1), date(2028, 12, 31)),
    frames=st.integers(1, 22),
)
def test_whatever_is_described_the_colonies_can_be(
    *,
    bees: float | None,
    brood: float | None,
    stores: float | None,
    mites: float | None,
    on: date,
    frames: int,
) -> None:
    described = Described(frames_of_bees=bees, frames_of_brood=brood, stores_kg=stores, mites=mites)
    made = begin(
        samples.TIMBER,
        SetUp(frames=frames, brood_boxes=1 + (frames > 12)),
        described,
        on=on,
        members=5,
        seed=1,
        colony="any",
    )
    whole(made)


def test_what_was_counted_is_met_in_the_middle() -> None:
    made = samples.usual(members=400, bees=6.5, brood=2.5, stores=8.0, mites=100.0)
    assert np.median(observe.frames_of_bees(made)) == pytest.approx(6.5, rel=0.05)
    assert np.median(observe.frames_of_brood(made)) == pytest.approx(2.5, rel=0.05)
    assert np.median(observe.stores_kg(made)) == pytest.approx(8.0, rel=0.08)
    assert np.median(observe.mites(made)) == pytest.approx(100.0, rel=0.12)


def test_the_same_key_gives_the_same_colonies() -> None:
    assert (samples.usual(seed=3) == samples.usual(seed=3)).all()
    assert (samples.usual(seed=3) != samples.usual(seed=4)).any()


@pytest.mark.parametrize(
    "described",
    [
        Described(frames_of_bees=-1.0),
        Described(frames_of_brood=float("nan")),
        Described(stores_kg=float("inf")),
        Described(mites=-5.0),
    ],
)
def test_what_cannot_be_is_refused(described: Described) -> None:
    with pytest.raises(ClashError, match="cannot be"):
        begin(
            samples.TIMBER,
            SetUp(frames=11),
            described,
            on=samples.SPRING,
            members=2,
            seed=1,
            colony="x",
        )

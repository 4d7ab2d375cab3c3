import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.honey.spoiling import ferments, yeasts_allowed_per_g
from combwright.terms.errors import OutOfRangeError

# Lochhead 1933, read second-hand: water up to and including, and the count to stay below.
LOCHHEAD = [(17.0, np.inf), (17.1, 1000.0), (18.0, 1000.0), (18.1, 10.0), (19.0, 10.0)]
LOCHHEAD += [(19.1, 1.0), (20.0, 1.0), (20.1, 0.0)]


@pytest.mark.parametrize(("water", "yeasts"), LOCHHEAD)
def test_counts_are_those_of_the_table(water: float, yeasts: float) -> None:
    assert float(yeasts_allowed_per_g(water)) == yeasts


@given(st.floats(11.0, 29.0), st.floats(0.0, 1.0), st.floats(0.0, 1e6))
def test_wetter_honey_is_never_safer(water: float, more: float, yeasts: float) -> None:
    assert ferments(water, yeasts) <= ferments(water + more, yeasts)


@given(st.floats(11.0, 30.0), st.floats(0.0, 1e6), st.floats(0.0, 1e6))
def test_more_yeasts_are_never_safer(water: float, yeasts: float, more: float) -> None:
    assert ferments(water, yeasts) <= ferments(water, yeasts + more)


@pytest.mark.parametrize("yeasts", [-1.0, float("nan")])
def test_impossible_counts_are_refused(yeasts: float) -> None:
    with pytest.raises(OutOfRangeError, match="count of yeasts"):
        ferments(18.0, yeasts)

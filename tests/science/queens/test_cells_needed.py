"""How many cells: against the distributions of scipy, and the ends of the range."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.queens.cells_needed import chance_of_at_least

SHARE = st.floats(0.01, 0.99)


@given(st.integers(1, 60), st.integers(0, 60), SHARE, st.just(0.0) | st.floats(0.01, 0.9))
def test_scipy_agrees(wanted: int, cells: int, success: float, shock: float) -> None:
    from scipy.stats import betabinom, binom

    both = 1.0 / shock - 1.0 if shock else 0.0
    law = betabinom(cells, success * both, (1 - success) * both) if shock else binom(cells, success)
    got = chance_of_at_least(wanted, cells, success, shock)
    assert got == pytest.approx(float(law.sf(wanted - 1)), abs=1e-9)


def test_none_wanted_is_sure() -> None:
    assert chance_of_at_least(0, 0, 0.5) == 1.0

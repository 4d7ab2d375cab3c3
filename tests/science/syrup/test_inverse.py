import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.syrup.inverse import inverse


@given(st.floats(-3.0, 3.0))
def test_what_went_in_comes_back(x: float) -> None:
    found = inverse(lambda t: t**3 + t, x**3 + x, -4.0, 4.0)
    assert float(found) == pytest.approx(x, abs=1e-12)


def test_each_element_is_solved_by_itself() -> None:
    found = inverse(np.exp, np.array([1.0, np.e]), -1.0, 2.0)
    assert found == pytest.approx([0.0, 1.0], abs=1e-12)

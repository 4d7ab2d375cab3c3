"""The closed form of mite growth that the simulated colonies are held against."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from combwright.evidence.simulated_mites import growth_rate

Rate = st.floats(0.005, 2)
Leaving = st.floats(0.3, 2.5)

# Closed form apart from this code: invasion, mites out per mite in, growth.
GROWTH = [
    (0.10, 1.3, 0.0097),
    (0.10, 1.7, 0.0230),
    (0.15, 1.5, 0.0203),
    (0.20, 1.5, 0.0226),
    (0.30, 1.5, 0.0255),
    (0.40, 1.3, 0.0172),
    (0.40, 1.7, 0.0359),
]


@pytest.mark.parametrize(("invasion", "leaving", "growth"), GROWTH)
def test_growth_in_closed_form(invasion: float, leaving: float, growth: float) -> None:
    assert growth_rate(invasion, leaving, 12, 0.006) == pytest.approx(growth, abs=6e-5)


@given(Rate, Leaving, st.floats(0, 0.05))
def test_growth_agrees_with_a_root_finder(invasion: float, leaving: float, death: float) -> None:
    def gap(r: float) -> float:
        return invasion * leaving * float(np.exp(-r * 12)) - invasion - death - r

    found = growth_rate(invasion, leaving, 12, death)
    assert found == pytest.approx(brentq(gap, -3, 3, xtol=1e-14), abs=1e-9)


@given(Rate, Leaving, st.floats(1.01, 2))
def test_more_offspring_more_growth(invasion: float, leaving: float, factor: float) -> None:
    assert growth_rate(invasion, leaving * factor, 12, 0.006) > growth_rate(
        invasion, leaving, 12, 0.006
    )

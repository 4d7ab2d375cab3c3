"""Median and quantiles: NumPy's own numbers, to the last digit."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from combwright.terms.ranked import median, quantile

Values = arrays(np.float64, st.integers(1, 60), elements=st.floats(-1e6, 1e6))


@given(Values)
def test_the_median_is_that_of_numpy(values: np.ndarray) -> None:
    assert median(values) == np.median(values)


@given(Values, st.floats(0, 1), st.floats(0, 1))
def test_quantiles_are_those_of_numpy(values: np.ndarray, one: float, other: float) -> None:
    assert quantile(values, one, other) == np.quantile(values, (one, other)).tolist()

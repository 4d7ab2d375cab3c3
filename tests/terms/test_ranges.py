import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.terms.errors import OutOfRangeError
from combwright.terms.ranges import within


@given(st.lists(st.floats(-5, 5), min_size=1))
def test_values_inside_come_out_unchanged(values: list[float]) -> None:
    assert np.array_equal(within(values, -5, 5, "The value"), values)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 5.001])
def test_nothing_else_gets_through(value: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"between -5 and 5 °C\. Is it Fahrenheit"):
        within([0.0, value], -5, 5, "The temperature", "°C", remedy="Is it Fahrenheit?")

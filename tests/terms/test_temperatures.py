"""Temperatures in another unit are recognised."""

import pytest

from combwright.terms.errors import OutOfRangeError
from combwright.terms.temperatures import celsius


@pytest.mark.parametrize(
    ("given", "says"),
    [
        (95.0, "Fahrenheit; that would be 35 °C"),
        (308.15, "kelvin; that would be 35 °C"),
        (5000.0, "lies between -20 and 45 °C.$"),
        (float("nan"), "cannot be nan"),
    ],
)
def test_what_lies_outside_is_named(given: float, says: str) -> None:
    with pytest.raises(OutOfRangeError, match=says):
        celsius(given, "The nest", -20, 45)


def test_what_lies_inside_passes() -> None:
    assert celsius([-20, 45], "The nest", -20, 45).tolist() == [-20, 45]

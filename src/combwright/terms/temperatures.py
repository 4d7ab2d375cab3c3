"""The gate for temperatures: impossible ones, and those that look like another unit."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.ranges import within


def celsius(values: ArrayLike, name: str, low: float, high: float) -> NDArray[np.float64]:
    """Give temperatures as an array, or say what one outside the range looks like.

    Examples
    --------
    >>> celsius(95, "The nest", -20, 45)
    Traceback (most recent call last):
    ...
    combwright.terms.errors.OutOfRangeError: The nest cannot be 95 °C: it lies between -20 and \
45 °C. 95 looks like Fahrenheit; that would be 35 °C.

    """
    if type(values) is float and low <= values <= high:
        return np.asarray(values)
    array = np.asarray(values, dtype=np.float64)
    outside = array[~((array >= low) & (array <= high))]
    looks = _looks_like(float(outside.flat[0]), low, high) if outside.size else ""
    return within(array, low, high, name, "°C", remedy=looks)


def _looks_like(value: float, low: float, high: float) -> str:
    from_kelvin = value - 273.15
    if low <= from_kelvin <= high:
        return f"{value:g} looks like kelvin; that would be {from_kelvin:.3g} °C."
    from_fahrenheit = (value - 32) / 1.8
    if low <= from_fahrenheit <= high:
        return f"{value:g} looks like Fahrenheit; that would be {from_fahrenheit:.3g} °C."
    return ""

"""The one gate through which numbers enter a formula: no NaN, nothing impossible."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.errors import OutOfRangeError

TRIFLE = 1e-3  # a lower end under it only keeps out nought; judgement


def within(
    values: ArrayLike, low: float, high: float, name: str, unit: str = "", *, remedy: str = ""
) -> NDArray[np.float64]:
    """Give the values as floats if all of them lie in a range, else say which one does not.

    The name begins the sentence; the remedy is what the value looks like or what to do instead.

    Examples
    --------
    >>> float(within(12, 1, 12, "The month"))
    12.0
    >>> within(13, 1, 12, "The month")
    Traceback (most recent call last):
    ...
    combwright.terms.errors.OutOfRangeError: The month cannot be 13: it lies between 1 and 12.

    """
    if type(values) is float and low <= values <= high:  # most are, and pass in a tenth of the time
        return np.asarray(values)
    given = np.asarray(values, dtype=np.float64)
    wrong = ~((given >= low) & (given <= high))
    if wrong.any():
        first = float(given[wrong][0]) if given.ndim else float(given)
        said = f" {unit}" if unit else ""
        span = f"lies between {low:g} and {high:g}{said}"
        if 0.0 < low < TRIFLE:
            span = f"is more than 0 and at most {high:g}{said}"
        sentence = f"{name} cannot be {first:.10g}{said}: it {span}."
        raise OutOfRangeError(sentence, remedy=remedy)
    return given

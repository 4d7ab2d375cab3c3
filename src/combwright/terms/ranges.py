"""The one gate through which numbers enter a formula: no NaN, nothing impossible."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.errors import OutOfRangeError


def within(
    values: ArrayLike, low: float, high: float, name: str, unit: str = "", *, remedy: str = ""
) -> NDArray[np.float64]:
    """Give the values as floats if all of them lie in a range, else say which one does not.

    Parameters
    ----------
    values
        What came in. [unit]
    low, high
        The range, both ends allowed. [unit]
    name
        What the values are, as the start of a sentence.
    unit
        Their unit, for the sentence.
    remedy
        What the value looks like or what to do instead.

    Raises
    ------
    OutOfRangeError
        If a value lies outside, or is not a number.

    Examples
    --------
    >>> float(within(12, 1, 12, "The month"))
    12.0
    >>> within(13, 1, 12, "The month")
    Traceback (most recent call last):
    ...
    combwright.terms.errors.OutOfRangeError: The month cannot be 13: it lies between 1 and 12.

    """
    given = np.asarray(values, dtype=np.float64)
    wrong = ~((given >= low) & (given <= high))
    if wrong.any():
        first = float(given[wrong][0]) if given.ndim else float(given)
        said = f" {unit}" if unit else ""
        sentence = (
            f"{name} cannot be {first:.10g}{said}: it lies between {low:g} and {high:g}{said}."
        )
        raise OutOfRangeError(sentence, remedy=remedy)
    return given

"""Median and quantiles of a few hundred values: NumPy's numbers, in a tenth of its time.

NumPy's own are made for arrays of any shape and size; a plan asks for some eighty of them.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

NEARER: Final = 0.5


def median(values: NDArray[np.float64]) -> float:
    """Give the middle of some values.

    Examples
    --------
    >>> median(np.array([4.0, 1.0, 2.0])), median(np.array([4.0, 1.0, 2.0, 3.0]))
    (2.0, 2.5)

    """
    ordered = np.sort(values)
    last = len(ordered) - 1
    return float(0.5 * (ordered[last // 2] + ordered[len(ordered) // 2]))


def quantile(values: NDArray[np.float64], *shares: float) -> list[float]:
    """Give the values below which such shares of all lie, between two of them in proportion.

    Examples
    --------
    >>> quantile(np.array([4.0, 1.0, 2.0]), 0.0, 0.5, 0.75)
    [1.0, 2.0, 3.0]

    """
    ordered = np.sort(values)
    last = len(ordered) - 1
    found = []
    for share in shares:
        place = share * last
        low = min(int(place), last)
        below, above = float(ordered[low]), float(ordered[min(low + 1, last)])
        part = place - low
        if part < NEARER:
            found.append(below + (above - below) * part)
        else:  # from the nearer end, as NumPy does, so that the last digit is the same
            found.append(above - (above - below) * (1.0 - part))
    return found

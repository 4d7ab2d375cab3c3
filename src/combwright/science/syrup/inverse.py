"""Read a rising formula backwards."""

from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike, NDArray

HALVINGS = 60  # a range of 100 is then known to 1e-16


def inverse(
    rising: Callable[[NDArray[np.float64]], NDArray[np.float64]],
    wanted: ArrayLike,
    low: float,
    high: float,
) -> NDArray[np.float64]:
    """Find where a rising function reaches the wanted values, by halving.

    ``rising``: a function that rises from `low` to `high`. ``wanted``: its values; they must be
    reached within the range [unit of the function's result]. ``low``, ``high``: the range to search
    [unit of the function's argument].

    Examples
    --------
    >>> float(inverse(np.sqrt, 3.0, 0.0, 100.0).round(9))
    9.0

    """
    values = np.asarray(wanted, dtype=np.float64)
    below, above = np.full_like(values, low), np.full_like(values, high)
    for _ in range(HALVINGS):
        middle = (below + above) / 2.0
        reached = rising(middle) >= values
        below, above = np.where(reached, below, middle), np.where(reached, middle, above)
    return above

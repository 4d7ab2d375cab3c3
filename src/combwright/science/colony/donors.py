"""How many nucs a colony can give, and how soon the hole in its brood closes."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.colony.brood import STAGE_DAYS

SEALED_DAYS = STAGE_DAYS["worker"].sealed


def nucs_now(brood_frames: float, floor: float, per_nuc: float) -> int:
    """Nucs that a colony can give at once and still keep its floor of brood frames.

    Examples
    --------
    >>> nucs_now(9, 5, 2), nucs_now(6, 5, 2), nucs_now(8, 5, 3)
    (2, 0, 1)

    """
    return max(0, int((brood_frames - floor) // per_nuc))


def hole_left(days: ArrayLike) -> NDArray[np.float64]:
    r"""Share of the hole in the brood that is left so many days after sealed frames were taken.

    .. math:: h(d) = \max(0,\ 1 - d/12)

    The bees of those frames would have emerged anyway within the 12 days that brood is sealed
    (computed; at a steady rate of laying, with drawn comb to lay in).

    Examples
    --------
    >>> (2 * hole_left([0, 3, 6, 9, 12])).tolist()
    [2.0, 1.5, 1.0, 0.5, 0.0]

    """
    return np.clip(1.0 - np.asarray(days, np.float64) / SEALED_DAYS.value, 0.0, 1.0)

"""The chance of a swarm, as often as it comes: the members' share, calibrated."""

from typing import Final

import numpy as np

from combwright.advice.numbers import numbers

PARAMETERS: Final = numbers("swarm")
AT: Final = PARAMETERS["calibrated_at"].value
SLOPE: Final = PARAMETERS["calibrated_slope"].value


def calibrated(share: float, members: int) -> float:
    """Give the chance of a swarm where a share of so many members swarms.

    Belief and model each allow for cells that nobody saw, so that small shares come out too high.
    A straight line between logarithms of odds puts that right: rising, and so in the same order.

    Examples
    --------
    >>> [round(calibrated(share, 100), 3) for share in (0.0, 0.05, 0.2, 0.5, 0.8)]
    [0.001, 0.019, 0.113, 0.421, 0.805]

    """
    happens = members * share
    odds = (happens + 0.5) / (members - happens + 0.5)
    return float(1.0 / (1.0 + np.exp(-AT) * odds**-SLOPE))

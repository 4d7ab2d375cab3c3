"""Drones for a batch: by when their eggs must have been laid."""

from combwright.science.queens.first_egg import FLIES_AT
from combwright.terms.data_files import parameter

DRONE_MATURES = parameter("science/queens", "drone_matures")


def drone_eggs_before(emerges_days: float) -> float:
    """Days from day 0 by which eggs of drones must be laid for them to fly with its virgins.

    ``emerges_days``: days from day 0 to the emerged virgin. Before day 0 it is negative.

    References
    ----------
    .. [1] COLOSS BEEBOOK, queen rearing, 2.2.3: 40 days from the egg to a mature drone (read).

    Examples
    --------
    >>> round(drone_eggs_before(12.0))
    -22

    """
    return emerges_days + FLIES_AT - DRONE_MATURES.value

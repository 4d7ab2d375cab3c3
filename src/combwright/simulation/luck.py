"""Chance: fixed by seed, colony and day, whatever is done to the colony.

Each process has its own place in each day's draw, and the draw's shape never depends on the
state. Two plans are therefore tried under the same luck, and adding a colony leaves the luck of
all others alone.
"""

from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.terms.streams import stream

# The processes that need chance: their places in a day's luck, as the step reads it.
(
    LAID,
    FORAGED,
    SWARM_STARTS,
    SWARM_LEAVES,
    QUEEN_LOST,
    MATED,
    ROBBED,
    MITES_CARRIED,
    MITES_INVADE,
) = range(9)
# In the order in which they are drawn.
NORMAL: Final = (LAID, FORAGED, MITES_INVADE, MITES_CARRIED)
UNIFORM: Final = (SWARM_STARTS, SWARM_LEAVES, QUEEN_LOST, MATED, ROBBED)


def luck(seed: int, colony: str, first: date, days: int, members: int) -> NDArray[np.float64]:
    """Draw the chance of some days for one colony, [member, day, process].

    Standard normal and uniform numbers in the columns that the step reads.
    """
    drawn = np.empty((members, days, len(NORMAL) + len(UNIFORM)))
    for day in range(days):
        rng = stream(seed, colony, first.toordinal() + day)
        normal = rng.standard_normal((len(NORMAL), members))
        uniform = rng.random((len(UNIFORM), members))
        for place, values in zip((*NORMAL, *UNIFORM), (*normal, *uniform), strict=True):
            drawn[:, day, place] = values
    return drawn

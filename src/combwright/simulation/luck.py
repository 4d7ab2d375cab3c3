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

# The processes that need chance, in the order of the columns that the step reads.
NORMAL: Final = ("laying", "nectar", "invasion by mites", "arriving mites")
UNIFORM: Final = ("swarm starts", "swarm leaves", "queen lost", "mating", "robbing")
_COLUMNS: Final = (0, 1, 8, 7, 2, 3, 4, 5, 6)


def luck(seed: int, colony: str, first: date, days: int, members: int) -> NDArray[np.float64]:
    """Draw the chance of some days for one colony, [member, day, process].

    Parameters
    ----------
    seed
        Seed of the run.
    colony
        Name of the colony.
    first
        First day.
    days
        How many days.
    members
        How many members the ensemble has.

    Returns
    -------
    NDArray[np.float64]
        Standard normal and uniform numbers in the columns that the step reads.

    """
    drawn = np.empty((members, days, len(_COLUMNS)))
    for day in range(days):
        rng = stream(seed, colony, first.toordinal() + day)
        normal = rng.standard_normal((len(NORMAL), members))
        uniform = rng.random((len(UNIFORM), members))
        drawn[:, day, list(_COLUMNS)] = np.concatenate([normal, uniform]).T
    return drawn

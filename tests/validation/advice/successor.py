"""Whether the simulated keeper who follows the advice buys a queen for a division, or raises one.

The sheet does not weigh this yet: it names a mated queen while there are any.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.bee_acts import Requeen
from combwright.advice.decisions.queen import PARAMETERS, introduced, queen_loss
from combwright.advice.situation import Situation
from combwright.advice.weighing import weigh
from combwright.simulation.hands.actions import change_queen

MATES: Final = 0.75  # of ripe cells come to a laying queen; common practice
OPEN_CELL_DAYS: Final = 5.0  # from the egg, of the cell left at a division; common practice


def buys_successor(situation: Situation) -> bool:
    """Tell whether a mated queen is worth more to a divided colony than a cell of its own.

    Three in four cells come to a laying queen, nine in ten bought ones are accepted.
    """
    raised, bought = weigh(situation, [_raising, introduced], [(), (Requeen(),)])
    apart = bought.ahead.mean - raised.ahead.mean
    unmated = (1.0 - MATES) * queen_loss(situation)
    return PARAMETERS["accepted"].value * apart + unmated > bought.cost


def _raising(colonies: NDArray[np.void]) -> None:
    change_queen(colonies, "cell")
    colonies["queen_clock"] = OPEN_CELL_DAYS

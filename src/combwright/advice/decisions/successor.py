"""Whether a divided colony is given a mated queen, or raises one from a cell that is left."""

from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.bee_acts import Requeen, Successor
from combwright.advice.decisions.queen import introduced, queen_loss
from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.advice.weighing import weigh
from combwright.simulation.hands.actions import change_queen

PARAMETERS: Final = numbers("queen")
QUEENS_FROM: Final = PARAMETERS["queens_from"].value


def successor(situation: Situation) -> Successor:
    """Choose what brings more money; before mated queens are to be had it is a cell."""
    best = to_be_had(situation.on)
    return best if best == "marked cell" or is_bought(situation) else "marked cell"


def to_be_had(on: date) -> Successor:
    """Give the best successor that is to be had on a day, whatever it costs."""
    return "mated queen" if on.timetuple().tm_yday >= QUEENS_FROM else "marked cell"


def unqueened(situation: Situation, given: Successor) -> float:
    """Give what it costs on average that a successor is refused, or does not come to lay."""
    comes = PARAMETERS["accepted" if given == "mated queen" else "cells_mate"].value
    return (1.0 - comes) * queen_loss(situation)


def is_bought(situation: Situation) -> bool:
    """Tell whether a mated queen is worth more to a divided colony than a cell of its own."""
    raised, bought = weigh(situation, [_raising, introduced], [(), (Requeen(),)])
    apart = bought.ahead.mean - raised.ahead.mean
    unmated = (1.0 - PARAMETERS["cells_mate"].value) * queen_loss(situation)
    return PARAMETERS["accepted"].value * apart + unmated > bought.cost


def _raising(colonies: NDArray[np.void]) -> None:
    change_queen(colonies, "cell")
    colonies["queen_clock"] = PARAMETERS["open_cell_days"].value

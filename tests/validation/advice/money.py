"""What a keeper earned with one colony, year by year, at the usual prices."""

from datetime import date
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from combwright.advice.prices import Prices

if TYPE_CHECKING:
    from tests.validation.advice.truth import Tally

Floats = NDArray[np.float64]
PRICES = Prices()
NUC_SOLD = date(2027, 6, 20)  # when the nucs of a year are sold: in the middle of their season


def colony_worth(frames_of_bees: float, *, has_queen: bool) -> float:
    """Price of a colony on 1 April; of one without a laying queen, nothing."""
    worth = PRICES.colony_in_april(np.array([frames_of_bees]))
    return float(worth[0]) if has_queen else 0.0


def without_nucs(tally: "Tally") -> Floats:
    """Income less costs of each year, with what the colony gained or lost in worth, [year].

    A colony that is lost by 1 April is bought again at its price.
    """
    income = PRICES.honey * tally.honey + tally.worth_after - tally.worth_before
    spent = PRICES.sugar * tally.sugar + PRICES.mated_queen * tally.queens
    spent = spent + PRICES.treatment * tally.treatments + PRICES.visit * tally.visits
    return np.asarray(income - spent)


def money(tally: "Tally") -> Floats:
    """The same with the nucs that were sold, [year]."""
    return without_nucs(tally) + PRICES.nuc(NUC_SOLD) * tally.nucs

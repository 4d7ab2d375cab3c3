"""What a keeper earned with one colony, year by year, at the usual prices."""

from datetime import date, timedelta
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from combwright.advice.nuc_worth import PARAMETERS as NUCS
from combwright.advice.prices import Prices, left_of_worth
from combwright.simulation.step.shapes import YEAR

if TYPE_CHECKING:
    from tests.validation.advice.truth import Tally

Floats = NDArray[np.float64]
PRICES = Prices()
PARTS = ("honey", "nucs", "colony", "sugar", "queens", "treatments", "visits")


def colony_worth(frames_of_bees: float, queen_years: float, *, has_queen: bool) -> float:
    """Price of a colony on 1 April; of one without a laying queen, nothing."""
    worth = PRICES.colony_in_april(np.array([frames_of_bees]), queen_years)
    return float(worth[0]) if has_queen else 0.0


def nuc_income(on: date, goes_with: str, queen_years: float = 0.0) -> float:
    """Give what a nuc made on a day brings: the price when it is ready, less all it costs.

    The same for every keeper: a nuc with an old queen brings less, some queens fail, some nucs
    find no buyer, and its queen, frames, feed and work are paid.
    """
    by_cell = goes_with == "cell"
    ready = on + timedelta(days=NUCS["saleable_to" if by_cell else "with_queen_days"].value)
    comes = {"cell": "mates", "mated queen": "accepted"}.get(goes_with)
    share = NUCS["sold"].value * (NUCS[comes].value if comes else 1.0)
    paid = NUCS["box_frames"].value * PRICES.frame_of_foundation
    paid += NUCS["sugar_kg"].value * PRICES.sugar + PRICES.work(NUCS["minutes"].value)
    paid += PRICES.mated_queen * (goes_with == "mated queen")
    age = queen_years + (ready - on).days / YEAR if goes_with == "queen" else 0.0
    return share * PRICES.nuc(ready) * float(left_of_worth(age)) - paid


def parts(tally: "Tally") -> dict[str, Floats]:
    """Income less costs of each year by what it came from, [year].

    A colony that is lost by 1 April is bought again at its price. Queens and costs of nucs stand
    with the nucs.
    """
    return {
        "honey": PRICES.honey * tally.honey,
        "nucs": tally.nuc_income,
        "colony": tally.worth_after - tally.worth_before,
        "sugar": -PRICES.sugar * tally.sugar,
        "queens": -PRICES.mated_queen * (tally.queens - tally.nuc_queens),
        "treatments": -PRICES.treatment * tally.treatments,
        "visits": -PRICES.visit * tally.visits,
    }


def money(tally: "Tally") -> Floats:
    """Income less costs of each year, [year]."""
    return np.asarray(sum(parts(tally).values()))


def without_nucs(tally: "Tally") -> Floats:
    """The same without what nucs brought and cost, [year]."""
    return money(tally) - tally.nuc_income

"""What a nuc is worth that is made on a day: its price when it is ready, less what it costs."""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.prices import Prices, left_of_worth
from combwright.simulation.step.shapes import YEAR

Floats = NDArray[np.float64]
PARAMETERS: Final = numbers("nucs")


@dataclass(frozen=True)
class NucMade:
    """What a nuc made today brings, and with which queen."""

    queen: Literal["mated queen", "cell"]
    brings: float


def nuc_made(on: date, prices: Prices) -> NucMade:
    """Give what a nuc brings that is made today, by the better way to a queen, all costs paid.

    Three in four cells come to a queen, nine in ten bought queens are accepted, and one nuc in ten
    finds no buyer.
    """
    paid, sold = _paid(prices), PARAMETERS["sold"].value
    by_cell = on + timedelta(days=PARAMETERS["saleable_to"].value)
    cell = NucMade("cell", sold * PARAMETERS["mates"].value * prices.nuc(by_cell) - paid)
    if on.timetuple().tm_yday < PARAMETERS["queens_from"].value:
        return cell
    by_queen = on + timedelta(days=PARAMETERS["with_queen_days"].value)
    asked = sold * PARAMETERS["accepted"].value * prices.nuc(by_queen)
    queen = NucMade("mated queen", asked - prices.mated_queen - paid)
    return max(queen, cell, key=lambda way: way.brings)


def nuc_with_her(on: date, prices: Prices, queen_years: float) -> float:
    """Give what a nuc brings that is made today with the colony's own laying queen.

    An older queen takes as much off its price as off that of a colony.
    """
    days = PARAMETERS["with_queen_days"].value
    asked = prices.nuc(on + timedelta(days=days)) * float(left_of_worth(queen_years + days / YEAR))
    return PARAMETERS["sold"].value * asked - _paid(prices)


def _paid(prices: Prices) -> float:
    """Give what a nuc costs besides its queen: frames, feed and work."""
    frames = PARAMETERS["box_frames"].value * prices.frame_of_foundation
    feed = PARAMETERS["sugar_kg"].value * prices.sugar
    return frames + feed + prices.work(PARAMETERS["minutes"].value)


@lru_cache(maxsize=2)
def nucs_ahead(first: date, days: int, prices: Prices) -> Floats:
    """Give what a nuc brings and the share of keepers who would make one, [day, 2].

    Nobody does for less than the honey that a donor misses.
    """
    made = np.zeros((days, 2))
    missed = PARAMETERS["donor_honey_kg"].value * prices.honey
    for day in range(days):
        on = first + timedelta(days=day)
        if is_in_season(on, PARAMETERS, "season"):
            brings = nuc_made(on, prices).brings
            made[day] = brings, np.clip(brings / max(missed, 1.0) - 1.0, 0.0, 1.0)
    return made

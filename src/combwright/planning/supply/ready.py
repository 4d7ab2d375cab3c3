"""Which share of the nucs made in a week is ready by each later week, scenario by scenario."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.wanted import SupplyTask, Way
from combwright.science.colony.donors import hole_left
from combwright.science.queens.first_egg import LAYS_BEFORE_SALE, ready_by

Floats = NDArray[np.float64]
A_WEEK: Final = 7
READY_WEEKS: Final = 8  # after the last cell, by when nearly all that lay can be sold; computed
ACCEPTED: Final = number("queen_accepted")
QUEEN_READY: Final = number("queen_lays_after") + LAYS_BEFORE_SALE.value
SOLD_AFTER: Final = number("queen_sold_after")
BEES_BACK: Final = number("bees_back_days")


def ready_shares(task: SupplyTask, way: Way) -> Floats:
    """Give the share of nucs made in week t that is ready by week w, [scenario, w, t]."""
    made, until = np.arange(task.weeks), np.arange(task.until + 1)
    days = A_WEEK * (until[:, None] - made[None, :])
    if way == "by bought queen":
        ready = np.where(days >= np.ceil(QUEEN_READY), ACCEPTED, 0.0)
        return np.broadcast_to(ready, (len(task.success), *ready.shape))
    sooner = LAYS_BEFORE_SALE.value - SOLD_AFTER if way == "mating nuc" else 0.0
    return ready_by(days + sooner, task.success[:, None, :], task.waits[:, None, :])


def holes_left(weeks: int) -> tuple[Floats, Floats]:
    """Give what is left in week t of a hole in brood and in bees made in week t', [t, t']."""
    days = A_WEEK * (np.arange(weeks)[:, None] - np.arange(weeks)[None, :])
    brood = np.where(days >= 0, hole_left(np.maximum(days, 0)), 0.0)
    bees = np.where(days >= 0, np.clip(1.0 - days / BEES_BACK, 0.0, 1.0), 0.0)
    return brood, bees


def spare(frames: Floats, floor: float) -> Floats:
    """Give what can be taken of a donor each week at the careful end, [week]."""
    return np.asarray(np.quantile(frames, number("careful"), axis=0) - floor)

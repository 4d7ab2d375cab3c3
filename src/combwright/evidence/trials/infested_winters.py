"""What mites of autumn do to a colony by spring."""

from datetime import date
from functools import cache

import numpy as np

from combwright.evidence.simulated_yards import SimulatedYard
from combwright.evidence.trials.infested import ALIVE, COLONIES, FULL_FRAME, PLACE, SEED
from combwright.simulation import observe
from combwright.simulation.begin import Described
from combwright.simulation.hands.keeper import Keeping

NOVEMBER, AUGUST = (date(2026, 11, 1), 9.0), (date(2026, 8, 15), 12.0)  # and frames of bees


@cache
def winter(start: date, frames: float, mites: float) -> dict[str, float]:
    """Let colonies with so many mites pass the winter untreated: share alive, and bees lost."""
    days = (date(start.year + 1, 3, 20) - start).days
    yard = SimulatedYard("winter", PLACE, start, days=days, colonies=COLONIES, seed=SEED)
    described = Described(
        frames_of_bees=frames, stores_kg=18.0, mites=mites, queen_year=start.year, has_queen=True
    )
    made = yard.begin(described)
    made["invaders"] = 0.0
    before = observe.adults(made)
    yard.keep(made, Keeping(treating="none"))
    after = observe.adults(made)
    alive = after > ALIVE
    return {"alive": float(alive.mean()), "lost": float(np.median(before - after))}


def bees_lost(many: float, few: float) -> float:
    """Bees lost from November to March with many mites against with few."""
    return winter(*NOVEMBER, many)["lost"] / winter(*NOVEMBER, few)["lost"]


def alive_with(mites: float) -> float:
    """Share of colonies with so many mites in November that live in March."""
    return winter(*NOVEMBER, mites)["alive"]


def one_in_a_hundred_kills_more() -> bool:
    """Tell whether more die from one mite in a hundred bees in August than from a quarter."""
    bees = AUGUST[1] * FULL_FRAME
    few, many = (winter(*AUGUST, 2.0 * share * bees)["alive"] for share in (0.0025, 0.01))
    return many < few

"""Colonies that nobody keeps: how many swarm, and who lives on."""

from dataclasses import replace
from datetime import date
from functools import cache

import numpy as np

from combwright.evidence.simulated_losses import NOBODY
from combwright.evidence.simulated_yards import SimulatedYard
from combwright.simulation import observe
from combwright.simulation.begin import Described
from combwright.simulation.columns import LAYING
from combwright.terms.set_up import SetUp

PLACE, SEED, COLONIES = "Dublin Airport", 20260401, 60
SPRING, AUTUMN, NEXT_SPRING = date(2026, 4, 1), date(2026, 10, 1), date(2027, 4, 15)
ALIVE = 1500.0  # bees from which a colony is one
IN_SPRING = Described(
    frames_of_bees=6.5,
    frames_of_brood=3.0,
    stores_kg=8.0,
    mites=20,
    queen_year=2025,
    has_queen=True,
)
SWARM = Described(
    frames_of_bees=7.0,
    frames_of_brood=0.0,
    stores_kg=0.5,
    mites=20,
    queen_year=2025,
    has_queen=True,
)


@cache
def a_summer(boxes: int = 1) -> dict[str, float]:
    """Let colonies of one size of hive pass a summer: shares that swarm and that live, and mites.

    ``bees`` are those of the colonies that swarmed, on the day before.
    """
    set_up = SetUp(frames=11 * boxes, brood_boxes=boxes, supers=2 * (boxes - 1))
    days = (AUTUMN - SPRING).days
    yard = SimulatedYard(
        "wild", PLACE, SPRING, days=days, colonies=COLONIES, seed=SEED, set_up=set_up
    )
    made = yard.begin(IN_SPRING)
    bees, before = np.full(COLONIES, np.nan), observe.adults(made)
    for _day in yard.by_day(made):
        left = (made["swarmed"] > 0.0) & ~np.isfinite(bees)
        bees[left] = before[left]
        before = observe.adults(made)
    alive = observe.adults(made) > ALIVE
    return {
        "swarmed": float(np.mean(made["swarmed"] > 0.0)),
        "bees": float(np.nanmedian(bees)),
        "alive": float(np.mean(alive)),
        "mites": float(np.median(observe.mites(made)[alive])),
    }


def small_hives_swarm_more() -> bool:
    """Tell whether more colonies swarm in one brood box than in two with supers: Loftus 2016."""
    return a_summer(1)["swarmed"] > a_summer(2)["swarmed"]


def small_hives_have_fewer_mites() -> bool:
    """Tell whether colonies in one brood box have fewer mites in autumn: Loftus 2016."""
    return a_summer(1)["mites"] < a_summer(2)["mites"]


@cache
def founders_alive() -> float:
    """Share of swarms of mid June, hived on foundation and left alone, that see the spring."""
    first, empty = date(2026, 6, 15), SetUp(frames=11, foundation=11)
    days = (NEXT_SPRING - first).days
    yard = SimulatedYard(
        "founders", PLACE, first, days=days, colonies=COLONIES, seed=SEED, set_up=empty
    )
    made = yard.begin(SWARM)
    yard.keep(made, replace(NOBODY, treating="none"))
    alive = (observe.adults(made) > ALIVE) & (made["queen"] == LAYING)
    return float(alive.mean())

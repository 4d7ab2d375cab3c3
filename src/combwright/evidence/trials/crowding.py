"""How much a colony does for its size: brood, honey and foragers of large and small ones."""

from functools import cache
from typing import Any

import numpy as np

from combwright.evidence.simulated_colonies import colonies, even_days, live
from combwright.simulation import observe

BEES_PER_LITRE, LITRES_PER_FRAME = 230, 3.2  # of Harbo's trials; a deep frame with its bee space
SIZES = (2300, 4500, 9000, 17000, 35000)


@cache
def honey_per_bee() -> dict[int, float]:
    """Honey that each bee gains in 19 days, by colony size: Harbo 1986. [g]."""
    found = {}
    for bees in SIZES:
        frames = max(3, round(bees / BEES_PER_LITRE / LITRES_PER_FRAME))
        made = colonies(float(bees), 0.0, frames=frames, stores_kg=3.0)
        before = observe.stores_kg(made).copy()
        live(made, even_days(19, day=140, mean_c=21.0, hours=7.0, nectar=0.3))
        found[bees] = 1000.0 * float(np.median(observe.stores_kg(made) - before)) / bees
    return found


def large_keep_most_honey_per_bee() -> bool:
    """Tell whether the two largest colonies gain most honey for each bee."""
    ranked = sorted(SIZES, key=lambda bees: honey_per_bee()[bees])
    return set(ranked[-2:]) == {17000, 35000}


def best_size_in_a_dearth() -> int:
    """Give the colony size with most brood per bee when nothing flowers: Harbo 1986."""
    found = {}
    for bees in SIZES:
        frames = max(3, round(bees / BEES_PER_LITRE / LITRES_PER_FRAME))
        made = colonies(float(bees), 0.0, frames=frames, stores_kg=1.0 * frames)
        live(made, even_days(19, day=190, mean_c=26.0, hours=7.0, nectar=0.0, pollen=0.2))
        found[bees] = float(np.median(observe.brood(made) / bees))
    return max(found, key=lambda bees: found[bees])


def few_rear_more_each() -> bool:
    """Tell whether 700 bees rear more brood for each bee than 2800 do: Eischen and others."""
    reared = []
    for bees in (700.0, 2800.0):
        made = colonies(bees, 0.0, frames=2, stores_kg=1.5)
        live(made, even_days(12, day=170, mean_c=20.0, hours=6.0, nectar=0.4))
        reared.append(float(np.median(observe.brood(made))) / bees)
    return reared[0] > reared[1]


def more_frames_cost_g() -> float:
    """Honey a day that 9600 bees lose on ten combs against five: Harbo 1993, space test. [g]."""
    kept = []
    for frames in (5, 10):
        made = colonies(9600.0, 4000.0, frames=frames, stores_kg=3.0)
        before = observe.stores_kg(made).copy()
        live(made, even_days(20, day=110, mean_c=15.0, hours=6.0, nectar=0.4))
        kept.append(float(np.median(observe.stores_kg(made) - before)) * 1000.0 / 20.0)
    return kept[0] - kept[1]


@cache
def in_a_flow(bees: int) -> dict[str, float]:
    """Let a colony gather for six weeks of a flow, with room: honey, brood and foragers."""
    frames = max(4, round(bees / 1700))
    made = colonies(float(bees), 0.5 * bees, frames=frames, stores_kg=1.0 * frames)
    made["drawn"] *= 2.0  # combs for honey, as many again
    made["swarm_readiness"] = 0.0
    before = observe.stores_kg(made).copy()
    live(made, even_days(42, day=165, mean_c=18.0, hours=7.0, nectar=0.8))
    now: Any = observe.adults(made)
    return {
        "honey_kg": float(np.median(observe.stores_kg(made) - before)),
        "per_bee_g": 1000.0 * float(np.median(observe.stores_kg(made) - before)) / bees,
        "brood_per_bee": float(np.median(observe.brood(made) / now)),
        "foragers": float(np.median(made["foragers"])),
    }


def one_large_against_small() -> float:
    """Honey of one colony of 60 000 bees against that of four of 15 000: Farrar."""
    return in_a_flow(60000)["honey_kg"] / (4.0 * in_a_flow(15000)["honey_kg"])


def large_gather_more_per_bee() -> bool:
    """Tell whether a large colony gains more for each bee and has less brood for each: Moeller."""
    large, small = in_a_flow(40000), in_a_flow(15000)
    return (
        large["per_bee_g"] > small["per_bee_g"] and large["brood_per_bee"] < small["brood_per_bee"]
    )


def foragers_of_three_quarters() -> float:
    """Foragers of a colony of three quarters the size, as a share of the larger one's: Danka."""
    sent = []
    for bees in (24000.0, 18000.0):
        made = colonies(bees, 0.6 * bees)
        live(made, even_days(14, day=120, mean_c=15.0, hours=6.0, nectar=0.4))
        sent.append(float(np.median(made["foragers"])))
    return sent[1] / sent[0]

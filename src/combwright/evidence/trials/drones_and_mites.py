"""Drone brood: when it begins, and what it does for mites; mites carried in by season."""

from datetime import date
from functools import cache

import numpy as np

from combwright.evidence.simulated_colonies import MEMBERS, ON, SEED, colonies, even_days, live
from combwright.evidence.simulated_yards import SimulatedYard
from combwright.simulation import observe
from combwright.simulation.begin import Described
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.columns import CAGED
from combwright.simulation.hands import actions
from combwright.simulation.luck import luck
from combwright.simulation.run import run

SEEN = 10.0  # drones on the combs that a keeper notices; judgement
CUTS = (24, 48, 72)  # days on which sealed drone brood is cut out, of ninety


@cache
def grown(*, cut: bool = False, drone_share: float = BIOLOGY.drone_share) -> float:
    """Mites after ninety days of a steady nest, for each at first."""
    made = colonies(24000.0, 21000.0)
    made["mites"], made["swarm_readiness"] = 100.0, 0.0
    chance = luck(SEED, "trial", ON, 90, MEMBERS)
    for day in range(90):
        if cut and day in CUTS:
            actions.remove_drone_brood(made)
        even = even_days(1, day=130, mean_c=17.0, hours=6.0, nectar=0.4)
        run(
            made,
            even,
            chance[:, day : day + 1],
            worlds=(BIOLOGY._replace(drone_share=drone_share),),
        )
        made["ripe"], made["pollen"] = 8000.0, 800.0
    return float(np.median(observe.mites(made))) / 100.0


def cutting_slows_mites() -> bool:
    """Tell whether mites grow more slowly when drone brood is cut out: Charrière 2003."""
    return grown(cut=True) < grown()


def drone_brood_speeds_mites() -> bool:
    """Tell whether mites grow faster with more drone brood: Calis 1999."""
    return grown(drone_share=0.1) > grown(drone_share=0.0)


def first_drones() -> float:
    """Day of the year on which the first ten drones walk on the combs of a strong colony."""
    yard = SimulatedYard(
        "drones", "Sheffield", date(2026, 3, 1), days=120, colonies=MEMBERS, seed=SEED
    )
    described = Described(frames_of_bees=8.0, frames_of_brood=3.0, stores_kg=12.0, has_queen=True)
    made = yard.begin(described)
    for day in yard.by_day(made):
        if np.median(made["drones"]) >= SEEN:
            return float(yard.first.timetuple().tm_yday + day)
    return float("nan")


def _carried_in(day: int) -> float:
    """Mites carried into a colony in a month from a day of the year on."""
    made = colonies(15000.0, 0.0)
    made["queen"], made["invaders"], made["mites"] = CAGED, 5.0, 0.0
    live(made, even_days(30, day=day, mean_c=12.0, hours=3.0, nectar=0.3))
    return float(np.median(observe.mites(made)))


def carried_in_autumn_against_summer() -> float:
    """Mites carried in in September and October against June and July: Greatti 1992."""
    return _carried_in(250) / _carried_in(165)

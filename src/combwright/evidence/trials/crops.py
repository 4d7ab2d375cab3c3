"""What a crop depends on: brood that is lost, and the queen's age."""

from datetime import date
from functools import cache

import numpy as np

from combwright.evidence.simulated_yards import SimulatedYard
from combwright.simulation import observe
from combwright.simulation.begin import Described
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.hands.keeper import Keeping

SUMMER = SimulatedYard(
    "crop", "Dublin Airport", date(2026, 3, 20), days=165, colonies=60, seed=20260320
)
LEFT = 1.0 - BIOLOGY.egg_death  # of the eggs each day


@cache
def summer(brood_left: float = 1.0, queen_year: int = 2025) -> dict[str, float]:
    """Give bees at their most and honey of a summer, of whose brood only so much is left."""
    described = Described(
        frames_of_bees=6.5,
        frames_of_brood=2.0,
        stores_kg=8.0,
        mites=40.0,
        queen_year=queen_year,
        has_queen=True,
    )
    made = SUMMER.begin(described)
    world = BIOLOGY._replace(egg_death=1.0 - LEFT * brood_left ** (1.0 / 3.0))
    kept = SUMMER.keep(made, Keeping(), worlds=(world,))
    return {
        "bees": float(np.median(kept.trace["adults"].max(axis=0))),
        "honey_kg": float(kept.honey_taken_kg[-1].mean() + observe.honey_above_kg(made).mean()),
    }


def share_left(what: str, brood_left: float) -> float:
    """Give bees or honey of colonies that lose brood as a share of those that do not."""
    return summer(brood_left)[what] / summer()[what]


def honey_of_old_queens() -> float:
    """Honey with queens of two years as a share of that with queens of one."""
    return summer(queen_year=2024)["honey_kg"] / summer(queen_year=2025)["honey_kg"]

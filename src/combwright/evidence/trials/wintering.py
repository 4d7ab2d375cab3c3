"""Winters in hives that differ, and in colonies that differ in size; brood in winter."""

from datetime import date
from functools import cache

import numpy as np

from combwright.evidence.simulated_colonies import colonies, even_days, live
from combwright.evidence.simulated_colonies import wintering as cluster
from combwright.evidence.simulated_lives import CLOSED, lives
from combwright.evidence.simulated_yards import SimulatedYard
from combwright.simulation import observe
from combwright.simulation.begin import Described
from combwright.simulation.columns import CAGED
from combwright.simulation.hands.keeper import Keeping
from combwright.terms.set_up import SetUp

BROOD_SEEN = 20.0  # cells, the least that is found on a comb; judgement
COLONIES, SEED = 60, 20261101


def with_brood(month: int, *, after_christmas: bool, place: str = "Armagh") -> float:
    """Share of colonies with any brood in the middle of a month, in the years after the first."""
    shares = []
    life = lives()[place]
    for year in CLOSED:
        autumn = life.first.year + year - 1
        day = date(autumn + after_christmas, month, 15)
        alive = life.alive(day)
        shares.append(float(np.mean(life.on("brood", day)[alive] > BROOD_SEEN)))
    return float(np.mean(shares))


def brood_in_december(place: str = "Armagh") -> float:
    """Mean cells of brood in mid December, in the years after the first."""
    life = lives()[place]
    days = [date(life.first.year + year - 1, 12, 15) for year in CLOSED]
    return float(np.mean([life.on("brood", day)[life.alive(day)].mean() for day in days]))


def crowded_winter(bees_per_litre: float) -> float:
    """Honey that each of 9600 bees uses a day in a mild winter with brood: Harbo 1993. [mg]."""
    made = colonies(9600.0, 3000.0, frames=round(9600.0 / bees_per_litre / 3.2), stores_kg=6.0)
    live(made, even_days(35, day=20, mean_c=11.0, hours=2.0, pollen=0.3))
    honey_g = float(np.median(made["used_total"])) / observe.SUGAR_IN_HONEY
    return 1000.0 * honey_g / 35.0 / 9600.0


def late_winter_costs_more(place: str = "Dublin Airport") -> bool:
    """Tell whether more is used in January and February than in October to December: Conwy."""
    life, weeks = lives()[place], []
    for year in CLOSED:
        autumn = life.first.year + year - 1
        early = life.through("used_g", date(autumn, 10, 1), date(autumn + 1, 1, 1)).mean()
        late = life.through("used_g", date(autumn + 1, 1, 1), date(autumn + 1, 3, 1)).mean()
        weeks.append(late - early)
    return float(np.mean(weeks)) > 0.0


def warmer_days_cost_more() -> bool:
    """Tell whether a wintering colony uses more at 6 °C than at 0: Norrström 2021."""
    return cluster(10000, 6.0)["honey_g"] > cluster(10000, 0.0)["honey_g"]


def small_live_as_large() -> bool:
    """Tell whether as many of 4400 bees as of 34 000 live through a mild winter: Harbo 1983."""
    return _live_through(4400.0) == _live_through(34000.0)


def _live_through(bees: float, mean_c: float = 11.0) -> float:
    made = colonies(bees, 0.0, stores_kg=15.0)
    made["winter"], made["nest"], made["foragers"], made["queen"] = bees, 0.0, 0.0, CAGED
    live(made, even_days(70, day=345, mean_c=mean_c))
    return float(np.mean(made["lost_to"] == 0.0))


@cache
def used_in(hive: str) -> float:
    """Honey that a colony uses from November to March in a hive, near Sheffield. [kg]."""
    set_up = SetUp(hive=hive, frames=11)
    yard = SimulatedYard("winter", "Sheffield", date(2026, 11, 1), 139, COLONIES, SEED, set_up)
    described = Described(
        frames_of_bees=8.0, stores_kg=18.0, mites=30, queen_year=2026, has_queen=True
    )
    kept = yard.keep(yard.begin(described), Keeping())
    return float(np.median(kept.trace["used_g"].sum(axis=0))) / 1000.0 / observe.SUGAR_IN_HONEY


def insulation_saves_food() -> bool:
    """Tell whether a colony uses less in polystyrene than in timber: St. Clair 2022."""
    return used_in("national polystyrene") < used_in("national timber")

"""Simulated colonies in published trials: even days, and the answer to compare.

All colonies of a trial have the middle of every own parameter, so that nothing but what the trial
varied differs.
"""

from datetime import date
from functools import cache
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.columns import CAGED, LAYING, TRAITS
from combwright.simulation.hands import actions
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp

Floats = NDArray[np.float64]
ON, SEED, MEMBERS = date(2026, 6, 1), 11, 60
BROOD = ("eggs", "larvae", "sealed", "drone_open", "drone_sealed")
J_PER_DAY = 86400.0
ALIVE = 3000.0  # bees from which a colony in September is one


def even_days(
    days: int,
    *,
    day: int,
    mean_c: float,
    hours: float = 0.0,
    nectar: float = 0.0,
    pollen: float = 0.6,
) -> Floats:
    """Make days that are all alike, [1, day, column]."""
    table = np.zeros((1, days, 8))
    table[0, :, :7] = (hours, mean_c, mean_c + 4.0, mean_c - 3.0, nectar, pollen, 0.3)
    table[0, :, 7] = day + np.arange(days)
    return table


def colonies(bees: float, brood: float, *, frames: int = 11, stores_kg: float = 12.0) -> Any:  # noqa: ANN401  # records
    """Make equal colonies of so many bees and cells of brood, without mites."""
    made = begin(
        catalogue().hive("national timber"),
        SetUp(frames=11),
        Described(
            frames_of_bees=3.0, frames_of_brood=1.0, stores_kg=stores_kg, mites=0, has_queen=True
        ),
        on=ON,
        members=MEMBERS,
        seed=SEED,
        colony="trial",
    )
    made["frames"], made["drawn"] = frames, frames * made["cells_per_frame"]
    for trait in TRAITS:
        made[trait] = 1.0
    for column in BROOD:
        made[column] = 0.0
    made["eggs"], made["larvae"], made["sealed"] = brood / 21, brood / 21, brood / 21
    made["nest"], made["foragers"], made["winter"] = 0.75 * bees, 0.25 * bees, 0.0
    made["ripe"], made["pollen"], made["drones"] = 800.0 * stores_kg, 800.0, 0.0
    made["queen_age"], made["mites"], made["invaders"] = 300.0, 0.0, 0.0
    return made


def live(made: Any, days: Floats) -> Any:  # noqa: ANN401  # records
    """Let colonies live through days, in place, and give them."""
    run(made, days, luck(SEED, "trial", ON, days.shape[1], MEMBERS))
    return made


def wintering(bees: float, mean_c: float, days: int = 30) -> dict[str, float]:
    """Let a broodless winter cluster live: honey of each bee and of all a day, and heat."""
    made = colonies(bees, 0.0, stores_kg=15.0)
    made["winter"], made["nest"], made["foragers"] = bees, 0.0, 0.0
    made["queen"] = CAGED
    live(made, even_days(days, day=5, mean_c=mean_c))
    sugar = float(np.median(made["used_total"])) / days
    return {
        "honey_g": sugar / observe.SUGAR_IN_HONEY,
        "honey_mg_per_bee": 1000.0 * sugar / observe.SUGAR_IN_HONEY / bees,
        "heat_w": sugar * BIOLOGY.sugar_j_per_g / J_PER_DAY,
    }


def a_hundred_eggs() -> dict[str, float]:
    """Follow eggs of one day in the middle of a warm, fed nest, as shares of a hundred."""
    made = colonies(15000.0, 0.0)
    made["eggs"][:, 0], made["queen"] = 1000.0, CAGED
    days = even_days(24, day=150, mean_c=16.0)
    left = []
    for day in range(24):
        run(made, days[:, day : day + 1], luck(SEED, "trial", ON, 1, MEMBERS))
        left.append({name: float(made[name][0].sum()) / 10.0 for name in ("larvae", "sealed")})
    under_caps = [day["sealed"] for day in left]
    return {
        "larvae": next(day["larvae"] for day in left if day["larvae"] > 0.0),
        "sealed": next(cells for cells in under_caps if cells > 0.0),
        "adults": [cells for cells in under_caps if cells > 0.0][-1] * (1 - BIOLOGY.sealed_death),
        "days": float(sum(any(day.values()) for day in left) + 3),
    }


def drone_days() -> float:
    """Mean days from egg to drone of the model's chain of spells."""
    made = colonies(15000.0, 0.0)
    made["drone_open"][:, 0], made["queen"] = 1000.0, CAGED
    left = [1000.0]
    for day in range(120):
        live(made, even_days(1, day=100 + day, mean_c=16.0))
        left.append(float(made["drone_open"][0].sum() + made["drone_sealed"][0].sum()))
    return float(np.sum(left) / 1000.0)


def queen_days() -> dict[str, float]:
    """Days from the loss of a queen to the virgin, and to her eggs in fine weather."""
    made = colonies(15000.0, 12000.0)
    actions.change_queen(made, "removed")
    when: dict[str, float] = {}
    for day in range(60):
        fine = even_days(1, day=150 + day, mean_c=18.0, hours=8.0, nectar=0.4)
        fine[0, 0, 6] = 1.0
        live(made, fine)
        for name, state in (("cell", 1.0), ("virgin", 2.0), ("laying", float(LAYING))):
            if name not in when and np.median(made["queen"]) == state:
                when[name] = day + 1.0
    return when


@cache
def brood_by_size() -> dict[int, float]:
    """Brood per bee after 19 days from none, at 230 bees a litre: Harbo 1986 (active season)."""
    found = {}
    for bees in (2300, 4500, 9000, 17000, 35000):
        made = colonies(float(bees), 0.0, frames=max(3, round(bees / 230 / 3.2)), stores_kg=3.0)
        live(made, even_days(19, day=140, mean_c=21.0, hours=7.0, nectar=0.3))
        found[bees] = float(np.median(observe.brood(made) / bees))
    return found


def size_of_most_brood_per_bee() -> int:
    """Give the colony size with most brood per bee."""
    found = brood_by_size()
    return max(found, key=lambda bees: found[bees])


def brood_per_bee(large: int, small: int) -> float:
    """Give the brood per bee of a large colony against that of a small one."""
    found = brood_by_size()
    return found[large] / found[small]


@cache
def honey_by_density() -> tuple[float, ...]:
    """Honey change a day at 100, 200, 300 and 500 bees a litre, 9600 bees: Harbo 1993. [g]."""
    found = []
    for per_litre in (100, 200, 300, 500):
        made = colonies(9600.0, 4000.0, frames=round(9600 / per_litre / 3.2), stores_kg=3.0)
        before = observe.stores_kg(made).copy()
        live(made, even_days(20, day=110, mean_c=15.0, hours=6.0, nectar=0.4))
        found.append(float(np.median(observe.stores_kg(made) - before)) * 1000.0 / 20.0)
    return tuple(found)


def crowding_saves_honey() -> bool:
    """Tell whether more bees a litre always keep more honey."""
    found = honey_by_density()
    return all(a < b for a, b in pairwise(found))


def crowding_gain_g() -> float:
    """Honey a day that 500 bees a litre gain over 100. [g]."""
    found = honey_by_density()
    return found[-1] - found[0]


def bees_gone_with_the_prime_swarm() -> float:
    """Share of the adults that leave when a colony swarms."""
    made = colonies(30000.0, 25000.0)
    made["swarm_clock"] = 9.0
    before = observe.adults(made)
    fine = even_days(1, day=150, mean_c=18.0, hours=8.0)
    chance = luck(SEED, "trial", ON, 1, MEMBERS)
    chance[:, :, 3] = 0.0
    run(made, fine, chance)
    return float(1.0 - np.median(observe.adults(made) / before))


def after_a_prime_swarm() -> dict[str, float]:
    """Bees left, and those before winter, of colonies that lost three quarters of the bees."""
    made = colonies(30000.0, 25000.0, stores_kg=12.0)
    made["queen"], made["queen_clock"] = 1.0, 9.0
    for caste in ("nest", "foragers"):
        made[caste] *= 0.25
    left = float(np.median(observe.adults(made)))
    season = even_days(100, day=160, mean_c=16.0, hours=6.0, nectar=0.35)
    season[0, :, 6] = 0.35
    live(made, season)
    queenright = made["queen"] == LAYING
    return {
        "left": left,
        "in_september": float(np.median(observe.adults(made)[queenright])),
        "alive": float(np.mean(observe.adults(made) > ALIVE)),
        "queenright": float(np.mean(queenright)),
    }


def cells_of_full_food(nectar_share: float) -> dict[str, float]:
    """Ripen nectar of a sugar share: nectar and driven-off water for a kilogram of honey. [kg]."""
    made = colonies(20000.0, 0.0)
    sugar = 2000.0
    made["unripe"], made["water"] = sugar, sugar * (1.0 - nectar_share) / nectar_share
    made["queen"], water = CAGED, made["water"].copy()
    live(made, even_days(25, day=160, mean_c=18.0))
    honey_kg = (sugar - float(np.median(made["unripe"]))) / 1000.0 / observe.SUGAR_IN_HONEY
    gone = float(np.median(water - made["water"])) / 1000.0
    return {"nectar_kg": (sugar + float(water[0])) / 1000.0 / honey_kg, "water_kg": gone / honey_kg}

"""Where the days went otherwise than any rule of the model says.

No set of the model's numbers is right in everything, and what is counted at the hive stands above
what was forecast. Before each note all members therefore have their bees, brood, food, mites and
own parameters moved a little, and some by far more than the rules allow; where the note agrees with
them, the belief goes with the note, and where notes keep surprising it, it widens. Food that went
as it goes with robbers counts as robbed.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.numbers import WEEK_DAYS, number
from combwright.simulation import observe
from combwright.simulation.columns import copied

# What moves together, and the number that says how far in a week.
MOVED: Final = {
    ("nest", "foragers", "winter"): "otherwise_adults",
    ("eggs", "larvae"): "otherwise_laying",
    ("sealed",): "otherwise_sealed",
    ("ripe", "unripe", "water", "super_ripe"): "otherwise_food",
    ("mites", "mites_worker", "mites_drone"): "otherwise_mites",
    ("pollen",): "otherwise_pollen",
    ("rearing",): "otherwise_rearing",
    ("queen_potential",): "otherwise_queen_potential",
    ("forager_mortality",): "otherwise_forager_mortality",
    ("forage_success",): "otherwise_forage_success",
    ("consumption",): "otherwise_consumption",
    ("brood_mortality",): "otherwise_brood_mortality",
    ("mite_growth",): "otherwise_mite_growth",
}


def gone_otherwise(
    colonies: NDArray[np.void], days: float, rng: np.random.Generator, *, wider: float = 1.0
) -> NDArray[np.void]:
    """Give members that have lived through the days a little otherwise than the model says.

    ``days`` are those since the last note. Some have by far more: so many times more of them,
    and with spreads as many times ``wider``, where the last notes surprised.
    """
    found = copied(colonies)
    weeks = days / WEEK_DAYS
    share = min(number("otherwise_most"), number("otherwise_weekly") * weeks * wider)
    moved = np.where(rng.random(len(found)) < share, 1.0, number("otherwise_all"))
    further = wider * np.sqrt(np.clip(weeks, 1.0, number("otherwise_weeks")))  # they add as luck
    for columns, name in MOVED.items():
        sd = further * number(name)
        factor = np.exp(moved * sd * rng.standard_normal(len(found)))
        for column in columns:
            held = found[column]
            found[column] = held * (factor if held.ndim == 1 else factor[:, None])
        if name == "otherwise_food":
            gone = factor < number("robbed_left_high")
            found["robbed"] += gone & (observe.stores_kg(colonies) > number("robbed_worth"))
    return found

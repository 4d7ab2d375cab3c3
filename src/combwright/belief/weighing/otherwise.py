"""Where the days went otherwise than any rule of the model says.

No set of the model's numbers is right in everything, and what is counted at the hive stands above
what was forecast. Before each note all members therefore have their bees, brood, food, mites and
own parameters moved a little, and some by far more than the rules allow; where the note agrees with
them, the belief goes with the note, and where notes keep surprising it, it widens. Own parameters
are drawn back as they are moved, so that they stay what a colony's can be. Food that went as it
goes with robbers counts as robbed.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.numbers import WEEK_DAYS, number
from combwright.simulation import observe
from combwright.simulation.begin import SPREAD
from combwright.simulation.columns import copied

Floats = NDArray[np.float64]

# What of a colony moves together, and the number that says how far in a week.
MOVED: Final = {
    ("nest", "foragers", "winter"): "otherwise_adults",
    ("eggs", "larvae"): "otherwise_laying",
    ("sealed",): "otherwise_sealed",
    ("ripe", "unripe", "water", "super_ripe"): "otherwise_food",
    ("mites", "mites_worker", "mites_drone"): "otherwise_mites",
    ("pollen",): "otherwise_pollen",
}
# A colony's own parameters, and the numbers that say how far each goes in a week.
OWN: Final = {
    "queen_potential": "otherwise_queen_potential",
    "forager_mortality": "otherwise_forager_mortality",
    "forage_success": "otherwise_forage_success",
    "consumption": "otherwise_consumption",
    "brood_mortality": "otherwise_brood_mortality",
    "mite_growth": "otherwise_mite_growth",
    "rearing": "otherwise_rearing",
}
# How much colonies differ in each, to which it is drawn back; of some hardly a note speaks.
DIFFER: Final = {trait: sd.value for trait, sd in SPREAD.items()} | {
    "rearing": number("rearing_spread")
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
    for trait, differ in DIFFER.items():
        sd = further * number(OWN[trait]) if trait in OWN else 0.0
        found[trait] = _moved_own(found[trait], moved, differ, sd, rng)
    return found


def _moved_own(
    values: Floats, moved: Floats, differ: float, sd: float, rng: np.random.Generator
) -> Floats:
    r"""Move an own parameter, and draw it back as far towards what colonies are, [member].

    .. math:: x' = m + \sqrt{1 - s^2 / S^2}\,(x - m) + s\,\epsilon

    in logarithms, *m* of a colony that is as usual, *S* the spread that it keeps over the years: of
    colonies (``differ``), and of what the model has wrong (``sd``). What no note speaks of would
    wander off else, or be taken for known. *s* is the step, as far as a member is ``moved``.
    """
    most = float(np.hypot(differ, sd))
    step = moved * (sd or differ)
    kept = np.sqrt(1.0 - (step / most) ** 2)
    middle = -0.5 * differ * differ
    apart = np.log(values) - middle
    drawn = step * rng.standard_normal(len(values))
    return np.asarray(np.exp(middle + kept * apart + drawn))

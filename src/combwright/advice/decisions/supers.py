"""The next super: whether and when it goes on, and what a set-up is worth."""

from typing import Any, Final

import numpy as np

from combwright.advice.decisions.reserve import reserve_kg
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.situation import Situation
from combwright.advice.stacking import steps_to
from combwright.advice.trial import Tried, doing, try_all
from combwright.simulation import observe
from combwright.terms.entries import Feed
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("supers")
SUPER_COST: Final = PARAMETERS["cost"].value
MOST_SUPERS: Final = PARAMETERS["most"].value
ABOVE_BEES: Final = PARAMETERS["above_bees"].value
BELOW_BEES: Final = PARAMETERS["below_bees"].value
DUE: Final = (
    "A super is due, but syrup was given in the last week and might be carried up: it goes on at "
    "the next visit."
)


def with_super(situation: Situation, chosen: SetUp) -> tuple[SetUp, Tried] | None:
    """Put a super on where it gains more than its trouble, and nothing fed can get into it.

    With and without are both tried unfed, so that syrup is not weighed against honey. Where stores
    fall below the reserve it goes on later: what must be fed soon is not given a super.
    """
    if not _may_be_supered(situation, chosen):
        return None
    more = chosen.model_copy(update={"supers": chosen.supers + 1, "excluder": True})
    hive, now = situation.standing.hive, situation.standing.set_up
    both = [doing(situation, steps_to(hive, now, each)) for each in (chosen, more)]
    without, tried = try_all(situation, both)
    limits = situation.limits
    within = (
        tried.chances["hunger"] <= limits.hunger
        and (fed_lately(situation) or tried.chances["syrup in honey"] <= limits.syrup_in_honey)
        and tried.chances["chilled"] <= max(limits.chilled, without.chances["chilled"])
    )
    before = float(np.median(observe.stores_kg(situation.colonies)))
    after = float(np.median(observe.stores_kg(tried.colonies)))
    lives_on_nectar = after >= min(before, reserve_kg(situation))
    gained = worth(tried, more) - worth(without, chosen)
    return (more, tried) if within and lives_on_nectar and gained > SUPER_COST else None


def is_near_its_super(situation: Situation, chosen: SetUp) -> bool:
    """Tell whether the first super may go on at one of the next visits."""
    in_time = situation.on.timetuple().tm_yday >= PARAMETERS["flows_from"].value
    return in_time and chosen.supers == 0 and _may_be_supered(situation, chosen)


def _may_be_supered(situation: Situation, chosen: SetUp) -> bool:
    """Tell whether the box is full in the season of supers."""
    hive = situation.standing.hive
    in_season = is_in_season(situation.on, PARAMETERS, "season")
    is_full = chosen.frames >= hive.frames - 1
    return hive.honey_super is not None and chosen.supers < MOST_SUPERS and in_season and is_full


def fed_lately(situation: Situation) -> bool:
    """Tell whether syrup may still be about to be carried up, however sure the belief is."""
    given = [e.on for e in situation.history if isinstance(e, Feed) and e.feed == "syrup"]
    return bool(given) and (situation.on - max(given)).days <= PARAMETERS["ripens_in"].value


def worth(tried: Tried, candidate: SetUp) -> float:
    """Weigh bees, honey, the chance of a swarm and the bees that stand about, in bees."""
    swarm = PARAMETERS["swarm_bees"].value * tried.chances["swarm"]
    idle = PARAMETERS["crowded"].value * _beyond_frames(tried.colonies, candidate)
    below = float(np.mean(observe.stores_below_kg(tried.colonies)))
    return tried.bees + ABOVE_BEES * tried.honey_kg + BELOW_BEES * below - swarm - idle


def _beyond_frames(colonies: Any, set_up: SetUp) -> float:
    """Count the bees that find no comb to cover."""
    places = set_up.frames + PARAMETERS["frames"].value * set_up.supers
    beyond = np.maximum(observe.frames_of_bees(colonies) - places, 0.0)
    return float(np.mean(beyond * colonies["bees_per_frame"]))

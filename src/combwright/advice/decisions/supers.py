"""The next super: whether and when it goes on, and what a set-up is worth."""

from typing import Any, Final

import numpy as np

from combwright.advice.decisions.food import reserve_kg
from combwright.advice.situation import Situation
from combwright.advice.trial import Tried, given, try_all
from combwright.simulation import observe
from combwright.terms.entries import Feed
from combwright.terms.set_up import SetUp

SUPER_COST: Final = 50.0  # bees' worth to be gained by lifting on a super; judgement
SUPER_SEASON: Final = (
    100,
    206,
)  # days of the year in which a super may go on: later none fills; judgement
RIPENS_IN: Final = 7  # days after the last syrup in which no super goes on; judgement
MOST_SUPERS: Final = 4  # on one hive: more is lifted by nobody; judgement
FLOWS_FROM: Final = 121  # day of the year (1 May) from which a super may go on any week; judgement
DUE: Final = (
    "A super is due, but syrup was given in the last week and might be carried up: it goes on at "
    "the next visit."
)
CROWDED: Final = 0.3  # worth lost of bees that find no comb to cover: idle, and swarming; judgement
SUPER_FRAMES: Final = 5.0  # frames of bees that a super takes up; judgement
ABOVE_BEES: Final = 500.0  # bees that a kilogram of honey above is worth: 10 euros; judgement
BELOW_BEES: Final = 100.0  # and a kilogram below, which saves as much sugar; judgement


def with_super(situation: Situation, chosen: SetUp) -> tuple[SetUp, Tried] | None:
    """Put a super on where it gains more than its trouble, and nothing fed can get into it.

    With and without are both tried unfed, so that syrup is not weighed against honey. Where stores
    fall below the reserve it goes on later: what must be fed soon is not given a super.
    """
    if not _may_be_supered(situation, chosen):
        return None
    more = chosen.model_copy(update={"supers": chosen.supers + 1, "excluder": True})
    fraction = situation.syrup_fraction  # of a feed of nothing
    both = [given(situation, each, 0, fraction) for each in (chosen, more)]
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
    in_time = situation.on.timetuple().tm_yday >= FLOWS_FROM
    return in_time and chosen.supers == 0 and _may_be_supered(situation, chosen)


def _may_be_supered(situation: Situation, chosen: SetUp) -> bool:
    """Tell whether the box is full in the season of supers."""
    hive = situation.standing.hive
    first, last = SUPER_SEASON
    in_season = first <= situation.on.timetuple().tm_yday <= last
    is_full = chosen.frames >= hive.frames - 1
    return hive.honey_super is not None and chosen.supers < MOST_SUPERS and in_season and is_full


def fed_lately(situation: Situation) -> bool:
    """Tell whether syrup may still be about to be carried up, however sure the belief is."""
    given = [e.on for e in situation.history if isinstance(e, Feed) and e.feed == "syrup"]
    return bool(given) and (situation.on - max(given)).days <= RIPENS_IN


def worth(tried: Tried, candidate: SetUp) -> float:
    """Weigh bees, honey, the chance of a swarm and the bees that stand about, in bees."""
    swarm = 4000.0 * tried.chances["swarm"]
    idle = CROWDED * _beyond_frames(tried.colonies, candidate)
    below = float(np.mean(observe.stores_below_kg(tried.colonies)))
    return tried.bees + ABOVE_BEES * tried.honey_kg + BELOW_BEES * below - swarm - idle


def _beyond_frames(colonies: Any, set_up: SetUp) -> float:
    """Count the bees that find no comb to cover."""
    places = set_up.frames + SUPER_FRAMES * set_up.supers
    beyond = np.maximum(observe.frames_of_bees(colonies) - places, 0.0)
    return float(np.mean(beyond * colonies["bees_per_frame"]))

"""The next super: whether and when it goes on."""

from dataclasses import dataclass
from typing import Final

from combwright.advice.decisions.stacks import stepped
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.season_ahead import CLOSE_MEMBERS
from combwright.advice.situation import Situation
from combwright.advice.stacking import steps_to
from combwright.advice.trial import Tried, doing, try_all
from combwright.advice.weighing import Gain, gain, weigh
from combwright.simulation import observe
from combwright.terms.entries import Feed
from combwright.terms.ranked import median
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("supers")
MOST_SUPERS: Final = PARAMETERS["most"].value
DUE: Final = (
    "A super is due, but syrup was given in the last week and might be carried up: it goes on at "
    "the next visit."
)


@dataclass(frozen=True)
class Supered:
    """A super that goes on: the set-up with it, what came of it, and what it is worth."""

    set_up: SetUp
    tried: Tried
    gain: Gain


def with_super(situation: Situation, chosen: SetUp) -> Supered | None:
    """Put a super on where it is worth its trouble, and nothing fed can get into it.

    A box that bees cover, and that is all but full, is filled with it. With and without are both
    tried unfed, so that syrup is not weighed against honey.
    """
    full = _filled(situation, chosen)
    if full is None or not _may_be_supered(situation):
        return None
    more = full.model_copy(update={"supers": chosen.supers + 1, "excluder": True})
    hive, now = situation.standing.hive, situation.standing.set_up
    works = [steps_to(hive, now, each) for each in (chosen, more)]
    both = [doing(situation, work) for work in works]
    without, tried = try_all(situation, both)
    limits = situation.limits
    within = (
        tried.chances["hunger"] <= limits.hunger
        and (fed_lately(situation) or tried.chances["syrup in honey"] <= limits.syrup_in_honey)
        and tried.chances["chilled"] <= max(limits.chilled, without.chances["chilled"])
    )
    if not within:
        return None
    plain, supered = weigh(situation, both, works, CLOSE_MEMBERS)
    brought = gain(supered, plain)
    return Supered(more, tried, brought) if brought.is_worth_it else None


def is_near_its_super(situation: Situation, chosen: SetUp) -> bool:
    """Tell whether the first super may go on at one of the next visits."""
    has_bees = situation.bees >= PARAMETERS["near_bees"].value
    is_full = _lacks(situation, chosen) <= 0
    return has_bees and chosen.supers == 0 and is_full and _may_be_supered(situation)


def _may_be_supered(situation: Situation) -> bool:
    """Tell whether another super fits in the season of supers, and the nest is not bare of food."""
    in_season = is_in_season(situation.on, PARAMETERS, "season")
    is_fit = situation.standing.hive.honey_super is not None
    is_fit = is_fit and situation.standing.set_up.supers < MOST_SUPERS
    stores_kg = median(observe.stores_kg(situation.colonies))
    return is_fit and in_season and stores_kg >= PARAMETERS["least_stores_kg"].value


def _filled(situation: Situation, chosen: SetUp) -> SetUp | None:
    """Give the box full of frames, as it is chosen or filled: from few fewer that bees cover."""
    now = situation.standing.set_up
    lacking = _lacks(situation, now)
    if lacking > 0 and (lacking > PARAMETERS["lacking"].value or situation.bees < now.frames):
        return None
    if _lacks(situation, chosen) <= 0:
        return chosen
    return next(iter(stepped(situation, lacking)), None) if lacking > 0 else None


def _lacks(situation: Situation, chosen: SetUp) -> int:
    """Count the frames that a box lacks to be full: one place may stay empty."""
    return situation.standing.hive.frames - 1 - chosen.frames


def fed_lately(situation: Situation) -> bool:
    """Tell whether syrup may still be about to be carried up, however sure the belief is.

    A little, or what was given days ago and is mostly eaten and ripened, holds no super up.
    """
    days = PARAMETERS["ripens_in"].value
    about = 0.0
    for entry in situation.history:
        if isinstance(entry, Feed) and entry.feed == "syrup":
            left = 1.0 - (situation.on - entry.on).days / (days + 1.0)
            about += max(0.0, left) * entry.grams
    return about > PARAMETERS["about_g"].value

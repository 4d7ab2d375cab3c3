"""Combs of stores that stand in the way of brood: how many come out of a nest full of them."""

from typing import Final

from combwright.advice.decisions.stacks import empty_frames
from combwright.advice.kit_acts import StoresOut
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.situation import Situation
from combwright.advice.trial import doing, try_all
from combwright.advice.weighing import gain, weigh
from combwright.simulation import observe
from combwright.terms.ranked import median
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("combs")
MOST: Final = int(PARAMETERS["most"].value)


def stores_out(situation: Situation, chosen: SetUp) -> tuple[StoresOut, ...]:
    """Give the combs of stores to take out of a nest that stays so full that they are in the way.

    Drawn ones take their place. More room for the queen must be worth the trouble, or keep the
    limits that the full nest breaks.
    """
    most = _can_be_spared(situation)
    if not most or chosen.supers > situation.standing.set_up.supers:
        return ()
    acts: list[tuple[StoresOut, ...]] = [(), *((StoresOut(combs=n),) for n in range(1, most + 1))]
    arranged = situation.with_set_up(chosen)
    changes = [doing(arranged, each) for each in acts]
    short = [tried.chances["no room"] for tried in try_all(arranged, changes)]
    least = max(min(short), situation.limits.no_room)
    within = next(i for i, chance in enumerate(short) if chance <= least)
    if within:
        return acts[within]
    worth = weigh(arranged, changes, acts)
    best = max(range(len(acts)), key=lambda i: worth[i].money)
    return acts[best] if gain(worth[best], worth[0]).is_worth_it else ()


def _can_be_spared(situation: Situation) -> int:
    """Count the full combs beyond what it must keep, in a nest with hardly an empty one."""
    in_season = is_in_season(situation.on, PARAMETERS, "season")
    is_full = empty_frames(situation) < PARAMETERS["empty_frames"].value
    if not in_season or not is_full or not situation.drawn_frames_to_hand:
        return 0
    below = median(observe.stores_below_kg(situation.colonies))
    over_kg = below - PARAMETERS[f"keeps_{situation.standing.hive.kind}_kg"].value
    return max(0, min(MOST, int(over_kg / situation.standing.hive.frame.stores_full_kg)))

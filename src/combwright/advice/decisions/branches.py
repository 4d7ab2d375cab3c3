"""Branches: what to do instead if the colony turns out different from what was expected.

Each colony has its own for the weaker and for the stronger end, worked out like the plan itself.
What is done at any colony without eggs or with queen cells is the same for all and said once (see
``found``), unless the book thinks it likely here.
"""

from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.decisions.food import Portion
from combwright.advice.decisions.found import Found, charged, from_outside, is_swarm_season, no_eggs
from combwright.advice.decisions.housing import (
    COLD_MONTHS,
    Housing,
    housing,
    is_kept_shut,
    waits_for_a_queen,
)
from combwright.advice.decisions.queen import QueenPlan
from combwright.advice.situation import Situation
from combwright.advice.words.wording import amount_words, chance_words, grams_words, many
from combwright.simulation import observe
from combwright.simulation.columns import LAYING
from combwright.terms.set_up import SetUp

TAIL: Final = 0.2  # share of members that stand for a weaker, and for a stronger colony
FEWEST: Final = 20  # members from which a class is tried
LIKELY: Final = 0.05  # chance from which a finding is named at the colony itself; judgement


def branches(situation: Situation, queens: QueenPlan, chosen: Housing) -> tuple[Found, ...]:
    """Give the weaker and the stronger colony, and what the book thinks likely of its queen.

    A colony that is not opened is told by its weight; with a virgin by what is seen outside, with
    signs of disease by nothing more.
    """
    if is_kept_shut(situation, queens):
        return from_outside() if waits_for_a_queen(situation, queens) else ()
    found = _ends(situation, queens, chosen)
    if situation.signs_at is not None:  # what these ask for would go from hive to hive
        return tuple(found)
    without = float(np.mean(situation.colonies["queen"] != LAYING))
    if without >= LIKELY or not found:
        found.append(_here(no_eggs(), f"no queen is laying: {chance_words(without)}"))
    begun = float(np.mean(situation.colonies["swarm_clock"] > 0.0))
    if begun >= LIKELY and is_swarm_season(situation.on):
        found.append(_here(charged(situation.on), f"cells are begun: {chance_words(begun)}"))
    return tuple(found)


def _here(found: Found, chance: str) -> Found:
    """Name a finding at the colony where the book thinks it likely."""
    return replace(found, found=f"{found.found} (chance that {chance})")


def _ends(situation: Situation, queens: QueenPlan, chosen: Housing) -> list[Found]:
    """Work out the plan anew for the members at either end of what is seen or hefted."""
    hefted = situation.on.month in COLD_MONTHS
    values = observe.stores_kg(situation.colonies) if hefted else situation.frames_of_bees
    step, unit = (1.0, "kg of stores") if hefted else (0.5, "frames of bees")
    ranked = np.argsort(values, kind="stable")
    tail = max(FEWEST, round(TAIL * len(values)))
    low, high = ranked[:tail], ranked[-tail:]
    most, least = values[low].max() / step, values[high].min() / step
    if most < 1.0:  # nothing that could be told apart by eye or hand
        return []
    return [
        _end(situation, low, f"at most {step * np.floor(most):g} {unit}", queens, chosen),
        _end(situation, high, f"at least {step * np.ceil(least):g} {unit}", queens, chosen),
    ]


def _end(
    situation: Situation,
    members: NDArray[np.intp],
    found: str,
    queens: QueenPlan,
    chosen: Housing,
) -> Found:
    other = housing(situation.with_members(np.sort(members)), queens)
    do = [
        *_going_words(other, chosen),
        *_stack_words(other.room.set_up, chosen.room.set_up),
        *_feed_words(other.food, chosen.food),
    ]
    same = other.food.grams == chosen.food.grams and other.room.set_up == chosen.room.set_up
    holds = "It holds here too. " if same and not do else ""
    return Found(found, tuple(do) or ("Do as planned.",), holds + _need(other.food), other.food)


def _need(food: Portion) -> str:
    """Say what such a colony uses."""
    use = food.decision.inputs["use_g_a_day"]
    stores = food.decision.inputs["stores_kg"]
    return f"It uses about {grams_words(use)} a day and has {stores:.1f} kg."


def _going_words(other: Housing, chosen: Housing) -> list[str]:
    if other.goes == chosen.goes:
        return []
    if other.goes:
        return ["Unite it, if healthy, with a queenright neighbour through newspaper."]
    return ["Let it go on alone."]


def _stack_words(other: SetUp, chosen: SetUp) -> list[str]:
    if (other.frames, other.supers) == (chosen.frames, chosen.supers):
        return []
    beside = many(other.dummy_boards, "dummy board") if other.dummy_boards else "no board"
    above = many(other.supers, "super") if other.supers else "no super"
    return [f"Leave it on {many(other.frames, 'frame')}, {beside}, {above}."]


def _feed_words(food: Portion, fed: Portion) -> list[str]:
    if food.grams == fed.grams:
        return []
    if food.grams == 0:
        return ["Give no feed."]
    return [f"Give {amount_words(food.grams, food.feed)}, {food.per_day_g} g a day."]

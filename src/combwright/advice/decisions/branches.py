"""Branches: what to do instead if the colony turns out different from what was expected.

Each colony has its own for the weaker and for the stronger end, worked out like the plan itself.
What is done at any colony without eggs or with queen cells is the same for all and said once (see
``found``), unless the book thinks it likely here.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.actions import Action
from combwright.advice.bee_acts import AsPlanned, GoOnAlone, Uniting
from combwright.advice.counted import bare_to
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import food, queen, space
from combwright.advice.decisions.found import (
    charged,
    from_outside,
    is_swarm_season,
    no_eggs,
)
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.if_found import IfFound, Quantity
from combwright.advice.decisions.kept_shut import (
    is_cold,
    is_kept_shut,
    nothing_moves,
    waits_for_a_queen,
)
from combwright.advice.decisions.swarm import repaired
from combwright.advice.kit_acts import Feeding, LeaveStack
from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.advice.words.wording import grams_words
from combwright.simulation import observe
from combwright.simulation.columns import LAYING
from combwright.terms.ranked import median
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("branches")
FEWEST: Final = int(PARAMETERS["fewest_members"].value)
LIKELY: Final = PARAMETERS["likely"].value


@dataclass(frozen=True)
class Side:
    """An end of what may be found, and the way in which a branch there may differ from the plan.

    Few members stand for it, so that what differs the other way is their chance: more bees never
    ask for fewer frames or less feed, more stores never for more feed, nor for other frames.
    """

    code: str
    quantity: Quantity
    frames: int
    supers: int
    feed: int

    def kept_to(
        self, planned: tuple[SetUp, Feeding], told: tuple[SetUp, Feeding]
    ) -> tuple[SetUp, Feeding]:
        """Give stack and portion of a branch where they differ its way, else those of the plan."""
        (now, feed), (stack, portion) = planned, told
        if (stack.supers - now.supers) * self.supers < 0:
            stack, portion = now, feed
        if (stack.frames - now.frames) * self.frames <= 0:
            same = {"frames": now.frames, "dummy_boards": now.dummy_boards}
            stack = stack.model_copy(update=same)
        is_fed_alike = stack.supers == now.supers
        if is_fed_alike and (portion.grams - feed.grams) * self.feed < 0:
            portion = feed
        return stack, portion


WEAKER: Final = Side("at most", "frames of bees", -1, -1, -1)
STRONGER: Final = Side("at least", "frames of bees", 1, 1, 1)
LIGHTER: Final = Side("at most", "kg of stores", 0, -1, 1)
HEAVIER: Final = Side("at least", "kg of stores", 0, 1, -1)


def branches(deciding: Deciding) -> tuple[IfFound, ...]:
    """Give the weaker and the stronger colony, and what the book thinks likely of its queen.

    A colony that is not opened is told by its weight; with a virgin by what is seen outside, with
    signs of disease by nothing more.
    """
    if is_kept_shut(deciding):
        return from_outside() if waits_for_a_queen(deciding) else ()
    situation = deciding.of(after_honey)
    found = _ends(deciding, situation)
    # what these ask for would go from hive to hive, or open it, or save what is not kept
    if nothing_moves(deciding) or goes(deciding):
        return tuple(found)
    without = float(np.mean(situation.colonies["queen"] != LAYING))
    if without >= LIKELY or not found:
        found.append(replace(no_eggs(situation.on), chance=without))
    begun = float(np.mean(situation.colonies["swarm_clock"] > 0.0))
    if begun >= LIKELY and is_swarm_season(situation.on):
        some = np.flatnonzero(situation.colonies["swarm_clock"] > 0.0)
        members = replace(situation.with_members(some), is_branch=True)
        found.append(replace(charged(repaired(members)), chance=begun))
    return tuple(found)


def _ends(deciding: Deciding, situation: Situation) -> list[IfFound]:
    """Work out the plan anew for the members at either end of what is seen or hefted."""
    hefted = is_cold(deciding)
    values = observe.stores_kg(situation.colonies) if hefted else situation.frames_of_bees
    step = PARAMETERS["stores_step" if hefted else "frames_step"].value
    ranked = np.argsort(values, kind="stable")
    tail = max(FEWEST, round(PARAMETERS["tail"].value * len(values)))
    low, high = ranked[:tail], ranked[-tail:]
    most, least = values[low].max(), values[high].min()
    if most < step:  # nothing that could be told apart by eye or hand
        return []
    holds = _held_at_most(situation, hefted=hefted)
    # what is expected is left between the two, for the plan
    expected = round(min(holds, median(values)) / step)
    at_most = step * min(np.floor(most / step), expected - 1)
    at_least = step * max(np.ceil(least / step), expected + 1)
    less, more = (LIGHTER, HEAVIER) if hefted else (WEAKER, STRONGER)
    ends = [(less, low, at_most)] if at_most > 0.0 and most < holds else []
    ends += [(more, high, at_least)] if at_least <= holds else []
    told = [
        replace(_end(deciding, found, side), amount=float(amount)) for side, found, amount in ends
    ]
    if all(isinstance(action, AsPlanned) for each in told for action in each.actions):
        told = []  # that it holds at either end needs no telling
    return _apart(told, _hungry(deciding, situation))


def _apart(ends: list[IfFound], bare: IfFound | None) -> list[IfFound]:
    """Keep the lighter end and next to no stores apart: both are told by weight where it is cold.

    Beside an end that is told by its bees, next to no stores goes first. Where the two come to the
    same, or cannot be told from each other, the end stands for both.
    """
    if bare is None:
        return ends
    if any(each.quantity != bare.quantity for each in ends):
        bare = replace(bare, goes_first=True)
    light = next((e for e in ends if (e.code, e.quantity) == (bare.code, bare.quantity)), None)
    if light is None:
        return [*ends, bare]
    if light.actions == bare.actions or (light.amount or 0.0) <= (bare.amount or 0.0):
        return ends
    others = (each for each in ends if each is not light)
    return [replace(light, over=bare.amount), *others, bare]


def _held_at_most(situation: Situation, *, hefted: bool) -> float:
    """Give the most that can be told of the quantity: no more frames of bees than the stack has."""
    now = situation.standing.set_up
    return float("inf") if hefted or now.supers else float(now.frames)


def _hungry(deciding: Deciding, situation: Situation) -> IfFound | None:
    """Work out what is done where next to no stores are found, unless that is believed already.

    Where a flow would be trusted to feed it, what is done at any colony without food holds.
    """
    kilograms = PARAMETERS["bare_kg"].value
    stores = observe.stores_kg(situation.colonies)
    if median(stores) <= kilograms:
        return None
    some = np.unique(np.linspace(0, len(stores) - 1, FEWEST).astype(np.intp))
    bare = bare_to(situation.with_members(some), kilograms)
    told = _decided(deciding, replace(bare, is_branch=True), LIGHTER)
    is_fed = told.portion is not None and told.portion.grams > 0
    return replace(told, amount=kilograms) if is_fed else None


def _end(deciding: Deciding, found: NDArray[np.intp], side: Side) -> IfFound:
    """Decide as if these members had been found."""
    members = deciding.of(after_honey).with_members(np.sort(found))
    return _decided(deciding, replace(members, is_branch=True), side)


def _decided(deciding: Deciding, situation: Situation, side: Side) -> IfFound:
    """Decide on room and food of what is found; of queen and honey as before."""
    known = {queen.decide: deciding.of(queen.decide), after_honey: situation}
    other = Deciding(situation, known)
    stack, portion = side.kept_to(_asked(deciding), _asked(other))
    actions = tuple(_otherwise(deciding, other, stack, portion))
    holds = "" if actions else "It holds here too. "
    return IfFound(
        code=side.code,
        quantity=side.quantity,
        actions=actions or (AsPlanned(),),
        because=holds + _need(other),
        portion=portion,
    )


def _asked(deciding: Deciding) -> tuple[SetUp, Feeding]:
    """Give the stack and the portion that are decided upon."""
    return deciding.of(space.decide).set_up, deciding.of(food.decide).portion


def _otherwise(
    deciding: Deciding, other: Deciding, stack: SetUp, portion: Feeding
) -> Iterator[Action]:
    """Give what is done otherwise than planned."""
    if goes(other) != goes(deciding):
        yield Uniting(why="weak") if goes(other) else GoOnAlone()
    now, planned = _asked(deciding)
    if (stack.frames, stack.supers) != (now.frames, now.supers):
        yield LeaveStack(frames=stack.frames, dummy_boards=stack.dummy_boards, supers=stack.supers)
    if portion.grams != planned.grams:
        yield portion


def _need(other: Deciding) -> str:
    """Say what such a colony uses."""
    inputs = other.of(food.decide).inputs
    use, stores = inputs["use_g_a_day"], inputs["stores_kg"]
    return f"It uses about {grams_words(use)} a day and has {stores:.1f} kg."

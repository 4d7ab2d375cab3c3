"""Branches: what to do instead if the colony turns out different from what was expected."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.food import Portion, portion
from combwright.advice.situation import Situation
from combwright.advice.space import Space, space
from combwright.advice.swarm import nucleus_plan, swarmed_plan
from combwright.simulation import observe
from combwright.simulation.columns import LAYING

TAIL: Final = 0.2  # share of members that stand for a weaker, and for a stronger colony
FEWEST: Final = 20  # members from which a class is tried


@dataclass(frozen=True)
class Found:
    """A class of what may be found, and what is done then."""

    found: str
    do: tuple[str, ...]
    because: str
    portion: Portion | None = None


def branches(situation: Situation, chosen: Space, fed: Portion) -> tuple[Found, ...]:
    """Give the weaker and the stronger colony, and the colony without eggs or with cells."""
    bees = observe.frames_of_bees(situation.colonies)
    low, high = np.quantile(bees, (TAIL, 1.0 - TAIL))
    low, high = np.floor(2.0 * low) / 2.0, np.ceil(2.0 * high) / 2.0
    found = [
        _strength(situation, bees <= low, f"{low:g} frames of bees or fewer", chosen, fed),
        _strength(situation, bees >= high, f"{high:g} frames of bees or more", chosen, fed),
        _no_eggs(situation),
    ]
    if 105 < situation.on.timetuple().tm_yday < 225:
        found.append(_cells(situation))
    return tuple(each for each in found if each is not None)


def _strength(
    situation: Situation, members: NDArray[np.bool_], found: str, chosen: Space, fed: Portion
) -> Found | None:
    if members.sum() < FEWEST:
        return None
    other = situation.with_members(members)
    room = space(other)
    food = portion(other, room.set_up)
    do = [*_differences(chosen, room), _feed_words(food)]
    because = food.decision.because[0]
    if food.grams == fed.grams and room.set_up == chosen.set_up:
        because = f"The plan holds: {because}"
    return Found(found, tuple(do), because, food)


def _differences(chosen: Space, other: Space) -> list[str]:
    if other.set_up.frames == chosen.set_up.frames and other.set_up.supers == chosen.set_up.supers:
        return []
    supers = other.set_up.supers
    above = f", {supers} super{'s' if supers > 1 else ''}" if supers else ", no super"
    boards = other.set_up.dummy_boards
    beside = f", {boards} dummy board{'s' if boards > 1 else ''}" if boards else ", no board"
    return [f"Leave it on {other.set_up.frames} frames{beside}{above}."]


def _feed_words(food: Portion) -> str:
    if food.grams == 0:
        return "Give no feed."
    return f"Give {food.grams} g of {food.feed} ({food.per_day_g} g a day)."


def _no_eggs(situation: Situation) -> Found:
    chance = float(np.mean(situation.colonies["queen"] != LAYING))
    do = (
        "Look for queen cells, a virgin, or polished cells; do not add a queen yet.",
        "If there is no queen cell: put in a frame with eggs from another healthy colony, marked.",
        "Give no room today; look again in 4 to 5 days for cells on that frame.",
    )
    because = (
        f"The book gives a {chance:.0%} chance that no queen is laying. Eggs are standing for "
        "three days after they are laid; without eggs she has stopped for at least that long."
    )
    return Found("no eggs", do, because)


def _cells(situation: Situation) -> Found:
    started = situation.colonies["swarm_clock"] > 0.0
    chance = float(np.mean(started))
    do = (
        *nucleus_plan(situation),
        *swarmed_plan(situation),
        "One to three cells on the face of a comb: they replace their queen; leave them.",
    )
    because = (
        f"The book gives a {chance:.0%} chance that swarm cells are begun. A cell is sealed 8 days "
        "after its egg, and the swarm leaves about then."
    )
    return Found("queen cells", do, because)

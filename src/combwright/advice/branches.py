"""Branches: what to do instead if the colony turns out different from what was expected.

Each colony has its own for more and for fewer bees, worked out like the plan itself. What is done
at any colony without eggs or with queen cells is the same for all and said once, unless the book
thinks it likely here.
"""

from dataclasses import dataclass, replace
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.food import Portion, portion
from combwright.advice.situation import Situation
from combwright.advice.space import Space, space
from combwright.advice.swarm import nucleus_plan, swarmed_plan
from combwright.advice.wording import amount_words, chance_words, grams_words
from combwright.simulation.columns import LAYING

TAIL: Final = 0.2  # share of members that stand for a weaker, and for a stronger colony
FEWEST: Final = 20  # members from which a class is tried
LIKELY: Final = 0.05  # chance from which a finding is named at the colony itself; judgement
SWARM_SEASON: Final = (105, 225)  # days of the year between which queen cells may be found


@dataclass(frozen=True)
class Found:
    """A class of what may be found, and what is done then."""

    found: str
    do: tuple[str, ...]
    because: str
    portion: Portion | None = None


def branches(situation: Situation, chosen: Space, fed: Portion) -> tuple[Found, ...]:
    """Give the weaker and the stronger colony, and what the book thinks likely of its queen."""
    bees = situation.frames_of_bees
    ranked = np.argsort(bees, kind="stable")
    tail = max(FEWEST, round(TAIL * len(bees)))
    weakest, strongest = ranked[:tail], ranked[-tail:]
    low = np.floor(2.0 * bees[weakest].max()) / 2.0
    high = np.ceil(2.0 * bees[strongest].min()) / 2.0
    found = []
    if low >= 0.5:  # half a frame: what can be told apart by eye
        named = f"{low:g} frames of bees or fewer"
        found.append(_strength(situation, _only(weakest, len(bees)), named, chosen, fed))
        named = f"{high:g} frames of bees or more"
        found.append(_strength(situation, _only(strongest, len(bees)), named, chosen, fed))
    without = float(np.mean(situation.colonies["queen"] != LAYING))
    if without >= LIKELY or not found:
        found.append(_here(_no_eggs(), f"no queen is laying: {chance_words(without)}"))
    begun = float(np.mean(situation.colonies["swarm_clock"] > 0.0))
    if begun >= LIKELY and is_swarm_season(situation.on):
        found.append(_here(_cells(situation.on), f"cells are begun: {chance_words(begun)}"))
    return tuple(found)


def at_any_colony(on: date) -> tuple[Found, ...]:
    """Give the branches that are the same at every colony on a day."""
    cells = (_cells(on),) if is_swarm_season(on) else ()
    return (_no_eggs(), *cells, _signs())


def is_swarm_season(on: date) -> bool:
    """Tell whether queen cells may be found: from mid-April to mid-August."""
    return SWARM_SEASON[0] < on.timetuple().tm_yday < SWARM_SEASON[1]


def _here(found: Found, chance: str) -> Found:
    """Name a finding at the colony where the book thinks it likely."""
    return replace(found, found=f"{found.found} (chance that {chance})")


def _only(chosen: NDArray[np.intp], members: int) -> NDArray[np.bool_]:
    picked = np.zeros(members, dtype=np.bool_)
    picked[chosen] = True
    return picked


def _strength(
    situation: Situation, members: NDArray[np.bool_], found: str, chosen: Space, fed: Portion
) -> Found:
    other = situation.with_members(members)
    room = space(other)
    food = portion(other, room.set_up)
    if food.grams == fed.grams and room.set_up == chosen.set_up:
        return Found(found, ("Do as planned.",), f"It holds here too. {_need(food)}", food)
    do = [*_differences(chosen, room), *_feed_words(food, fed)] or ["Do as planned."]
    return Found(found, tuple(do), _need(food), food)


def _need(food: Portion) -> str:
    """Say what such a colony uses."""
    use = food.decision.inputs["use_g_a_day"]
    stores = food.decision.inputs["stores_kg"]
    return f"It uses about {grams_words(use)} a day and has {stores:.1f} kg."


def _differences(chosen: Space, other: Space) -> list[str]:
    if other.set_up.frames == chosen.set_up.frames and other.set_up.supers == chosen.set_up.supers:
        return []
    supers = other.set_up.supers
    above = f", {supers} super{'s' if supers > 1 else ''}" if supers else ", no super"
    boards = other.set_up.dummy_boards
    beside = f", {boards} dummy board{'s' if boards > 1 else ''}" if boards else ", no board"
    return [f"Leave it on {other.set_up.frames} frames{beside}{above}."]


def _feed_words(food: Portion, fed: Portion) -> list[str]:
    if food.grams == fed.grams:
        return []
    if food.grams == 0:
        return ["Give no feed."]
    return [f"Give {amount_words(food.grams, food.feed)}, {food.per_day_g} g a day."]


def _no_eggs() -> Found:
    do = (
        "Look for queen cells, a virgin, or polished cells; do not add a queen yet.",
        "No queen cell: put in a frame with eggs from another healthy colony, marked.",
        "Add no frames today; look again in 4 to 5 days for cells on the marked one.",
    )
    because = (
        "Eggs stand for three days after they are laid; without any, she has laid none "
        "for at least that long."
    )
    return Found("no eggs", do, because)


def _cells(on: date) -> Found:
    do = (
        *nucleus_plan(on),
        *swarmed_plan(on),
        "Under seven frames of bees: leave the cells, look again in 4 days; it seldom swarms.",
        "One to three cells on the face of a comb: they replace their queen; leave them.",
    )
    because = "A cell is sealed 8 days after its egg is laid, and the swarm leaves about then."
    return Found("queen cells", do, because)


def _signs() -> Found:
    return Found(
        "sunken, discoloured or ropy brood, or a pest new to you",
        (
            "Stop, close the hive, move nothing in or out of this yard.",
            "Report it to the bee inspectors of your country, and wash hands and tools.",
        ),
        "Foulbroods and some pests are notifiable; only the inspector can tell.",
    )

"""What keeps a swarm from being prepared: told before what repairs, where it is worth its price.

Room, supers and brood for a nuc are weighed with the swarm that they hold back by their own
decisions; here stand the cells destroyed as a stop-gap, and an upper box for the brood.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from combwright.advice.actions import Action
from combwright.advice.bee_acts import CutCells, Demaree
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import space
from combwright.advice.decisions.honey import after_honey
from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.advice.trial import doing, try_all
from combwright.advice.weighing import Gain, gain, weigh
from combwright.kit.fits import frames_that_fit

PARAMETERS: Final = numbers("swarm")


@dataclass(frozen=True)
class Prevented:
    """What is done against the swarm, what is left of its chance, and what that is worth."""

    actions: tuple[Action, ...]
    chance: float
    gain: Gain


def prevented(deciding: Deciding) -> Prevented | None:
    """Choose what prevents, if it is worth more than leaving the colony to its plan."""
    situation, planned = deciding.of(after_honey), deciding.of(space.decide).actions
    acts: list[tuple[Action, ...]] = [
        (),
        *_ways(situation, deciding.of(space.decide).set_up.frames),
    ]
    changes = [doing(situation, (*planned, *each)) for each in acts]
    worth = weigh(situation, changes, acts)
    best = max(range(len(acts)), key=lambda i: worth[i].money)
    brought = gain(worth[best], worth[0])
    if not brought.is_worth_it:
        return None
    (tried,) = try_all(situation, [changes[best]])
    return Prevented(acts[best], tried.chances["swarm"], brought)


def _ways(situation: Situation, frames: int) -> Iterator[tuple[Action, ...]]:
    """Give the ways that the stack allows."""
    hive, boxes = situation.standing.hive, situation.standing.set_up.brood_boxes
    again = situation.on + timedelta(days=PARAMETERS["cut_again"].value)
    yield (CutCells(again_by=again),)
    more = min(hive.frames, frames_that_fit(hive, situation.pitch_mm, 0, boxes + 1) - frames)
    is_full = frames >= hive.frames * boxes - 1
    if hive.kind == "hive" and boxes == 1 and is_full and situation.drawn_frames_to_hand:
        yield (Demaree(frames=more, again_by=again),)

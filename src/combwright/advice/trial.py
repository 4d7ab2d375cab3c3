"""Trying candidates on the same ensemble under the same weather and the same luck."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.situation import Situation
from combwright.simulation import observe
from combwright.simulation.actions import arrange, feed
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp

Floats = NDArray[np.float64]
Change = Callable[[Any], None]

CHILLED_SHARE: Final = 0.02  # of the brood, from which losing it to cold counts as harm; judgement
SYRUP_TRACE_G: Final = 20.0  # fed sugar in supers from which honey counts as touched; judgement
ROOM_DAYS: Final = 2.0  # days without room that count as harm
BROOD_BECOMES_BEES: Final = 0.86  # egg to adult: Fukuda & Sakagami 1968, 85.1 of 100


@dataclass(frozen=True)
class Tried:
    """What came of one candidate: the chance of each harm, and what it is worth."""

    chances: dict[str, float]
    bees: float
    honey_kg: float
    syrup_g: float
    room: Floats
    colonies: NDArray[np.void]


def try_all(situation: Situation, changes: Sequence[Change]) -> list[Tried]:
    """Try each change to the colony up to the margin after the next visit.

    Parameters
    ----------
    situation
        The colony, its days ahead and its luck.
    changes
        Each changes records of the state in place.

    Returns
    -------
    list[Tried]
        One for each change, in order.

    """
    members = len(situation.colonies)
    lanes = np.tile(situation.colonies, len(changes))
    _count_afresh(lanes)
    for number, change in enumerate(changes):
        change(lanes[number * members : (number + 1) * members])
    before = observe.brood(lanes)
    days = situation.horizon
    run(lanes, situation.conditions[:, :days], situation.luck[:, :days])
    return [
        _judge(lanes[start : start + members], before[start : start + members])
        for start in range(0, len(lanes), members)
    ]


def given(situation: Situation, set_up: SetUp, grams: int, fraction: float) -> Change:
    """Give the work of a visit as a change: the stack arranged and the feed given."""

    def change(colonies: Any) -> None:
        arrange(colonies, situation.standing.hive, set_up)
        feed(colonies, float(grams), fraction, warmer_k=8.0)

    return change


def _count_afresh(colonies: Any) -> None:
    for column in (
        "hungry_days",
        "short_of_room_days",
        "short_of_room_most",
        "chilled",
        "sour_days",
        "swarmed",
        "robbed",
        "taken_down",
        "super_syrup",
        "gathered_total",
        "used_total",
    ):
        colonies[column] = 0.0


def _judge(colonies: NDArray[np.void], brood_before: Floats) -> Tried:
    chilled = colonies["chilled"] > CHILLED_SHARE * np.maximum(brood_before, 500.0)
    chances = {
        "hunger": _share(colonies["hungry_days"] > 0.0),
        "no room": _share(colonies["short_of_room_most"] >= ROOM_DAYS),
        "chilled": _share(chilled),
        "sour": _share(colonies["sour_days"] > 0.0),
        "syrup in honey": _share(colonies["super_syrup"] > SYRUP_TRACE_G),
        "swarm": _share(colonies["swarmed"] > 0.0),
    }
    to_come = BROOD_BECOMES_BEES * observe.brood(colonies)
    return Tried(
        chances,
        float(np.mean(observe.adults(colonies) + to_come)),
        float(np.mean(observe.honey_above_kg(colonies))),
        float(np.mean(colonies["taken_down"])),
        np.asarray(colonies["room"]).copy(),
        colonies,
    )


def _share(happened: Any) -> float:
    return float(np.mean(happened))

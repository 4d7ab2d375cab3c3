"""Trying candidates on the same ensemble under the same weather and the same luck."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.situation import Situation
from combwright.simulation import observe
from combwright.simulation.hands.actions import feed
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp

Floats = NDArray[np.float64]
Change = Callable[[Any], None]

CHILLED_SHARE: Final = 0.02  # of the brood, from which losing it to cold counts as harm; judgement
SYRUP_TRACE_G: Final = 5.0  # fed sugar in supers: a quarter of what is told of honey; judgement
ROOM_DAYS: Final = 2.0  # days without room that count as harm
HAND_WARM_K: Final = 8.0  # by which hand-warm syrup is warmer at the feeder; judgement
BROOD_BECOMES_BEES: Final = 0.86  # egg to adult: Fukuda & Sakagami 1968, 85.1 of 100


@dataclass(frozen=True)
class Tried:
    """What came of one candidate: the chance of each harm, and what it is worth."""

    chances: dict[str, float]
    bees: float
    honey_kg: float
    syrup_g: float
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
    run(lanes, *situation.tried_days)
    shape = (len(changes), members)
    return _judged(lanes.reshape(shape), before.reshape(shape))


def given(situation: Situation, set_up: SetUp, grams: int, fraction: float) -> Change:
    """Give the work of a visit as a change: the stack arranged and the feed given."""
    fed = fed_with(situation, grams, fraction)

    def change(colonies: Any) -> None:
        situation.arrange(colonies, set_up)
        fed(colonies)

    return change


def fed_with(situation: Situation, grams: float, fraction: float) -> Change:
    """Give a feed, warm where that helps, as a change of a stack that is arranged already."""
    warmer_k = HAND_WARM_K if situation.is_cool else 0.0
    return lambda colonies: feed(colonies, float(grams), fraction, warmer_k=warmer_k)


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


def _judged(lanes: Any, brood_before: Floats) -> list[Tried]:
    """Judge all candidates together, [candidate, member]."""
    happened = {
        "hunger": lanes["hungry_days"] > 0.0,
        "no room": lanes["short_of_room_most"] >= ROOM_DAYS,
        "chilled": lanes["chilled"] > CHILLED_SHARE * np.maximum(brood_before, 500.0),
        "sour": lanes["sour_days"] > 0.0,
        "syrup in honey": lanes["super_syrup"] > SYRUP_TRACE_G,
        "swarm": lanes["swarmed"] > 0.0,
    }
    chances = np.array(list(happened.values())).mean(axis=2).T.tolist()
    to_come = BROOD_BECOMES_BEES * observe.brood(lanes)
    bees = (observe.adults(lanes) + to_come).mean(axis=1)
    honey_kg = observe.honey_above_kg(lanes).mean(axis=1)
    syrup_g = lanes["taken_down"].mean(axis=1)
    return [
        Tried(
            dict(zip(happened, chances[number], strict=True)),
            float(bees[number]),
            float(honey_kg[number]),
            float(syrup_g[number]),
            colonies,
        )
        for number, colonies in enumerate(lanes)
    ]

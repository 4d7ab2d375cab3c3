"""Trying candidates on the same ensemble under the same weather and the same luck."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.actions import Action, of_kind
from combwright.advice.bee_acts import CutCells, Demaree, Divide
from combwright.advice.kit_acts import Feeding, StoresOut
from combwright.advice.numbers import numbers
from combwright.advice.season_ahead import Effect
from combwright.advice.situation import Situation
from combwright.advice.stacking import set_up_after
from combwright.advice.swarm_chance import calibrated
from combwright.belief.worlds import WORLDS
from combwright.simulation import observe
from combwright.simulation.columns import copied
from combwright.simulation.hands.actions import change_queen, cut_cells, feed
from combwright.simulation.hands.dividing import split
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp

Floats = NDArray[np.float64]

PARAMETERS: Final = numbers("trial")
NUC_FRAMES: Final = int(PARAMETERS["nuc_frames"].value)


@dataclass(frozen=True)
class Tried:
    """What came of one candidate: the chance of each harm, and what it is worth."""

    chances: dict[str, float]
    bees: float
    honey_kg: float
    syrup_g: float
    colonies: NDArray[np.void]


def try_all(situation: Situation, changes: Sequence[Effect]) -> list[Tried]:
    """Try each change of the members, made in place, up to the margin after the next visit."""
    members = len(situation.colonies)
    lanes = situation.colonies.take(np.tile(np.arange(members), len(changes)))
    _count_afresh(lanes)
    for number, change in enumerate(changes):
        change(lanes[number * members : (number + 1) * members])
    before = observe.brood(lanes)
    run(lanes, *situation.tried_days, worlds=WORLDS)
    shape = (len(changes), members)
    return _judged(lanes.reshape(shape), before.reshape(shape))


def lived_on(situation: Situation, change: Effect) -> list[NDArray[np.void]]:
    """Give the members after a change and after each day up to the margin after the next visit."""
    colonies = copied(situation.colonies)
    _count_afresh(colonies)
    change(colonies)
    conditions, luck = situation.tried_days
    lived = [copied(colonies)]
    for day in range(situation.horizon):
        one = slice(day, day + 1)
        run(colonies, conditions[:, one], luck[:, one], worlds=WORLDS)
        lived.append(copied(colonies))
    return lived


def doing(situation: Situation, actions: Iterable[Action]) -> Effect:
    """Give the work of a visit as a change: the stack as the actions leave it, and their feed."""
    actions = tuple(actions)
    set_up = set_up_after(situation.standing.set_up, actions)
    feeds = [
        fed_with(situation, one.grams, one.sugar_fraction) for one in of_kind(actions, Feeding)
    ]

    combs = sum(out.combs for out in of_kind(actions, StoresOut))
    divides = of_kind(actions, Divide)
    cuts = any(isinstance(each, CutCells | Demaree) for each in actions)

    def change(colonies: Any) -> None:
        situation.arrange(colonies, set_up)
        stores_out(colonies, combs)
        if cuts:
            cut_cells(colonies)
        for one in divides:
            divide(colonies, situation, one)
        for fed in feeds:
            fed(colonies)

    return change


def divide(colonies: Any, situation: Situation, how: Divide) -> None:
    """Take the queen with a nuc's share out in place; leave one cell or give a mated queen."""
    with_her = {name: PARAMETERS[f"nuc_{name}"].value for name in ("bees", "brood", "stores")}
    split(
        colonies,
        situation.standing.hive,
        SetUp(hive=situation.standing.set_up.hive, frames=NUC_FRAMES),
        **{f"frames_of_{name}": frames for name, frames in with_her.items()},
        goes_with="queen",
    )
    if how.successor == "mated queen":
        change_queen(colonies, "introduced", age_days=PARAMETERS["bought_days"].value)


def stores_out(colonies: Any, combs: int) -> None:
    """Take full combs of stores out in place; drawn ones stand there instead."""
    full = combs * colonies["cells_per_frame"] * colonies["sugar_per_cell"]
    colonies["ripe"] = np.maximum(colonies["ripe"] - full, 0.0)


def fed_with(situation: Situation, grams: float, fraction: float) -> Effect:
    """Give a feed, warm where that helps, as a change of a stack that is arranged already."""
    warmer_k = PARAMETERS["hand_warm_k"].value if situation.is_cool else 0.0
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
        "no room": lanes["short_of_room_most"] >= PARAMETERS["room_days"].value,
        "chilled": lanes["chilled"]
        > PARAMETERS["chilled_share"].value
        * np.maximum(brood_before, PARAMETERS["chilled_brood"].value),
        "sour": lanes["sour_days"] > 0.0,
        "syrup in honey": lanes["super_syrup"] > PARAMETERS["syrup_trace_g"].value,
        "swarm": lanes["swarmed"] > 0.0,
    }
    chances = np.array(list(happened.values())).mean(axis=2).T.tolist()
    swarms = list(happened).index("swarm")
    for each in chances:
        each[swarms] = calibrated(each[swarms], lanes.shape[1])
    to_come = PARAMETERS["brood_becomes_bees"].value * observe.brood(lanes)
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

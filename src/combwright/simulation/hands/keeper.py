"""A keeper who goes by rules of thumb: what is done to each simulated colony, visit by visit.

Seasons are shown and the model is judged under this keeper, and advice is judged against him.
Every member of an ensemble is a colony of its own here: each is looked at and acted upon alone.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from functools import partial
from typing import Any, Final, Literal

import numpy as np
from numpy.typing import NDArray

from combwright.kit.items import Hive
from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.columns import DRONE_LAYER, LAYING, QUEENLESS
from combwright.simulation.hands import actions
from combwright.simulation.run import Trace, run
from combwright.terms.data_files import parameters
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.terms.sugar import FONDANT_SUGAR, SYRUP_SUGAR

Floats = NDArray[np.float64]
Feeding = Literal["portions", "full feeder", "none"]
Treating = Literal["usual", "none"]

EVERY_DAYS: Final = 7
RULES: Final = parameters("simulation/keeper")
BY: Final = {name: rule.value for name, rule in RULES.items()}


@dataclass(frozen=True, slots=True)
class Keeping:
    """How a keeper keeps: feeding, treating, adding frames and supers, holding swarms back.

    Who requeens replaces lost queens in summer; who has young queens replaces those of two years.
    """

    feeding: Feeding = "portions"
    treating: Treating = "usual"
    supers: bool = True
    adds_frames: bool = True
    swarm_control: bool = True
    requeens: bool = True
    young_queens: bool = True


@dataclass(frozen=True)
class Kept:
    """What came of a time: the trace, and what was taken and given by then, [day, colony]."""

    trace: Trace
    honey_taken_kg: Floats
    sugar_given_kg: Floats


@dataclass
class _Visit:
    """One visit to all colonies: what is known when the lid comes off."""

    colonies: NDArray[np.void]
    hive: Hive
    on: date
    day: int
    chance: np.random.Generator

    def do(self, which: NDArray[np.bool_], action: Callable[[Any], None]) -> None:
        """Do something to some of the colonies, in place."""
        if which.any():
            some = self.colonies[which]
            action(some)
            self.colonies[which] = some

    def between(self, first: str, last: str) -> bool:
        """Whether it is the time of the year, by the names of two rules."""
        return BY[first] <= self.day <= BY[last]


def keep(
    colonies: NDArray[np.void],
    hive: Hive,
    set_up: SetUp,
    conditions: Floats,
    luck: Floats,
    *,
    first: date,
    keeping: Keeping,
    seed: int,
    worlds: tuple[Biology, ...] = (BIOLOGY,),
) -> Kept:
    """Let colonies live in place from a day on, with a visit every week.

    Conditions are [colony or 1, day, column], luck is [colony, day, process]; ``seed`` is of the
    keeper's own chance. The trace is [day, colony].
    """
    days, members = conditions.shape[1], len(colonies)
    honey, sugar = np.zeros((days, members)), np.zeros((days, members))
    traces = []
    for start in range(0, days, EVERY_DAYS):
        stop = min(days, start + EVERY_DAYS)
        on = first + timedelta(days=start)
        visit = _Visit(colonies, hive, on, on.timetuple().tm_yday, stream(seed, "keeper", start))
        honey[start:] += take_honey(visit, keeping)
        make_room(visit, keeping, set_up)
        sugar[start:] += give_food(visit, keeping)
        care(visit, keeping)
        passed = run(
            colonies, conditions[:, start:stop], luck[:, start:stop], worlds=worlds, traced=True
        )
        traces.append(passed.values)
    return Kept(Trace(np.concatenate(traces)), honey, sugar)


def take_honey(visit: _Visit, keeping: Keeping) -> Floats:
    """Take the honey above in mid August, but for what the colony must keep.

    What is left above is given back below, as far as there is room.
    Gives what was taken, [colony]. [kg].
    """
    colonies = visit.colonies
    if not keeping.supers or not visit.between("honey_from", "honey_until"):
        return np.zeros(len(colonies))
    spare = np.maximum(observe.stores_kg(colonies) - BY["left_kg"], 0.0)
    taken = np.asarray(actions.harvest(colonies, spare))
    room = np.maximum(colonies["drawn"] + colonies["super_drawn"] - observe.cells_held(colonies), 0)
    moved = np.minimum(colonies["super_ripe"], room * colonies["sugar_per_cell"])
    colonies["ripe"] += moved
    colonies["super_ripe"] -= moved
    colonies["super_syrup"] = np.minimum(colonies["super_syrup"], colonies["super_ripe"])
    return taken


def make_room(visit: _Visit, keeping: Keeping, set_up: SetUp) -> None:
    """Add the next frame beside covered ones, and supers ahead of the bees; clear in August."""
    colonies, box = visit.colonies, visit.hive.frames * set_up.brood_boxes
    bees, frames, supers = observe.frames_of_bees(colonies), colonies["frames"], colonies["supers"]
    boards = colonies["boards"]
    if keeping.adds_frames and visit.between("frames_from", "frames_until"):
        more = (bees > frames - BY["frame_short"]) & (frames < box)
        frames = np.where(
            more, np.minimum(frames + 1.0 + (visit.day > BY["two_frames_from"]), box), frames
        )
        boards = np.where(frames >= box, 0.0, np.minimum(boards, box + 1 - frames))
    if keeping.supers and visit.hive.honey_super is not None:
        if visit.between("supers_from", "supers_until"):
            above = (
                observe.honey_above_kg(colonies) * 1000.0 * observe.SUGAR_IN_HONEY
                + colonies["unripe"]
            )
            held = above / np.maximum(colonies["super_drawn"] * colonies["sugar_per_cell"], 1.0)
            covered = (frames >= box) & (bees > BY["super_bees"] * box)
            wanted = np.where(
                supers == 0.0, covered, (held > BY["super_held"]) & (supers < BY["most_supers"])
            )
            supers = supers + wanted
        elif visit.between("honey_from", "honey_until"):
            supers = np.zeros_like(supers)
    now = np.stack([frames, boards, supers], axis=1)
    was = np.stack([colonies["frames"], colonies["boards"], colonies["supers"]], axis=1)
    changed = (now != was).any(axis=1)
    for stand in np.unique(now[changed], axis=0):
        new = SetUp(
            hive=visit.hive.key,
            brood_boxes=set_up.brood_boxes,
            frames=int(stand[0]),
            dummy_boards=int(stand[1]),
            supers=int(stand[2]),
            excluder=bool(stand[2] > 0),
            cover=set_up.cover,
        )
        same = changed & (now == stand).all(axis=1)
        visit.do(same, partial(actions.arrange, hive=visit.hive, set_up=new))


def give_food(visit: _Visit, keeping: Keeping) -> Floats:
    """Feed as the season asks. Gives the sugar given, [colony]. [kg]."""
    colonies = visit.colonies
    grams = np.zeros(len(colonies))
    if keeping.feeding == "none":
        return grams
    stores, bees = observe.stores_kg(colonies), observe.frames_of_bees(colonies)
    share = np.minimum(1.0, colonies["frames"] / visit.hive.frames)
    empty = colonies["feeder"] < BY["feeder_empty_g"]
    alive = observe.adults(colonies) > BY["alive_bees"]
    strength = SYRUP_SUGAR
    if visit.between("honey_from", "winter_feed_until"):
        short = (BY["winter_kg"] * share - stores) * 1000.0 * observe.SUGAR_IN_HONEY
        grams = np.where(
            empty & (short > BY["short_g"]), np.minimum(short, BY["most_feed_g"]) / SYRUP_SUGAR, 0.0
        )
    elif visit.between("frames_from", "honey_from"):
        portion = BY["portion_g"] * bees * EVERY_DAYS
        if keeping.feeding == "full feeder" and visit.day < BY["full_feeder_until"]:
            grams = np.maximum(BY["feeder_g"] - colonies["feeder"] / SYRUP_SUGAR, 0.0)
        else:
            grams = np.where(empty & (stores < BY["floor_kg"] * share), portion, 0.0)
    else:
        strength = FONDANT_SUGAR.value
        grams = np.where(empty & (stores < BY["floor_kg"] * share), BY["fondant_g"], 0.0)
    grams = np.where(alive, grams, 0.0)
    for amount in np.unique(grams[grams > 0.0].round(-2)):
        same = grams.round(-2) == amount
        visit.do(same, partial(actions.feed, grams=amount, sugar_fraction=strength))
    return np.asarray(grams.round(-2) * strength / 1000.0)


def care(visit: _Visit, keeping: Keeping) -> None:
    """Treat against mites in August and midwinter, hold swarms back, replace lost queens."""
    colonies = visit.colonies
    everyone = np.ones(len(colonies), dtype=bool)
    if keeping.treating == "usual" and visit.between("treat_from", "treat_until"):
        visit.do(everyone, lambda some: actions.treat(some, "formic acid"))
    if keeping.treating == "usual" and visit.between("oxalic_from", "oxalic_until"):
        visit.do(everyone, lambda some: actions.treat(some, "oxalic acid"))
    finds_cells, sees_loss = visit.chance.random((2, len(colonies)))
    if keeping.swarm_control and visit.between("cells_from", "cells_until"):
        found = (colonies["swarm_clock"] > BY["cells_seen_days"]) & (
            finds_cells < BY["cells_found"]
        )
        visit.do(found, actions.cut_cells)
    if keeping.young_queens and visit.between("old_queens_from", "old_queens_until"):
        old = has_queen(colonies) & (colonies["queen_age"] > BY["old_queen_days"])
        visit.do(old, give_queen)
    if keeping.requeens and visit.between("requeen_from", "requeen_until"):
        gone = np.isin(colonies["queen"], (QUEENLESS, DRONE_LAYER))
        gone &= observe.adults(colonies) > BY["requeen_bees"]
        gone &= (colonies["larvae"].sum(axis=1) < 1.0) & (sees_loss < BY["requeen_seen"])
        visit.do(gone, give_queen)


def give_queen(colonies: Any) -> None:
    """Give colonies a bought queen that lays, in place."""
    actions.change_queen(colonies, "introduced", age_days=BY["bought_queen_days"])


def has_queen(colonies: Any) -> NDArray[np.bool_]:
    """Tell which colonies have a laying queen, [colony]."""
    return np.asarray(colonies["queen"] == LAYING)

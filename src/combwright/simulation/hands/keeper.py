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
from combwright.terms.parameters import Parameter
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.terms.sugar import FONDANT_SUGAR, SYRUP_SUGAR

Floats = NDArray[np.float64]
Feeding = Literal["portions", "full feeder", "none"]
Treating = Literal["usual", "none"]

EVERY_DAYS: Final = 7
WINTER_KG: Final = Parameter(20.0, "kg", 18.0, 25.0, "stores of a full box on 1 October", "read")
FLOOR_KG: Final = Parameter(5.0, "kg", 4.0, 9.0, "stores below which a colony is fed", "read")
LEFT_KG: Final = Parameter(9.0, "kg", 4.0, 9.0, "never below in summer: four to five combs", "read")
PORTION_G: Final = Parameter(
    50.0, "g syrup/frame of bees/day", 40.0, 60.0, "strong 500-700 g a day", "common practice"
)
FEEDER_G: Final = Parameter(3200.0, "g", 1300.0, 4000.0, "2.5 L of 60 % syrup", "common practice")
CELLS_FOUND: Final = Parameter(0.85, "share", 0.6, 0.95, "swarm cells found in time", "judgement")
MOST_SUPERS: Final = 5
OLD_DAYS: Final = 550.0  # in August: a queen of the second summer before


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

    def between(self, first: int, last: int) -> bool:
        """Whether it is the time of the year, by day of the year."""
        return first <= self.day <= last


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
    if not keeping.supers or not visit.between(226, 232):
        return np.zeros(len(colonies))
    spare = np.maximum(observe.stores_kg(colonies) - LEFT_KG.value, 0.0)
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
    if keeping.adds_frames and visit.between(75, 215):
        more = (bees > frames - 0.3) & (frames < box)
        frames = np.where(more, np.minimum(frames + 1.0 + (visit.day > 110), box), frames)
        boards = np.where(frames >= box, 0.0, np.minimum(boards, box + 1 - frames))
    if keeping.supers and visit.hive.honey_super is not None:
        if visit.between(100, 205):
            above = observe.honey_above_kg(colonies) * 0.8e3 + colonies["unripe"]
            held = above / np.maximum(colonies["super_drawn"] * colonies["sugar_per_cell"], 1.0)
            covered = (frames >= box) & (bees > 0.85 * box)
            wanted = np.where(supers == 0.0, covered, (held > 0.5) & (supers < MOST_SUPERS))
            supers = supers + wanted
        elif visit.between(226, 232):
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
    empty, alive = colonies["feeder"] < 100.0, observe.adults(colonies) > 1000.0
    strength = SYRUP_SUGAR
    if visit.between(226, 275):
        short = (WINTER_KG.value * share - stores) * 1000.0 * observe.SUGAR_IN_HONEY
        grams = np.where(empty & (short > 400.0), np.minimum(short, 7000.0) / SYRUP_SUGAR, 0.0)
    elif visit.between(75, 225):
        portion = PORTION_G.value * bees * EVERY_DAYS
        if keeping.feeding == "full feeder" and visit.day < 170:
            grams = np.maximum(FEEDER_G.value - colonies["feeder"] / SYRUP_SUGAR, 0.0)
        else:
            grams = np.where(empty & (stores < FLOOR_KG.value * share), portion, 0.0)
    else:
        strength = FONDANT_SUGAR.value
        grams = np.where(empty & (stores < FLOOR_KG.value * share), 2500.0, 0.0)
    grams = np.where(alive, grams, 0.0)
    for amount in np.unique(grams[grams > 0.0].round(-2)):
        same = grams.round(-2) == amount
        visit.do(same, partial(actions.feed, grams=amount, sugar_fraction=strength))
    return np.asarray(grams.round(-2) * strength / 1000.0)


def care(visit: _Visit, keeping: Keeping) -> None:
    """Treat against mites in August and midwinter, hold swarms back, replace lost queens."""
    colonies = visit.colonies
    everyone = np.ones(len(colonies), dtype=bool)
    if keeping.treating == "usual" and visit.between(226, 232):
        visit.do(everyone, lambda some: actions.treat(some, "formic acid"))
    if keeping.treating == "usual" and visit.between(352, 358):
        visit.do(everyone, lambda some: actions.treat(some, "oxalic acid"))
    luck = visit.chance.random((2, len(colonies)))
    if keeping.swarm_control and visit.between(110, 215):
        found = (colonies["swarm_clock"] > 2.0) & (luck[0] < CELLS_FOUND.value)
        visit.do(found, actions.cut_cells)
    if keeping.young_queens and visit.between(213, 219):
        old = has_queen(colonies) & (colonies["queen_age"] > OLD_DAYS)
        visit.do(old, lambda some: actions.change_queen(some, "introduced", age_days=20.0))
    if keeping.requeens and visit.between(110, 265):
        gone = np.isin(colonies["queen"], (QUEENLESS, DRONE_LAYER))
        gone &= observe.adults(colonies) > 3000.0
        gone &= (colonies["larvae"].sum(axis=1) < 1.0) & (luck[1] < 0.5)
        visit.do(gone, lambda some: actions.change_queen(some, "introduced", age_days=20.0))


def has_queen(colonies: Any) -> NDArray[np.bool_]:
    """Tell which colonies have a laying queen, [colony]."""
    return np.asarray(colonies["queen"] == LAYING)

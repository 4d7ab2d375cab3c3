"""The plan of a season of nucs: which donor gives when, which batch begins, what is promised.

Two stages: what is done and promised is the same in all scenarios; what is ready differs. Demand
up to a week, first promised first served, must be met in all but the worst scenarios of the week.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.decisions.nucs import PARAMETERS as NUCS
from combwright.planning.supply.building import Build, Floats
from combwright.planning.supply.promising import BROKEN_LOSS, meet_promises
from combwright.planning.supply.ready import holes_left, ready_shares, spare
from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.wanted import (
    PRODUCT,
    PRODUCTS,
    WAYS,
    Product,
    SupplyTask,
    WantedOrder,
    Way,
)

LATE_MOST: Final = int(number("late_most"))
LATE_LOSS: Final = number("late_loss")
BROOD, BEES = number("brood_per_nuc"), number("bees_per_nuc")
FLOOR_BROOD, FLOOR_BEES = NUCS["keeps_brood"].value, NUCS["keeps_bees"].value
CELLS_PER_GRAFT, GRAFT_MOST = number("cells_per_graft"), number("graft_most")
HOUR: Final = 60.0  # minutes
MINUTES: Final[Mapping[Way, float]] = {
    "by cell": number("looks_per_nuc"),
    "by bought queen": number("looks_per_nuc"),
    "mating nuc": number("minutes_mating_nuc"),
}


@dataclass(frozen=True)
class SupplyPlan:
    """What is planned: nucs by donor and week, by way and week; grafts; the week of each order."""

    gives: Mapping[str, NDArray[np.int64]]
    made: Mapping[Way, NDArray[np.int64]]
    grafts: NDArray[np.int64]
    promised: Mapping[str, int]
    money: float = 0.0
    gap: float = 0.0


@dataclass(frozen=True)
class Effort:
    """How long is searched: to a gap from the best, or so many nodes; seconds guard it."""

    gap: float
    nodes: int
    seconds: float


def solve(
    task: SupplyTask,
    margin: Mapping[Product, Floats],
    before: SupplyPlan | None,
    effort: Effort,
) -> SupplyPlan:
    """Find the plan that earns most; ``margin`` is kept in hand by week, in nucs or queens.

    ``before`` is an earlier plan, by which the worst scenarios are told from the others.
    """
    build = Build(task, margin)
    _work(build)
    _orders(build)
    _in_turn(build)
    _donors(build)
    _means(build)
    for product in PRODUCTS:
        meet_promises(build, product, before.made if before else None)
    values, money, gap = build.programme.solve(effort.gap, effort.nodes, effort.seconds)
    return _read(build, values, money, gap)


def _work(build: Build) -> None:
    """Lay out what can be done each week, with what it costs and what is left of it."""
    task, programme = build.task, build.programme
    for way in WAYS:
        last = ready_shares(task, way)[:, -1, :].mean(axis=0)
        for t in range(task.weeks):
            left = task.money.left * last[t] if PRODUCT[way] == "nuc" else 0.0
            bought = task.shelf.queens_a_week if t >= task.first_queen else 0
            most = bought if way == "by bought queen" else np.inf
            build.made[way, t] = programme.variable(left - task.money.of(way), most)
    for t in range(task.weeks):
        build.grafts[t] = programme.variable(-task.money.graft, GRAFT_MOST)
        minutes = number("minutes_batch") / HOUR
        build.begun[t] = programme.variable(-minutes * task.money.hour, 1.0)
    for donor in task.donors:
        for t in range(task.weeks):
            most = number("most_a_week")
            build.gives[donor.colony, t] = programme.variable(-float(donor.lost[t]), most)


def _orders(build: Build) -> None:
    """Let each order be placed in one week; a promise already given is never dropped silently."""
    task, programme = build.task, build.programme
    for order in task.orders:
        terms = {}
        # a promise for sooner than it is wanted only binds what others could have
        first = order.wanted if order.promised is None else order.promised
        last = task.until if order.promised is not None else order.wanted + LATE_MOST
        for w in range(max(0, first), min(task.until, last) + 1):
            worth = order.price * order.count * _kept_worth(order, w)
            left = task.money.left * order.count if order.product == "nuc" else 0.0
            build.placed[order.order, w] = programme.variable(worth - left, 1.0)
            terms[build.placed[order.order, w]] = 1.0
        if terms:
            programme.at_most(terms, 1.0)
        if order.promised is not None:
            loss = number("never_loss") * order.price * order.count
            missing = build.left_out[order.order] = programme.variable(-loss, 1.0)
            programme.at_most(dict.fromkeys([*terms, missing], -1.0), -1.0)


def _in_turn(build: Build) -> None:
    """First promised, first served: nobody is served while an older promise waits past its week.

    One that is not served at all this season keeps back those who want as many or more: what serves
    them could have served it.
    """
    orders, until = build.task.orders, build.task.until
    for at, order in enumerate(orders):
        if order.promised is None:
            continue
        for later in (each for each in orders[at + 1 :] if each.product == order.product):
            served: dict[int, float] = {}
            for w in range(until + 1):
                if (later.order, w) not in build.placed:
                    continue
                served[build.placed[later.order, w]] = 1.0
                waits = {
                    build.placed[order.order, week]: 1.0
                    for week in range(max(w, order.promised) + 1, until + 1)
                    if (order.order, week) in build.placed
                }
                if later.count >= order.count:
                    waits[build.left_out[order.order]] = 1.0
                build.programme.at_most(served | waits, 1.0)


def _kept_worth(order: WantedOrder, week: int) -> float:
    if order.promised is not None:
        return 1.0 - BROKEN_LOSS * (week - order.promised)
    return 1.0 - LATE_LOSS * max(0, week - order.wanted)


def _donors(build: Build) -> None:
    """Take no more of a donor than its brood and its bees bear; holes close with the weeks."""
    task, programme = build.task, build.programme
    brood_hole, bees_hole = holes_left(task.weeks)
    for donor in task.donors:
        columns = np.array([build.gives[donor.colony, t] for t in range(task.weeks)])
        for frames, floor, taken, hole in (
            (donor.brood, FLOOR_BROOD, BROOD, brood_hole),
            (donor.bees, FLOOR_BEES, BEES, bees_hole),
        ):
            # what is short without any taking is no hole of the plan's
            bound = np.maximum(0.0, spare(frames, floor)[: task.weeks])
            programme.all_at_most(columns, taken * hole, bound.tolist())


def _means(build: Build) -> None:
    """Keep within donors' nucs, cells, boxes, frames and hours, week by week."""
    task, programme, made = build.task, build.programme, build.made
    for t in range(task.weeks):
        nucs = {made[way, t]: 1.0 for way in WAYS if PRODUCT[way] == "nuc"}
        given = {build.gives[donor.colony, t]: -1.0 for donor in task.donors}
        programme.at_most(nucs | given, 0.0)
        programme.at_most(
            {made["by cell", t]: 1.0, made["mating nuc", t]: 1.0}
            | ({build.grafts[t - 1]: -CELLS_PER_GRAFT} if t else {}),
            float(task.cells[t]),
        )
        programme.at_most({build.grafts[t]: 1.0, build.begun[t]: -GRAFT_MOST}, 0.0)
        work = {made[way, t]: MINUTES[way] / HOUR for way in WAYS}
        work[build.begun[t]] = number("minutes_batch") / HOUR
        work |= {
            at: number("minutes_handing_over") / HOUR * build.order(name).count
            for (name, w), at in build.placed.items()
            if w == t
        }
        programme.at_most(work, task.shelf.hours)
        _boxes(build, t)
    if task.shelf.frames is not None:
        every = {
            at: number("frames_per_nuc") for (way, _), at in made.items() if PRODUCT[way] == "nuc"
        }
        programme.at_most(every, float(task.shelf.frames))


def _boxes(build: Build, t: int) -> None:
    """Count boxes in use: nucs made, less those delivered, less those given up as queenless."""
    task = build.task
    for product, boxes in (("nuc", task.shelf.nuc_boxes), ("mated queen", task.shelf.mating_boxes)):
        if boxes is None:
            continue
        terms: dict[int, float] = {}
        for way in WAYS:
            if PRODUCT[way] == product:
                lays = task.success.mean(axis=0)
                free = 1.0 - lays if way != "by bought queen" else np.zeros(task.weeks)
                for made in range(t + 1):
                    gone = free[made] if t - made >= LATE_MOST + 1 else 0.0
                    terms[build.made[way, made]] = 1.0 - float(gone)
        terms |= {
            at: -float(build.order(name).count)
            for (name, w), at in build.placed.items()
            if w <= t and build.order(name).product == product
        }
        build.programme.at_most(terms, float(boxes))


def _read(build: Build, values: Floats, money: float, gap: float) -> SupplyPlan:
    task, weeks = build.task, range(build.task.weeks)

    def whole(found: list[int]) -> NDArray[np.int64]:
        return np.array([round(values[at]) for at in found], dtype=np.int64)

    return SupplyPlan(
        gives={
            donor.colony: whole([build.gives[donor.colony, t] for t in weeks])
            for donor in task.donors
        },
        made={way: whole([build.made[way, t] for t in weeks]) for way in WAYS},
        grafts=whole([build.grafts[t] for t in weeks]),
        promised={name: w for (name, w), at in build.placed.items() if round(values[at])},
        money=money,
        gap=gap,
    )

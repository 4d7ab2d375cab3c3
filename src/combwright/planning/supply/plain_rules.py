"""The plan that a careful keeper makes without a solver, to hold the other against.

First come, first served; every order is taken for the day it is wanted while the means last; for
it 1.3 times as many cells are given as mean success asks for; the strongest donor gives first.
"""

from math import ceil
from typing import Final

import numpy as np

from combwright.planning.supply.ready import A_WEEK, holes_left, spare
from combwright.planning.supply.solving import (
    BEES,
    BROOD,
    CELLS_PER_GRAFT,
    FLOOR_BEES,
    FLOOR_BROOD,
    GRAFT_MOST,
    HOUR,
    MINUTES,
    SupplyPlan,
)
from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.wanted import WAYS, SupplyTask, WantedOrder

TIMES: Final = 1.3  # mean yield times this: the plain rule itself
READY_AFTER: Final = ceil(36 / A_WEEK)  # weeks from a ripe cell to a sale, as a rule


def plain_rules(task: SupplyTask) -> SupplyPlan:
    """Plan by plain rules."""
    plain = _PlainPlan(task)
    for order in task.orders:
        if order.product == "nuc":
            plain.take(order)
    return plain.plan()


class _PlainPlan:
    """A plan in the making."""

    def __init__(self, task: SupplyTask) -> None:
        self.task = task
        self.gives = {donor.colony: np.zeros(task.weeks, np.int64) for donor in task.donors}
        self.made = {way: np.zeros(task.weeks, np.int64) for way in WAYS}
        self.promised: dict[str, int] = {}
        self.in_hand = np.floor(task.in_hand.mean(axis=0))
        self.taken = 0

    def take(self, order: WantedOrder) -> None:
        """Take an order for its day if the means are there; give from what stands already first."""
        week = min(self.task.until, order.promised if order.promised is not None else order.wanted)
        if self.taken + order.count <= self.in_hand[week]:
            self.taken += order.count
            self.promised[order.order] = week
            return
        when = week - READY_AFTER
        if not 0 <= when < self.task.weeks or (when == 0 and not self.task.cells[0]):
            return
        success = float(self.task.success.mean(axis=0)[when])
        wanted = ceil(order.count * TIMES / success)
        found = self._donors(when, wanted)
        if len(found) < wanted or not self._has_time(when, wanted):
            return
        for colony in found:
            self.gives[colony][when] += 1
        self.made["by cell"][when] += wanted
        self.promised[order.order] = week

    def _donors(self, when: int, wanted: int) -> list[str]:
        """Name donors, the strongest first, that bear one nuc more each."""
        found: list[str] = []
        order = sorted(self.task.donors, key=lambda one: -float(one.brood[:, when].mean()))
        holes = holes_left(self.task.weeks)
        for donor in order:
            if len(found) == wanted:
                break
            trial = self.gives[donor.colony].copy()
            trial[when] += 1
            bears = all(
                np.all(frames * (hole @ trial) <= np.maximum(0.0, spare(of, floor)[: len(trial)]))
                for frames, hole, of, floor in (
                    (BROOD, holes[0], donor.brood, FLOOR_BROOD),
                    (BEES, holes[1], donor.bees, FLOOR_BEES),
                )
            )
            if bears:
                found.append(donor.colony)
        return found

    def _has_time(self, when: int, more: int) -> bool:
        minutes = MINUTES["by cell"] * (float(self.made["by cell"][when]) + more)
        boxes = self.task.shelf.nuc_boxes
        fits = boxes is None or float(self.made["by cell"][: when + 1].sum()) + more <= boxes
        return fits and minutes + number("minutes_batch") <= HOUR * self.task.shelf.hours

    def plan(self) -> SupplyPlan:
        """Give the plan; cells are grafted the week before."""
        grafts = np.zeros(self.task.weeks, np.int64)
        short = np.maximum(0, self.made["by cell"] - np.asarray(self.task.cells))
        grafts[:-1] = np.minimum(GRAFT_MOST, np.ceil(short[1:] / CELLS_PER_GRAFT)).astype(np.int64)
        return SupplyPlan(self.gives, self.made, grafts, self.promised)

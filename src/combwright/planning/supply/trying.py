"""A plan tried on seasons that it has not seen: nuc by nuc, first promised first served."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.promising import BROKEN_LOSS
from combwright.planning.supply.ready import A_WEEK, QUEEN_READY, SOLD_AFTER, holes_left
from combwright.planning.supply.solving import BROOD, FLOOR_BROOD, SupplyPlan
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
from combwright.science.queens.first_egg import (
    FLIES_AT,
    LAYS_BEFORE_SALE,
    LOG_MIDDLE,
    RIPE_BEFORE,
    SPREAD,
)
from combwright.science.queens.mating_success import ACCEPTED as GRAFTS_ACCEPTED
from combwright.science.queens.mating_success import SEALED_WELL, SHOCK
from combwright.terms.streams import stream

Floats = NDArray[np.float64]
MOST_NUCS: Final = 80  # made in one week by one way; their luck is drawn once for all plans
BELOW_FLOOR: Final = number("below_floor")
ACCEPTED: Final = number("queen_accepted")
FROM_GRAFT: Final = GRAFTS_ACCEPTED.value * SEALED_WELL.value


@dataclass(frozen=True)
class TriedPlan:
    """What became of a plan: each promise kept or not, [scenario] by order, and the money."""

    kept: Mapping[str, NDArray[np.bool_]]
    spare: Mapping[Product, Floats]
    money: Floats

    def chance(self, order: str) -> float:
        """Share of the seasons in which the promise was kept."""
        return float(self.kept[order].mean())


def try_plan(task: SupplyTask, plan: SupplyPlan, seed: int) -> TriedPlan:
    """Let the plan meet the scenarios of the task, each with luck of its own."""
    made = _made(task, plan, seed)
    ready = {
        product: sum(
            (_ready(task, way, made[way], seed) for way in WAYS if PRODUCT[way] == product),
            _in_hand(task, product),
        )
        for product in PRODUCTS
    }
    kept: dict[str, NDArray[np.bool_]] = {}
    spare: dict[Product, Floats] = {}
    money = -_costs(task, plan)
    income = np.zeros(len(task.success))
    for product, supply in ready.items():
        in_turn = served(task.orders, plan, product)
        owed = np.zeros(task.until + 1)
        total = 0
        for order, week in in_turn:
            total += order.count
            owed[week:] += order.count
            kept[order.order] = supply[:, week] >= total
            income += _paid(order, week, supply, total)
        spare[product] = supply - owed
        if product == "nuc":
            income += task.money.left * np.maximum(0.0, supply[:, -1] - total)
    return TriedPlan(kept, spare, money + income)


def served(
    orders: Sequence[WantedOrder], plan: SupplyPlan, product: Product
) -> list[tuple[WantedOrder, int]]:
    """Put the promised orders of a product in the order in which they are served."""
    mine = [each for each in orders if each.product == product and each.order in plan.promised]
    turn = {each.order: at for at, each in enumerate(orders)}
    return sorted(
        ((each, plan.promised[each.order]) for each in mine),
        key=lambda pair: (pair[1], turn[pair[0].order]),
    )


def _paid(order: WantedOrder, week: int, supply: Floats, total: int) -> Floats:
    """Give what an order brings in each scenario: less for each week late, a refund at the end."""
    enough = supply >= total
    first = np.where(enough.any(axis=1), enough.argmax(axis=1), supply.shape[1])
    late = np.maximum(0, first - week)
    whole = order.price * order.count
    served = first < supply.shape[1]
    return np.where(
        served, whole * np.maximum(0.0, 1.0 - BROKEN_LOSS * late), -number("refund_loss") * whole
    )


def _costs(task: SupplyTask, plan: SupplyPlan) -> float:
    money = task.money
    work = sum(money.of(way) * float(plan.made[way].sum()) for way in WAYS)
    batches = float(np.count_nonzero(plan.grafts)) * number("minutes_batch") / 60.0 * money.hour
    return work + batches + money.graft * float(plan.grafts.sum()) + given_up(task, plan)


def given_up(task: SupplyTask, plan: SupplyPlan) -> float:
    """Sum up the honey and bees that the donors of a plan give up, in money."""
    return sum(float(each.lost[: task.weeks] @ plan.gives[each.colony]) for each in task.donors)


def _made(task: SupplyTask, plan: SupplyPlan, seed: int) -> dict[Way, NDArray[np.int64]]:
    """Count what is really made each week: a donor may fail, and so may cells, [scenario, week]."""
    scenarios = len(task.success)
    failed = np.zeros((scenarios, task.weeks), dtype=np.int64)
    hole, _ = holes_left(task.weeks)
    for donor in task.donors:
        gives = plan.gives[donor.colony]
        if gives.any():
            brood = donor.brood[np.arange(scenarios) % len(donor.brood), : task.weeks]
            falls_short = brood - BROOD * (hole @ gives) < FLOOR_BROOD - BELOW_FLOOR
            failed += np.where(falls_short, gives, 0)
    cells = _cells(task, plan, seed)
    by_cell = np.minimum(np.maximum(0, plan.made["by cell"] - failed), cells)
    left = np.maximum(0, failed - plan.made["by cell"])
    return {
        "by cell": by_cell,
        "by bought queen": np.maximum(0, plan.made["by bought queen"] - left),
        "mating nuc": np.minimum(plan.made["mating nuc"], cells - by_cell),
    }


def _cells(task: SupplyTask, plan: SupplyPlan, seed: int) -> NDArray[np.int64]:
    """Draw the ripe cells of each week, [scenario, week]."""
    rng = stream(seed, "supply", "cells")
    found = np.tile(np.floor(np.asarray(task.cells, np.float64)), (len(task.success), 1))
    share = _shared_luck(rng, np.full((len(task.success), task.weeks), FROM_GRAFT))
    drawn = rng.binomial(np.broadcast_to(plan.grafts, share.shape), share)
    found[:, 1:] += drawn[:, :-1]
    return found.astype(np.int64)


def _shared_luck(rng: np.random.Generator, share: Floats) -> Floats:
    """Give each batch a share of its own around its expected one: a beta distribution."""
    both = 1.0 / SHOCK.value - 1.0
    inside = np.clip(share, 1e-6, 1.0 - 1e-6)
    return np.asarray(rng.beta(inside * both, (1.0 - inside) * both))


def _ready(task: SupplyTask, way: Way, made: NDArray[np.int64], seed: int) -> Floats:
    """Count what is ready by each week, [scenario, week]."""
    rng = stream(seed, "supply", way)
    scenarios, weeks = task.success.shape
    shape = (scenarios, weeks, MOST_NUCS)
    lays = rng.random(shape)
    takes = np.exp(LOG_MIDDLE + SPREAD * rng.standard_normal(shape))
    if way == "by bought queen":
        share, days = np.full((scenarios, weeks), ACCEPTED), np.full(shape, QUEEN_READY)
    else:
        share = _shared_luck(rng, task.success)
        proof = SOLD_AFTER if way == "mating nuc" else LAYS_BEFORE_SALE.value
        days = RIPE_BEFORE.value + FLIES_AT + task.waits[:, :, None] + takes + proof
    counts = (lays < share[:, :, None]) & (np.arange(MOST_NUCS) < made[:, :, None])
    week = np.ceil(days / A_WEEK).astype(np.int64) + np.arange(weeks)[None, :, None]
    found = np.zeros((scenarios, task.until + 1))
    scenario, _, _ = np.nonzero(counts & (week <= task.until))
    np.add.at(found, (scenario, week[counts & (week <= task.until)]), 1.0)
    return np.cumsum(found, axis=1)


def _in_hand(task: SupplyTask, product: Product) -> Floats:
    scenarios = len(task.success)
    if product != "nuc":
        return np.zeros((scenarios, task.until + 1))
    return task.in_hand_by(scenarios)

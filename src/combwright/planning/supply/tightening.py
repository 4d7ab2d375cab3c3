"""The plan tried on fresh scenarios, and kept further from the edge until its promises hold."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.plain_rules import plain_rules
from combwright.planning.supply.promising import KEPT
from combwright.planning.supply.solving import Effort, SupplyPlan, solve
from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.trying import TriedPlan, try_plan
from combwright.planning.supply.wanted import PRODUCTS, WAYS, Product, SupplyTask

Floats = NDArray[np.float64]
ROUNDS: Final = int(number("rounds"))
ROUGH: Final = int(number("rough_rounds"))
ROUGH_NODES, NODES = int(number("rough_nodes")), int(number("nodes"))
GAP, FIRST_GAP = number("gap"), number("first_gap")


def rough(seconds: float) -> Effort:
    """Search a little: enough to see what is short, or what more of one thing makes possible."""
    return Effort(FIRST_GAP, ROUGH_NODES, seconds)


def good(seconds: float) -> Effort:
    """Search until little can be gained."""
    return Effort(GAP, NODES, seconds)


@dataclass(frozen=True)
class FirmPlan:
    """A plan whose promises held on fresh scenarios, and how the plain rules do on the same."""

    plan: SupplyPlan
    tried: TriedPlan
    plain: SupplyPlan
    plain_tried: TriedPlan
    margin: dict[Product, Floats]


def firm_plan(
    task: SupplyTask,
    fresh: SupplyTask,
    last: SupplyTask,
    *,
    seed: int = 1,
    seconds: float = 60.0,
) -> FirmPlan:
    """Solve, try on fresh scenarios, and tighten; chances are told from the last ones."""
    margin: dict[Product, Floats] = {product: np.zeros(task.until + 1) for product in PRODUCTS}
    plan = solve(task, margin, None, rough(seconds))
    for at in range(1, ROUNDS):
        short = _short(fresh, plan, try_plan(fresh, plan, seed + 1))
        if plan.gap <= GAP and not any(np.any(each > 0) for each in short.values()):
            break
        margin = {product: margin[product] + short[product] for product in margin}
        # far from the edge yet: a rough plan shows what is short as well as a good one
        plan = solve(task, margin, plan, rough(seconds) if at < ROUGH else good(seconds))
    plan = _without_the_doubtful(fresh, plan, seed + 1)
    plain = plain_rules(task)
    for other in (plain, _nothing(task)):
        if _holds_and_earns(fresh, other, plan, seed + 1):
            plan = other
    return FirmPlan(
        plan, try_plan(last, plan, seed + 2), plain, try_plan(last, plain, seed + 2), margin
    )


def _short(task: SupplyTask, plan: SupplyPlan, tried: TriedPlan) -> dict[Product, Floats]:
    """Give by how much each week falls short of its promises at the chance that is asked for."""
    found: dict[Product, Floats] = {}
    for product, spare in tried.spare.items():
        at_edge = np.quantile(spare, 1.0 - KEPT, axis=0, method="lower")
        promised = {w for name, w in plan.promised.items()}
        weeks = np.array([w in promised for w in range(task.until + 1)])
        short = np.where(weeks, np.maximum(0.0, -at_edge), 0.0)
        # a promise may move to a later week, and with it what it lacks
        found[product] = np.maximum.accumulate(short)
    return found


def _without_the_doubtful(task: SupplyTask, plan: SupplyPlan, seed: int) -> SupplyPlan:
    """Take back new promises that still do not hold, the last served first."""
    given = {each.order for each in task.orders if each.promised is not None}
    while True:
        tried = try_plan(task, plan, seed)
        doubtful = [
            name for name in plan.promised if name not in given and tried.chance(name) < KEPT
        ]
        if not doubtful:
            return plan
        worst = min(doubtful, key=tried.chance)
        left = {name: week for name, week in plan.promised.items() if name != worst}
        plan = replace(plan, promised=left)


def _nothing(task: SupplyTask) -> SupplyPlan:
    none = np.zeros(task.weeks, np.int64)
    gives = {donor.colony: none for donor in task.donors}
    return SupplyPlan(gives, dict.fromkeys(WAYS, none), none, {})


def _holds_and_earns(task: SupplyTask, plain: SupplyPlan, plan: SupplyPlan, seed: int) -> bool:
    """Tell whether a plainer plan keeps every promise as well, and earns more."""
    given = {each.order for each in task.orders if each.promised is not None}
    if given - plain.promised.keys():
        return False
    simple, solved = try_plan(task, plain, seed), try_plan(task, plan, seed)
    holds = all(simple.chance(name) >= KEPT for name in plain.promised)
    return holds and float(simple.money.mean()) > float(solved.money.mean())

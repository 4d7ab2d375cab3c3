"""What may be promised: demand up to each week, met in all but its worst scenarios."""

from collections.abc import Mapping
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.building import Build, Floats
from combwright.planning.supply.ready import ready_shares
from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.wanted import PRODUCT, WAYS, Product, Way

KEPT: Final = number("kept")
BROKEN_LOSS: Final = number("broken_loss")
HARDEST: Final = int(number("hardest"))
LATE_SCENARIOS: Final = int(number("late_scenarios"))


def meet_promises(
    build: Build, product: Product, before: Mapping[Way, NDArray[np.int64]] | None
) -> None:
    """Meet what is promised up to each week in all but the worst scenarios of that week."""
    task, programme = build.task, build.programme
    ways = [way for way in WAYS if PRODUCT[way] == product]
    ready = np.concatenate([ready_shares(task, way) for way in ways], axis=2)
    columns = np.array([build.made[way, t] for way in ways for t in range(task.weeks)])
    hand = task.in_hand_by(len(ready)) if product == "nuc" else np.zeros(ready.shape[:2])
    usual = np.concatenate([before[way] for way in ways]) if before else np.ones(len(columns))
    owed: int | None = None
    for w in range(task.until + 1):
        owed = _owed(build, product, w, owed)
        if owed is None:
            continue
        whole = np.column_stack([-ready[:, w, :], -hand[:, w]])
        kept = hardest(whole, np.append(usual, 1.0))
        at = np.append(columns, owed)
        programme.all_at_most(
            at, _with_owed(kept), (-kept[:, -1] - build.margin[product][w]).tolist()
        )
        _lateness(build, product, whole, at)


def _owed(build: Build, product: Product, w: int, before: int | None) -> int | None:
    """Give the variable of all that is promised of a product up to a week, if anything may be."""
    programme = build.programme
    placed = {
        at: float(build.order(name).count)
        for (name, week), at in build.placed.items()
        if week == w and build.order(name).product == product
    }
    if before is None and not placed:
        return None
    owed = programme.variable(0.0, whole=False)
    earlier = {before: 1.0} if before is not None else {}
    programme.at_most({owed: -1.0} | placed | earlier, 0.0)
    return owed


def _with_owed(table: Floats) -> Floats:
    """Put what is promised beside what is ready."""
    return np.column_stack([table[:, :-1], np.ones(len(table))])


def hardest(table: Floats, plan: Floats) -> Floats:
    """Drop the worst scenarios of a week, and keep the hardest of the others, [row, column].

    Rows hold the negative of what is ready for each nuc made, and of what is in hand. Those easier
    under the plan bind no more than the hardest do; the trial on fresh scenarios would show it.

    Examples
    --------
    >>> hardest(-np.arange(20.0)[:, None], np.ones(1))[:3].ravel().tolist()
    [-2.0, -3.0, -4.0]

    """
    supply = -table @ plan
    left_out = int((1.0 - KEPT) * len(table) + 1e-9)
    return table[np.argsort(supply, kind="stable")[left_out : left_out + HARDEST]]


def _lateness(build: Build, product: Product, whole: Floats, at: NDArray[np.intp]) -> None:
    """Charge what is late in a week, averaged over some scenarios."""
    task, programme = build.task, build.programme
    some = whole[np.linspace(0, len(whole) - 1, min(LATE_SCENARIOS, len(whole))).astype(int)]
    prices = [order.price for order in task.orders if order.product == product]
    loss = BROKEN_LOSS * float(np.mean(prices)) / len(some)
    short = np.array([programme.variable(-loss, whole=False) for _ in some])
    table = np.column_stack([_with_owed(some), -np.eye(len(some))])
    programme.all_at_most(np.concatenate([at, short]), table, (-some[:, -1]).tolist())

"""What would keep the promises given, and make the next refused orders possible."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from combwright.planning.supply.solving import LATE_MOST, solve
from combwright.planning.supply.tightening import FirmPlan, rough
from combwright.planning.supply.wanted import SupplyTask

HELPED: Final = 2  # refused orders for which help is looked for
BOXES, HOURS, FRAMES = 2, 4.0, 10  # more of each that is tried; judgement


def what_helps(task: SupplyTask, firm: FirmPlan, seconds: float) -> dict[str, tuple[str, ...]]:
    """Try what would keep promises given, and make the next refused orders possible.

    More boxes, hours, combs or queens; where none of them helps, that is said.
    """
    by = {each.order: each.wanted + LATE_MOST for each in task.orders}
    by |= {each.order: each.promised for each in task.orders if each.promised is not None}
    missed = [name for name, week in by.items() if firm.plan.promised.get(name, week + 1) > week]
    given = [
        each.order for each in task.orders if each.promised is not None and each.order in missed
    ]
    refused = [name for name in missed if name not in given]
    told: dict[str, list[str]] = {name: [] for name in given + refused[:HELPED]}
    tried = []
    for words, more in _more(task) if told else ():
        plan = solve(more, firm.margin, firm.plan, rough(seconds))
        tried.append(words)
        for name, ways in told.items():
            if plan.promised.get(name, by[name] + 1) <= by[name]:
                ways.append(words)
    nothing = f"none of these alone: {', '.join(tried)}"
    return {name: tuple(each) or (nothing,) for name, each in told.items()}


def _more(task: SupplyTask) -> Iterator[tuple[str, SupplyTask]]:
    """Give the task with more of one thing, and what that is."""
    shelf = task.shelf
    if shelf.nuc_boxes is not None:
        yield (
            f"{BOXES} more nuc boxes",
            replace(task, shelf=replace(shelf, nuc_boxes=shelf.nuc_boxes + BOXES)),
        )
    if shelf.frames is not None:
        more = replace(shelf, frames=shelf.frames + FRAMES)
        yield f"{FRAMES} more combs or foundations", replace(task, shelf=more)
    yield (
        f"{HOURS:g} more hours a week",
        replace(task, shelf=replace(shelf, hours=shelf.hours + HOURS)),
    )
    yield (
        "two mated queens a week to buy",
        replace(task, shelf=replace(shelf, queens_a_week=shelf.queens_a_week + 2)),
    )

"""The plan of the season: from the book to what is promised, made, begun and given."""

from collections.abc import Mapping
from typing import Final

import numpy as np

from combwright.advice.words.wording import day_words, many
from combwright.planning.supply.promising import KEPT
from combwright.planning.supply.ready import ready_shares
from combwright.planning.supply.solving import (
    BEES,
    BROOD,
    FLOOR_BROOD,
    SupplyPlan,
)
from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.tightening import FirmPlan, firm_plan
from combwright.planning.supply.trying import given_up
from combwright.planning.supply.wanted import PRODUCT, WAYS, Donor, SupplyTask, WantedOrder, Way
from combwright.records.replay.known_orders import KnownOrder
from combwright.records.store.book_handle import Book
from combwright.science.colony.donors import nucs_now
from combwright.science.queens.cells_needed import queens_sure
from combwright.science.queens.mating_success import NO_DRONE_LAYER, SHOCK
from combwright.services.progress import Progress, Step, silent
from combwright.services.supply.asked import AskedSupply
from combwright.services.supply.solver_words import solver_words_aside
from combwright.services.supply.supply_sheet import (
    GiveLine,
    InMoney,
    OrderLine,
    SupplySheet,
    WeekLine,
)
from combwright.services.supply.task import Gathered, gather
from combwright.services.supply.what_helps import what_helps
from combwright.services.supply.whole_colonies import whole_colonies
from combwright.services.supply.whom_to_ring import ring
from combwright.terms.dated import dated
from combwright.terms.percent import in_percent

LARGE_GAP: Final = 0.01  # beyond which the keeper is told
SOLVING: Final = "Weighing promises against the weather ahead"
WAY_WORDS: Final[Mapping[Way, str]] = {
    "by cell": "nuc with a cell",
    "by bought queen": "nuc with a bought queen",
    "mating nuc": "mating nuc",
}


def supply_plan(book: Book, asked: AskedSupply, progress: Progress = silent) -> SupplySheet:
    """Plan the season's nucs and queens; notes of the day itself are not yet taken in."""
    found = gather(book, asked, progress)
    progress(Step(SOLVING))
    with solver_words_aside():
        firm = firm_plan(
            found.solved, found.fresh, found.last, seed=asked.seed, seconds=asked.seconds
        )
        return _sheet(found, firm, asked)


def _sheet(found: Gathered, firm: FirmPlan, asked: AskedSupply) -> SupplySheet:
    plan, task = firm.plan, found.last
    help_for = what_helps(found.solved, firm, asked.seconds)
    lines = [_order_line(each, found, (firm, help_for), asked) for each in task.orders]
    plain = [firm.plain_tried.chance(name) for name in firm.plain.promised]
    return SupplySheet(
        on=asked.on,
        orders=tuple(lines),
        gives=tuple(_gives(task, plan, asked)),
        nucs=tuple(found.nucs),
        colonies=tuple(whole_colonies(found, plan, asked)),
        weeks=tuple(_weeks(task, plan, asked)),
        can_give_now={
            each.colony: nucs
            for each in task.donors
            if (nucs := nucs_now(_careful_brood(each), FLOOR_BROOD, BROOD))
        },
        queens_sure=queens_sure(
            int(task.cells[0]), float(task.success[:, 0].mean()), KEPT, SHOCK.value
        ),
        kept_for_winter=round(float(np.maximum(0, firm.tried.spare["nuc"][:, -1]).mean()), 1),
        next_spring=tuple(_next_spring(each) for each in found.later),
        money=InMoney(
            income=round(float(firm.tried.money.mean()), 2),
            plain_income=round(float(firm.plain_tried.money.mean()), 2),
            better_share=round(float((firm.tried.money > firm.plain_tried.money).mean()), 3),
            plain_kept=round(float(np.mean(plain)), 3) if plain else 1.0,
            given_up=round(given_up(task, plan), 2),
        ),
        gap=plan.gap,
        own_factor=round(found.own, 3),
        weather=found.weather,
        notices=tuple(_notices(found, plan.gap)),
    )


def _order_line(
    wanted: WantedOrder,
    found: Gathered,
    by: tuple[FirmPlan, dict[str, tuple[str, ...]]],
    asked: AskedSupply,
) -> OrderLine:
    firm, help_for = by
    known = found.orders[wanted.order]
    week = firm.plan.promised.get(wanted.order)
    chance = None if week is None else round(firm.tried.chance(wanted.order), 3)
    ready = None if week is None else asked.week(week)
    return OrderLine(
        order=wanted.order,
        customer=wanted.customer,
        what=known.what,
        count=wanted.count,
        wanted_by=known.wanted_by,
        promised_before=known.week,
        week=ready,
        chance=chance,
        rests_on=_rests_on(found.last, wanted, week, firm.plan, asked),
        possible_with=help_for.get(wanted.order, ()),
        ring=ring(known, wanted, firm, (ready, chance)),
    )


def _rests_on(
    task: SupplyTask, wanted: WantedOrder, week: int | None, plan: SupplyPlan, asked: AskedSupply
) -> str:
    """Say which nucs or queens an order waits for, and the last graft that it needs."""
    if week is None:
        return "refused: not enough can be ready with the chance that is asked for"
    in_time = {
        way: plan.made[way] * (ready_shares(task, way).mean(axis=0)[week] > 0.0)
        for way in WAYS
        if PRODUCT[way] == wanted.product
    }
    told = [many(int(made.sum()), WAY_WORDS[way]) for way, made in in_time.items() if made.any()]
    if not told:
        return "nucs that stand already"
    with_cells = sum(made for way, made in in_time.items() if way != "by bought queen")
    last = int(np.flatnonzero(with_cells)[-1]) if np.any(with_cells) else 0
    grafts = np.flatnonzero(plan.grafts[:last])
    graft_by = f"; graft by {day_words(asked.week(int(grafts[-1])))}" if len(grafts) else ""
    return f"{' and '.join(told)} made before{graft_by}"


def _gives(task: SupplyTask, plan: SupplyPlan, asked: AskedSupply) -> list[GiveLine]:
    lines = [
        GiveLine(
            asked.week(week),
            donor.colony,
            donor.yard,
            int(nucs),
            BROOD * int(nucs),
            BEES * int(nucs),
            round(float(donor.lost[week]) * int(nucs), 2),
        )
        for donor in task.donors
        for week, nucs in enumerate(plan.gives[donor.colony])
        if nucs
    ]
    return sorted(lines, key=lambda each: (each.week, each.yard, each.donor))


def _weeks(task: SupplyTask, plan: SupplyPlan, asked: AskedSupply) -> list[WeekLine]:
    lays = task.success.mean(axis=0)
    return [
        WeekLine(
            asked.week(week),
            int(plan.made["by cell"][week]),
            int(plan.made["by bought queen"][week]),
            int(plan.made["mating nuc"][week]),
            int(plan.grafts[week]),
            int(task.cells[week]),
            round(float(lays[week]), 3),
            round(float(lays[week]) * (1.0 / NO_DRONE_LAYER.value - 1.0), 3),
        )
        for week in range(task.weeks)
    ]


def _careful_brood(donor: Donor) -> float:
    return float(np.quantile(donor.brood[:, 0], number("careful")))


def _next_spring(order: KnownOrder) -> str:
    return (
        f"{order.order}: {many(order.open, order.what)} for {order.customer}, wanted by "
        f"{dated(order.wanted_by)}, is not of this season’s nucs and queens"
    )


def _notices(found: Gathered, gap: float) -> list[str]:
    told = []
    if found.suspected:
        told.append(f"Nothing leaves a yard with signs of disease: {', '.join(found.suspected)}.")
    if found.solved.shelf.nuc_boxes is None:
        told.append("Nobody counted nuc boxes: the plan takes as many as it wants.")
    if gap > LARGE_GAP:
        told.append(f"The search ended {in_percent(gap)} from the best plan that may be.")
    if not found.batches:
        told.append("No batch of cells stands in the book.")
    return told

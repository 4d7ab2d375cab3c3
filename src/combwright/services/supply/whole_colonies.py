"""Orders for whole colonies: which could go that the plan needs for no nuc, least worth first."""

import numpy as np

from combwright.planning.supply.ready import A_WEEK, spare
from combwright.planning.supply.solving import FLOOR_BEES, FLOOR_BROOD, SupplyPlan
from combwright.planning.supply.wanted import Donor
from combwright.services.supply.asked import AskedSupply
from combwright.services.supply.supply_sheet import ColonyLine
from combwright.services.supply.task import Gathered


def whole_colonies(found: Gathered, plan: SupplyPlan, asked: AskedSupply) -> list[ColonyLine]:
    """Answer each order for colonies in its turn."""
    free = sorted(
        (each for each in found.last.donors if not plan.gives[each.colony].any()),
        key=lambda each: each.kept,
    )
    lines = []
    for order in found.orders.values():
        if order.what != "colony":
            continue
        week = int(np.clip((order.wanted_by - asked.on).days // A_WEEK, 0, found.last.weeks - 1))
        going = [each for each in free if _is_strong(each, week)][: order.open]
        free = [each for each in free if each not in going]
        lines.append(
            ColonyLine(
                order.order,
                order.customer,
                order.open,
                order.wanted_by,
                order.price or found.colony_price,
                tuple(each.colony for each in going),
                round(sum(each.kept for each in going), 2),
            )
        )
    return lines


def _is_strong(donor: Donor, week: int) -> bool:
    """Tell whether it has, at the careful end, what a donor must keep."""
    bees, brood = spare(donor.bees, FLOOR_BEES), spare(donor.brood, FLOOR_BROOD)
    return bool(min(bees[week], brood[week]) >= 0.0)

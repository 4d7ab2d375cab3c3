"""Plain rules: first come, first served, and nothing is promised that has no means."""

from dataclasses import replace

import numpy as np
from tests.planning.supply.seasons import order, season

from combwright.planning.supply.plain_rules import READY_AFTER, TIMES, plain_rules


def test_who_came_first_is_served_and_cells_are_given_beyond_mean_success() -> None:
    plan = plain_rules(season([order("A", 2, READY_AFTER + 1)], success=0.7, donors=8))
    assert plan.promised == {"A": READY_AFTER + 1}
    made = int(plan.made["by cell"].sum())
    assert made >= 2 * TIMES / 0.8
    assert sum(int(given.sum()) for given in plan.gives.values()) == made


def test_without_boxes_hours_donors_or_weeks_nothing_is_promised() -> None:
    late = [order("A", 2, READY_AFTER + 1)]
    assert plain_rules(season(late, boxes=0)).promised == {}
    assert plain_rules(season(late, donors=0)).promised == {}
    assert plain_rules(season([order("A", 2, 1)])).promised == {}


def test_nucs_that_stand_are_given_first() -> None:
    task = season([order("A", 2, 9), order("B", 2, 9)])
    standing = replace(task, in_hand=np.full_like(task.in_hand, 2.0))
    plan = plain_rules(standing)
    assert "A" in plan.promised
    assert plan.made["by cell"].sum() <= plain_rules(task).made["by cell"].sum()

"""A promise that cannot be kept: by how much, and what would keep it."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from tests.planning.supply.seasons import UNTIL, order, season

from combwright.planning.supply.solving import Effort, solve
from combwright.planning.supply.tightening import FirmPlan
from combwright.planning.supply.trying import try_plan
from combwright.planning.supply.wanted import PRODUCTS, SupplyTask
from combwright.records.replay.known_orders import KnownOrder
from combwright.services.supply.what_helps import what_helps
from combwright.services.supply.whom_to_ring import ring

WEEK = date(2027, 6, 28)
KNOWN = KnownOrder(
    "A", "Byrne", "nuc", 2, 5, WEEK, None, None, date(2027, 1, 10),
    first_promised=date(2027, 3, 1), week=WEEK,
)  # fmt: skip
PROMISED = order("A", 2, 7, promised=8)


def planned(task: SupplyTask) -> FirmPlan:
    margin = {product: np.zeros(UNTIL + 1) for product in PRODUCTS}
    plan = solve(task, margin, None, Effort(0.01, 3000, 5.0))
    tried = try_plan(task, plan, 1)
    return FirmPlan(plan, tried, plan, tried, margin)


@pytest.fixture(scope="module")
def short() -> SupplyTask:
    """Two boxes alone: of two nucs made, two are not ready in nine seasons of ten."""
    return season([PROMISED], boxes=2)


def test_how_many_are_sure_and_what_would_keep_it_is_said(short: SupplyTask) -> None:
    firm = planned(short)
    assert "A" not in firm.plan.promised
    said = ring(KNOWN, PROMISED, firm, (None, None))
    assert said.startswith("Promised for the week of 28 Jun:")
    assert "of 2 are sure then" in said or "2 cannot be ready" in said
    helps = what_helps(short, firm, 5.0)["A"]
    assert "2 more nuc boxes" in helps
    assert "4 more hours a week" not in helps


def test_what_another_is_promised_later_is_not_sure_for_one() -> None:
    """Two stand, and are Byrne's: none of them is Hall's, however soon six were promised."""
    hall = order("B", 6, 2, promised=2)
    task = season([PROMISED, hall], donors=0)
    firm = planned(replace(task, in_hand=np.full((1, UNTIL + 1), 2.0)))
    assert firm.plan.promised == {"A": 8}
    assert "6 cannot be ready this season" in ring(KNOWN, hall, firm, (None, None))


def test_where_nothing_helps_alone_that_is_said() -> None:
    task = season([PROMISED], donors=0)
    (said,) = what_helps(task, planned(task), 5.0)["A"]
    assert said.startswith("none of these alone:")


def test_a_promise_that_is_kept_needs_no_call() -> None:
    task = season([PROMISED])
    firm = planned(task)
    assert what_helps(task, firm, 5.0) == {}
    assert ring(KNOWN, PROMISED, firm, (WEEK, 0.95)) == ""
    assert "only 80 %" in ring(KNOWN, PROMISED, firm, (WEEK, 0.80))
    late = ring(KNOWN, PROMISED, firm, (date(2027, 7, 12), 0.93))
    assert "ready 2 weeks late, by 12 Jul (93 %)" in late

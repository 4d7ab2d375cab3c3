"""The plan of a small season: what it promises is kept, and more of anything never costs."""

from dataclasses import replace

import numpy as np
import pytest
from tests.planning.supply.seasons import UNTIL, order, season

from combwright.planning.supply.promising import KEPT
from combwright.planning.supply.solving import Effort, SupplyPlan, solve
from combwright.planning.supply.tightening import FirmPlan, firm_plan
from combwright.planning.supply.trying import try_plan
from combwright.planning.supply.wanted import PRODUCTS, WAYS, SupplyTask

ORDERS = [order("A", 2, 7), order("B", 3, 9), order("C", 2, 10), order("D", 6, 8)]
NO_MARGIN = {product: np.zeros(UNTIL + 1) for product in PRODUCTS}


def solved(task: SupplyTask) -> SupplyPlan:
    return solve(task, NO_MARGIN, None, Effort(0.01, 3000, 5.0))


@pytest.fixture(scope="module")
def firm() -> FirmPlan:
    """A plan tightened on fresh scenarios, and tried on others again."""
    return firm_plan(*(season(ORDERS, seed=seed) for seed in (1, 2, 3)), seconds=5.0)


def test_what_is_promised_is_kept_in_seasons_that_the_plan_has_not_seen(firm: FirmPlan) -> None:
    assert firm.plan.promised
    again = try_plan(season(ORDERS, seed=4), firm.plan, 99)
    for name in firm.plan.promised:
        # 150 seasons: three standard errors of a share of 0.9 are 0.07
        assert firm.tried.chance(name) >= KEPT - 0.07
        assert again.chance(name) == pytest.approx(firm.tried.chance(name), abs=0.1)


def test_the_plan_earns_no_less_than_plain_rules_on_the_same_seasons(firm: FirmPlan) -> None:
    assert firm.tried.money.mean() >= firm.plain_tried.money.mean() - 1.0


def test_no_donor_gives_more_than_it_bears_and_every_nuc_has_a_cell(firm: FirmPlan) -> None:
    given = sum(firm.plan.gives.values())
    made = firm.plan.made["by cell"] + firm.plan.made["by bought queen"]
    assert (given >= made).all()
    assert (firm.plan.made["by cell"] <= np.array(season(ORDERS).cells)[: len(made)] + 27).all()
    assert all(gives.max() <= 2 for gives in firm.plan.gives.values())


def test_a_dearer_nuc_never_means_fewer_promises() -> None:
    counts = {each.order: each.count for each in ORDERS}
    promised = [
        sum(counts[name] for name in solved(season(ORDERS, price=price)).promised)
        for price in (40.0, 120.0, 300.0)
    ]
    assert promised == sorted(promised)
    assert promised[0] < promised[-1]


def test_more_boxes_never_earn_less() -> None:
    earned = [solved(season(ORDERS, boxes=boxes)).money for boxes in (0, 6, 12)]
    assert earned[0] <= earned[1] * 1.01 + 1.0
    assert earned[1] <= earned[2] * 1.01 + 1.0
    assert not solved(season(ORDERS, boxes=0)).promised


def test_a_promise_already_given_is_placed_or_shows_as_missing() -> None:
    kept = [order("A", 2, 7, promised=8), *ORDERS[1:]]
    assert solved(season(kept)).promised["A"] >= 8
    lost = solved(season(kept, donors=0))
    assert lost.promised == {}
    assert lost.money < 0  # its loss is on the account, it is not dropped silently


@pytest.mark.parametrize("boxes", [8, None])
def test_an_older_promise_is_not_put_off_for_a_larger_one(boxes: int | None) -> None:
    """Two stand; six were promised too soon: without turns the two would go to the six."""
    two_stand = np.full((1, UNTIL + 1), 2.0)
    orders = [
        order("A", 2, 7, promised=7), order("B", 6, 2, promised=2), order("C", 1, 7, promised=9)
    ]  # fmt: skip
    promised = solved(replace(season(orders, donors=3, boxes=boxes), in_hand=two_stand)).promised
    assert promised["A"] == 7
    if boxes is None:  # B can be served, late, and C after it
        assert 7 < promised["B"] <= promised["C"]
    else:  # B cannot be served at all: no reason to let C down too
        assert promised.keys() == {"A", "C"}


def test_what_stands_already_is_promised_without_any_work() -> None:
    task = season([order("A", 2, 3)], donors=0)
    plan = solved(replace(task, in_hand=np.full((1, UNTIL + 1), 2.0)))
    assert plan.promised == {"A": 3}
    assert all(not plan.made[way].any() for way in WAYS)

from itertools import product

import pytest

from combwright.planning.supply.rows import Programme
from combwright.terms.errors import OutOfRangeError

READY = (130, 135, 140, 150, 155, 160)
MOST, COST, LEAD = (2, 1, 2, 1, 2, 1), (30, 45, 25, 40, 20, 35), 10
ORDERS = {
    "A": (3, 150, 190), "B": (2, 155, 170), "C": (2, 160, 180),
    "D": (1, 150, 200), "E": (4, 175, 165), "F": (1, 165, 150),
}  # fmt: skip


def test_donors_are_matched_to_orders_as_a_search_through_all_cases_does() -> None:
    """Six donors, six orders: 1320 with A, C and E, by two solvers and all 64 cases elsewhere."""
    programme = Programme()
    filled = {
        name: programme.variable(count * value, 1.0) for name, (count, _, value) in ORDERS.items()
    }
    given = {
        (donor, name): programme.variable(-COST[donor], MOST[donor])
        for donor, name in product(range(6), ORDERS)
        if READY[donor] + LEAD <= ORDERS[name][1]
    }
    for name, (count, _, _) in ORDERS.items():
        whole = {at: 1.0 for (_, of), at in given.items() if of == name}
        programme.at_most(whole | {filled[name]: -float(count)}, 0.0)
        programme.at_most(dict.fromkeys(whole, -1.0) | {filled[name]: float(count)}, 0.0)
    for donor, most in enumerate(MOST):
        programme.at_most({at: 1.0 for (of, _), at in given.items() if of == donor}, most)
    values, money, gap = programme.solve(0.0, 10_000, 10.0)
    assert money == pytest.approx(1320)
    assert gap <= 1e-6
    assert {name for name, at in filled.items() if values[at]} == {"A", "C", "E"}


def test_a_programme_without_an_answer_says_so() -> None:
    programme = Programme()
    programme.at_most({programme.variable(1.0): -1.0}, -2.0)
    programme.at_most({0: 1.0}, 1.0)
    with pytest.raises(OutOfRangeError, match="No plan was found"):
        programme.solve(0.0, 100, 1.0)

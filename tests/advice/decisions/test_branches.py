"""Branches are worked out like the plan: by what can be seen or hefted on that day."""

from datetime import date

import pytest
from tests.advice.situations import Case, drawn, situation

from combwright.advice.bee_acts import AsPlanned, Uniting
from combwright.advice.decisions.branches import LIGHTER, STRONGER, WEAKER, Side
from combwright.advice.decisions.found import at_any_colony
from combwright.advice.kit_acts import Feeding, LeaveStack
from combwright.advice.plan import plan
from combwright.terms.set_up import SetUp


def test_a_colony_that_is_opened_is_told_by_its_bees() -> None:
    found = plan(situation(Case(date(2027, 4, 24), 6.0, 3.0, 2.0, 8))).branches
    assert [each.found.split(" ")[1] for each in found[:2]] == ["most", "least"]
    assert all("frames of bees" in each.found for each in found[:2])


def test_a_colony_that_is_hefted_is_told_by_its_stores() -> None:
    found = plan(situation(Case(date(2027, 12, 20), 6.0, 0.0, 9.0, 11))).branches
    assert all("kg of stores" in each.found for each in found[:2])


def test_in_autumn_the_lighter_end_is_fed_for_winter_too() -> None:
    """The branch is fed towards the same target: not a week's portion of spring."""
    decided = plan(situation(Case(date(2027, 9, 10), 8.0, 3.0, 8.0, 11)))
    fed = [each.portion.sugar_fraction for each in decided.branches if each.portion is not None]
    assert decided.portion.sugar_fraction == 0.62
    assert set(fed) == {0.62}


@pytest.mark.parametrize(
    ("side", "frames", "grams"),
    [
        (STRONGER, {7: 8, 8: 8, 10: 10}, {500: 1000, 1500: 1500}),
        (WEAKER, {7: 7, 8: 8, 10: 8}, {500: 500, 1500: 1000}),
        (LIGHTER, {7: 8, 8: 8, 10: 8}, {500: 1000, 1500: 1500}),
    ],
    ids=["stronger", "weaker", "lighter"],
)
def test_an_end_differs_from_the_plan_its_own_way_alone(
    side: Side, frames: dict[int, int], grams: dict[int, int]
) -> None:
    planned = (
        SetUp(frames=8, dummy_boards=2),
        Feeding(feed="syrup", grams=1000, sugar_fraction=0.6),
    )
    for told, kept in frames.items():
        stack, _ = side.kept_to(planned, (SetUp(frames=told, dummy_boards=1), planned[1]))
        assert (stack.frames, stack.dummy_boards) == (kept, 1 if kept != 8 else 2)
    for told, kept in grams.items():
        _, portion = side.kept_to(
            planned, (planned[0], Feeding(feed="syrup", grams=told, sugar_fraction=0.6))
        )
        assert portion.grams == kept


def test_cells_are_told_apart_by_what_is_in_them_and_whether_the_queen_is_found() -> None:
    """Cups, few cells on the face, charged or sealed, queen or none: each has its own way."""
    found = {each.found: each.do for each in at_any_colony(date(2027, 5, 20))}
    cells = [do for name, do in found.items() if "cell" in name or "cups" in name]
    assert len(cells) >= 6
    assert len(set(cells)) == len(cells)
    assert not any("cell" in each.found for each in at_any_colony(date(2027, 10, 20)))


def test_how_likely_no_eggs_are_is_how_many_members_have_no_laying_queen() -> None:
    gone = plan(situation(Case(date(2027, 5, 8), 6.0, 3.0, 5.0, 9, queen="lost"))).branches
    there = plan(situation(Case(date(2027, 5, 8), 6.0, 3.0, 5.0, 9))).branches
    chances = [[each.chance for each in found if each.code == "no eggs"] for found in (gone, there)]
    assert chances == [[1.0], []]


def test_next_to_no_stores_goes_before_what_is_told_by_bees() -> None:
    told = [plan(situation(drawn(number))).branches for number in range(40, 70)]
    beside = []
    for found in told:
        bare = [each for each in found if (each.quantity, each.amount) == ("kg of stores", 1.0)]
        by_bees = any(each.quantity == "frames of bees" for each in found)
        beside += [(by_bees, "however many bees" in each.found) for each in bare]
    assert set(beside) == {(True, True), (False, False)}


@pytest.mark.parametrize("nectar", [0.0, 0.5, 1.0])
@pytest.mark.parametrize("supers", [0, 1])
def test_next_to_no_stores_is_never_answered_with_no_feed(nectar: float, supers: int) -> None:
    """Where none is named at the hive, what is done at any colony without food holds."""
    on = date(2027, 5, 20)
    told = plan(situation(Case(on, 12.0, 7.0, 9.0, 11, supers=supers, nectar=nectar))).branches
    bare = [each for each in told if (each.quantity, each.amount) == ("kg of stores", 1.0)]
    assert all(each.portion is not None and each.portion.grams > 0 for each in bare)
    assert any(each.code == "empty combs" for each in at_any_colony(on))


@pytest.mark.parametrize("month", range(3, 9))
def test_in_every_month_it_is_said_what_is_done_where_no_food_is_found(month: int) -> None:
    rich = Case(date(2027, month, 20), 8.0, 4.0, 12.0, 11, supers=month in {6, 7}, nectar=0.0)
    found = [each for each in plan(situation(rich)).branches if each.quantity == "kg of stores"]
    bare = found[-1]
    assert (bare.code, bare.amount) == ("at most", 1.0)
    assert bare.portion is not None
    assert bare.portion.grams > 0
    # in August what is planned is already as much as is taken down
    assert month == 8 or not any(isinstance(each, AsPlanned) for each in bare.actions)


@pytest.mark.parametrize("on", [date(2027, 5, 8), date(2027, 7, 1), date(2027, 9, 20)])
@pytest.mark.parametrize(
    ("hive", "frames"),
    [("national timber", 11), ("nuc 6 polystyrene", 6), ("national timber", 6)],
)
def test_no_branch_speaks_of_more_frames_than_stand_there(on: date, hive: str, frames: int) -> None:
    crowded = Case(on, frames + 1.0, 0.5 * frames, 5.0, frames, hive)
    told = plan(situation(crowded)).branches
    amounts = [each.amount or 0.0 for each in told if each.quantity == "frames of bees"]
    assert max(amounts, default=0.0) <= frames


@pytest.mark.parametrize("number", range(40, 52))
def test_no_colony_is_told_twice_to_do_as_planned(number: int) -> None:
    told = plan(situation(drawn(number))).branches
    ends = [each for each in told if each.quantity == "frames of bees"]
    held = [each for each in ends if each.actions == (AsPlanned(),)]
    assert len(held) <= 1


@pytest.mark.parametrize("on", [date(2027, 4, 24), date(2027, 5, 20), date(2027, 6, 14)])
@pytest.mark.parametrize("bees", [4.0, 7.0, 10.0])
def test_where_less_food_is_found_no_less_is_fed(on: date, bees: float) -> None:
    told = plan(situation(Case(on, bees, 0.5 * bees, 3.0, int(bees) + 1, nectar=0.0)))
    (bare,) = (each for each in told.branches if each.quantity == "kg of stores")
    assert bare.portion is not None
    assert bare.portion.grams >= told.portion.grams


@pytest.mark.parametrize("first", [100, 110, 120])
def test_a_branch_differs_from_the_plan_only_its_own_way(first: int) -> None:
    """A colony found weaker is never told more syrup or more room than a stronger one."""
    for number in range(first, first + 10):
        told = plan(situation(drawn(number)))
        ends = {each.code: each for each in told.branches if each.quantity == "frames of bees"}
        if len(ends) < 2 or told.asks(Uniting):
            continue
        weaker, stronger = ends["at most"], ends["at least"]
        stacks = [
            next((a.frames for a in each.actions if isinstance(a, LeaveStack)), None)
            for each in (weaker, stronger)
        ]
        low, high = (told.set_up.frames if n is None else n for n in stacks)
        assert low <= told.set_up.frames <= high, number
        if not any(
            isinstance(a, Uniting | LeaveStack) for a in (*weaker.actions, *stronger.actions)
        ):
            assert weaker.portion is not None
            assert stronger.portion is not None
            assert weaker.portion.grams <= told.portion.grams <= stronger.portion.grams, number


@pytest.mark.parametrize("first", range(200, 240, 10))
def test_what_is_found_falls_under_one_branch_or_under_the_plan(first: int) -> None:
    """Between the ends a frame or a kilogram at least is left, for which the plan holds."""
    for number in range(first, first + 10):
        told = plan(situation(drawn(number))).branches
        for quantity in ("frames of bees", "kg of stores"):
            ends = [each for each in told if each.quantity == quantity]
            at_most = sorted((e.amount, e.over or 0.0) for e in ends if e.code == "at most")
            at_least = [each.amount for each in ends if each.code == "at least"]
            assert len(at_least) <= 1
            below = 0.0
            for amount, over in at_most:
                assert amount is not None
                assert amount > over == below, number
                below = amount
            assert all(amount and amount >= below + 1.0 for amount in at_least), number


@pytest.mark.parametrize("number", range(2))
@pytest.mark.parametrize("stores", [2.0, 3.5, 6.0])
def test_where_it_is_hefted_less_food_is_never_fed_less(number: int, stores: float) -> None:
    on = date(2027, 1, 10 + number)
    decided = plan(situation(Case(on, 3.0 + number, 0.0, stores, 9, seed=number)))
    light = [each for each in decided.branches if each.code == "at most"]
    fed = [each.portion.grams for each in light if each.portion is not None]
    assert len(fed) == len(light) > 0
    assert [decided.portion.grams, *fed] == sorted([decided.portion.grams, *fed])


@pytest.mark.parametrize("on", [date(2027, 5, 25), date(2027, 8, 16), date(2027, 9, 12)])
def test_a_colony_that_is_united_has_no_branch_that_would_save_it(on: date) -> None:
    """“Put in a frame with eggs” stood beside “give no brood, shake the bees out”."""
    gone = situation(Case(on, 1.8, 0.0, 4.0, 7, queen="lost"))
    told = plan(gone)
    assert told.asks(Uniting)
    assert "no eggs" not in {each.code for each in told.branches}

"""The note of a branch: its portion and its stack, and of the plan what it leaves."""

import pytest

from combwright.advice.kit_acts import Feeding, LeaveStack
from combwright.planning.sheet import Branch, ColonySheet, Portion, RoundSheet
from combwright.services.rounds.planned_note import as_advised

STACK = ("frames", "dummy_boards", "supers", "excluder", "feeder", "foundation")
FED = Portion(syrup_g=1400, per_day_g=200, days=7, sugar_fraction=0.6, litres=1.1)


def branch(*actions: LeaveStack | Feeding, portion: Portion | None = None) -> Branch:
    return Branch(
        code="at most",
        found="at most 4 frames of bees",
        actions=list(actions),
        do=["Do it."],
        because="Because.",
        portion=portion,
    )


@pytest.fixture
def with_a_super(small_round: RoundSheet) -> ColonySheet:
    """A colony that the round gives a super and two sheets of foundation."""
    colony = small_round.colonies[0]
    now = colony.set_up_now.model_copy(update={"frames": 8, "foundation": 0, "supers": 0})
    left = {"frames": 10, "foundation": 2, "dummy_boards": 1, "supers": 1, "excluder": True}
    return colony.model_copy(
        update={"set_up_now": now, "set_up": now.model_copy(update=left), "portion": FED}
    )


def told(colony: ColonySheet, found: Branch | None) -> dict[str, str]:
    return as_advised(colony, colony.planned_until, found)


def test_a_branch_without_a_stack_leaves_the_planned_one(with_a_super: ColonySheet) -> None:
    none = Portion(syrup_g=0, per_day_g=0, days=7, sugar_fraction=0.6)
    planned, found = told(with_a_super, None), told(with_a_super, branch(portion=none))
    assert {name: found[name] for name in STACK} == {name: planned[name] for name in STACK}
    assert (planned["feed_g"], found["feed_g"]) == ("1400", "0")


@pytest.mark.parametrize(
    ("left", "stack"),
    [
        (LeaveStack(frames=9, dummy_boards=2, supers=0), ("9", "2", "0", "no", "", "1")),
        (LeaveStack(frames=8, dummy_boards=2, supers=0), ("8", "2", "0", "no", "", "0")),
        (LeaveStack(frames=10, dummy_boards=1, supers=2), ("10", "1", "2", "yes", "-1", "2")),
    ],
)
def test_a_branch_says_what_stack_was_left(
    with_a_super: ColonySheet, left: LeaveStack, stack: tuple[str, ...]
) -> None:
    found = told(with_a_super, branch(left, portion=FED))
    assert tuple(found[name] for name in STACK) == stack
    assert found["entrance_mm"] == told(with_a_super, None)["entrance_mm"]

"""Donors and receivers on the round: two names in one line, health before everything."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st
from tests.paper.conftest import colony_sheet

from combwright.advice.actions import Action
from combwright.advice.bee_acts import Give, MoveNothing, TakeIn, Uniting
from combwright.planning.matching import matched
from combwright.planning.sheet import ColonySheet, RoundSheet
from combwright.planning.supplies import bench, load

GIVES, TAKES, WEAK = Give(frames_of_brood=2), TakeIn(), Uniting(why="weak")
YARDS = ("Alder Bank", "Mill Orchard")


def colony(order: int, yard: str, *actions: Action) -> ColonySheet:
    return colony_sheet(order, f"C{order}", yard).model_copy(
        update={"actions": list(actions), "questions": []}
    )


def sheet(*colonies: ColonySheet) -> RoundSheet:
    yards = sorted({each.yard for each in colonies})
    return matched(
        RoundSheet(
            on=date(2027, 5, 1), version="1", seed=1, weather="", yards=yards,
            colonies=list(colonies), bench=bench(colonies, 0.6),
            load=load(colonies, yards, 0.6), notices=[],
        )
    )  # fmt: skip


def test_the_sheets_of_both_and_the_load_list_name_each_other() -> None:
    told = sheet(colony(1, YARDS[0], GIVES), colony(2, YARDS[1], TAKES))
    (handed,) = told.handed
    assert (handed.giver, handed.taker, handed.count) == ("C1", "C2", 1)
    assert "1 frame of sealed brood for C2 at Mill Orchard." in told.colonies[0].jobs
    assert any(
        job.startswith("Takes 1 frame of sealed brood from C1") for job in told.colonies[1].jobs
    )
    assert any("from C1 to C2 at Mill Orchard" in item for item in told.load[0].items)
    assert not any("from C1 to C2" in item for item in told.load[1].items)


def test_the_nearest_in_the_same_yard_comes_first() -> None:
    told = sheet(colony(1, YARDS[0], TAKES), colony(2, YARDS[1], GIVES), colony(3, YARDS[1], TAKES))
    assert [(each.giver, each.taker) for each in told.handed] == [("C2", "C1"), ("C2", "C3")] or [
        (each.giver, each.taker) for each in told.handed
    ] == [("C2", "C3"), ("C2", "C1")]
    scarce = sheet(
        colony(1, YARDS[0], TAKES),
        colony(2, YARDS[1], Give(frames_of_brood=1)),
        colony(3, YARDS[1], TAKES),
    )
    assert [(each.giver, each.taker) for each in scarce.handed] == [("C2", "C3")]


def test_nothing_leaves_or_enters_a_colony_that_is_left_shut() -> None:
    shut = MoveNothing(signs_at="C1")
    assert not sheet(colony(1, YARDS[0], GIVES, shut), colony(2, YARDS[0], TAKES)).handed
    assert not sheet(colony(1, YARDS[0], GIVES), colony(2, YARDS[0], TAKES, shut)).handed


def test_a_weak_colony_is_united_in_its_own_yard_alone() -> None:
    near = sheet(colony(1, YARDS[0], WEAK), colony(2, YARDS[0], GIVES))
    assert [(each.what, each.giver, each.taker) for each in near.handed] == [("colony", "C1", "C2")]
    assert not sheet(colony(1, YARDS[0], WEAK), colony(2, YARDS[1], GIVES)).handed


@given(st.lists(st.tuples(st.sampled_from(YARDS), st.sampled_from([GIVES, TAKES])), max_size=9))
def test_no_frame_is_given_twice_and_none_to_its_own_hive(
    colonies: list[tuple[str, Action]],
) -> None:
    told = sheet(*(colony(n, yard, act) for n, (yard, act) in enumerate(colonies, 1)))
    given_by = told.handed
    for each in told.colonies:
        gives = sum(one.count for one in given_by if one.giver == each.colony)
        takes = sum(one.count for one in given_by if one.taker == each.colony)
        assert gives <= (2 if each.actions == [GIVES] else 0)
        assert takes <= (1 if each.actions == [TAKES] else 0)
    offered = sum(2 for _, act in colonies if act is GIVES)
    wanted = sum(1 for _, act in colonies if act is TAKES)
    assert sum(each.count for each in given_by) == min(offered, wanted)

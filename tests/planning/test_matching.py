"""Donors and receivers on the round: two names in one line, health before everything."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st
from tests.paper.conftest import colony_sheet

from combwright.advice.actions import Action
from combwright.advice.bee_acts import Divide, Give, MoveNothing, Requeen, TakeIn, Uniting
from combwright.advice.kit_acts import Feeding, Frames, StoresOut
from combwright.planning.matching import SpareQueen, matched, told
from combwright.planning.sheet import ColonySheet, DecisionShown, RoundSheet
from combwright.planning.supplies import bench, load

GIVES, TAKES, WEAK = Give(frames_of_brood=2), TakeIn(), Uniting(why="weak")
YARDS = ("Alder Bank", "Mill Orchard")


def colony(order: int, yard: str, *actions: Action) -> ColonySheet:
    return colony_sheet(order, f"C{order}", yard).model_copy(
        update={"actions": list(actions), "questions": []}
    )


def sheet(
    *colonies: ColonySheet,
    frames: dict[str, str] | None = None,
    queens: tuple[SpareQueen, ...] = (),
) -> RoundSheet:
    yards = sorted({each.yard for each in colonies})
    handed = matched(colonies, frames or {}, queens)
    return RoundSheet(
        on=date(2027, 5, 1), version="1", seed=1, weather="", yards=yards,
        colonies=told(colonies, handed), bench=bench(colonies, 0.6, handed),
        load=load(colonies, yards, 0.6, handed), handed=handed, notices=[],
    )  # fmt: skip


def test_the_sheets_of_both_and_the_load_list_name_each_other() -> None:
    made = sheet(colony(1, YARDS[0], GIVES), colony(2, YARDS[1], TAKES))
    (handed,) = made.handed
    assert (handed.giver, handed.taker, handed.count) == ("C1", "C2", 1)
    assert "1 frame of sealed brood for C2 at Mill Orchard." in made.colonies[0].jobs
    assert any(
        job.startswith("Takes 1 frame of sealed brood from C1") for job in made.colonies[1].jobs
    )
    assert any("from C1 to C2 at Mill Orchard" in item for item in made.load[0].items)
    assert not any("from C1 to C2" in item for item in made.load[1].items)


def test_the_nearest_in_the_same_yard_comes_first() -> None:
    made = sheet(colony(1, YARDS[0], TAKES), colony(2, YARDS[1], GIVES), colony(3, YARDS[1], TAKES))
    assert [(each.giver, each.taker) for each in made.handed] == [("C2", "C1"), ("C2", "C3")] or [
        (each.giver, each.taker) for each in made.handed
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
    made = sheet(*(colony(n, yard, act) for n, (yard, act) in enumerate(colonies, 1)))
    given_by = made.handed
    for each in made.colonies:
        gives = sum(one.count for one in given_by if one.giver == each.colony)
        takes = sum(one.count for one in given_by if one.taker == each.colony)
        assert gives <= (2 if each.actions == [GIVES] else 0)
        assert takes <= (1 if each.actions == [TAKES] else 0)
    offered = sum(2 for _, act in colonies if act is GIVES)
    wanted = sum(1 for _, act in colonies if act is TAKES)
    assert sum(each.count for each in given_by) == min(offered, wanted)


def test_a_comb_goes_only_where_its_frame_fits() -> None:
    hives = colony(1, YARDS[0], GIVES), colony(2, YARDS[0], TAKES)
    assert sheet(*hives, frames={"C1": "one", "C2": "one"}).handed
    assert not sheet(*hives, frames={"C1": "one", "C2": "other"}).handed


def test_combs_that_hives_hand_each_other_are_not_brought() -> None:
    full, hungry = StoresOut(combs=2), Feeding(feed="syrup", grams=900, sugar_fraction=0.6)
    alone = sheet(colony(1, YARDS[0], full))
    made = sheet(colony(1, YARDS[0], full), colony(2, YARDS[0], hungry))
    assert [(each.what, each.count) for each in made.handed] == [("comb of stores", 1)]
    assert any("comb of stores from C1" in job for job in made.colonies[1].jobs)
    assert "1 comb of stores for C2." in made.colonies[0].jobs
    # the empty comb of the one takes the place of the full one
    assert alone.bench.frames_drawn - 1 == made.bench.frames_drawn - _drawn_for("C2")
    assert made.bench.frames_drawn == sum(stop.frames_drawn for stop in made.load)


def _drawn_for(name: str) -> int:
    return bench([colony(int(name[1:]), YARDS[0])], 0.6).frames_drawn


def test_a_drawn_frame_that_a_hive_has_to_spare_goes_to_one_that_needs_it() -> None:
    made = sheet(colony(1, YARDS[0], Frames(more=-1)), colony(2, YARDS[0], Frames(more=1)))
    assert [(each.what, each.giver, each.taker) for each in made.handed] == [
        ("drawn frame", "C1", "C2")
    ]


def worth(money: float, order: int, *actions: Action) -> ColonySheet:
    decided = DecisionShown(
        topic="queen", actions=list(actions), jobs=[], because=[], inputs={"worth_more": money},
        runner_up="",
    )  # fmt: skip
    return colony(order, YARDS[0], *actions).model_copy(update={"decisions": [decided]})


def test_a_spare_queen_goes_where_she_is_worth_most_and_the_others_are_named() -> None:
    made = sheet(
        worth(5.0, 1, Requeen()),
        worth(40.0, 2, Divide(successor="mated queen")),
        worth(90.0, 3, Divide(successor="marked cell")),
        queens=(SpareQueen("White 9"),),
    )
    (given_to,) = made.handed
    assert (given_to.giver, given_to.taker) == ("White 9", "C2")
    assert "The spare queen White 9 is for it, in a cage." in made.colonies[1].jobs
    assert "the spare queen White 9, caged, for C2" in made.load[0].items
    assert any("1 mated queen, if you have any: for C1;" in item for item in made.load[0].items)


def test_a_queen_named_like_a_colony_is_no_job_there() -> None:
    made = sheet(
        colony(1, YARDS[0], Requeen()), colony(2, YARDS[0], GIVES), queens=(SpareQueen("C2"),)
    )
    assert [each.said for each in made.handed] == ["the spare queen C2 to C1 at Alder Bank"]
    assert not any("queen" in job for job in made.colonies[1].jobs)


def test_no_queen_comes_from_beside_sick_bees_and_none_goes_there() -> None:
    shut = MoveNothing(signs_at="C2")
    queens = (SpareQueen("White 9", raised_in="C2"),)
    assert not sheet(
        colony(1, YARDS[0], Requeen()), colony(2, YARDS[1], shut), queens=queens
    ).handed
    assert not sheet(colony(1, YARDS[0], Requeen(), shut), queens=(SpareQueen("White 9"),)).handed

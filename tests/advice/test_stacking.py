"""Set-ups and the actions between them: the way there, and back."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from combwright.advice.actions import Action
from combwright.advice.bee_acts import Demaree, Heft, Look
from combwright.advice.kit_acts import Boards, Frames, LeaveStack
from combwright.advice.stacking import set_up_after, steps_to
from combwright.kit.catalogue import catalogue
from combwright.terms.set_up import SetUp

HIVE = catalogue().hive("national timber")


@st.composite
def set_ups(draw: st.DrawFn) -> SetUp:
    supers = draw(st.integers(0, 3))
    return SetUp(
        hive=HIVE.key,
        frames=draw(st.integers(2, 11)),
        dummy_boards=draw(st.integers(0, 2)),
        supers=supers,
        excluder=supers > 0,
        entrance_mm=draw(st.sampled_from([30, 60, 120])),
        tray_open_mm=draw(st.sampled_from([0, 100, 460])),
        cover=draw(st.sampled_from(["crown board", "vented"])),
    )


@given(set_ups(), set_ups())
def test_the_steps_lead_to_what_was_chosen(now: SetUp, chosen: SetUp) -> None:
    assert set_up_after(now, steps_to(HIVE, now, chosen)) == chosen


@given(set_ups())
def test_nothing_is_to_be_done_where_nothing_changes(now: SetUp) -> None:
    assert steps_to(HIVE, now, now) == ()


@given(set_ups(), set_ups())
def test_a_stack_to_leave_is_left_whatever_stood_there(now: SetUp, then: SetUp) -> None:
    left: Action = LeaveStack(
        frames=then.frames, dummy_boards=then.dummy_boards, supers=then.supers
    )
    after = set_up_after(now, (left,))
    assert (after.frames, after.dummy_boards, after.supers) == (
        then.frames,
        then.dummy_boards,
        then.supers,
    )


@given(set_ups())
def test_looking_and_lifting_change_no_stack(now: SetUp) -> None:
    assert set_up_after(now, (Heft(), Look(at="eggs"))) == now


def test_an_upper_box_goes_on_over_the_nest_as_all_else_leaves_it() -> None:
    """In whichever order the decisions name it: a board is not taken out twice."""
    now = SetUp(hive=HIVE.key, frames=10, dummy_boards=1)
    upper = Demaree(frames=11, again_by=date(2027, 5, 20))
    done = (upper, Frames(more=1), Boards(more=-1))
    after = set_up_after(now, done)
    assert after == set_up_after(now, reversed(done))
    assert (after.frames, after.dummy_boards, after.brood_boxes) == (22, 0, 2)

"""Room and warmth: frames follow the bees; tray, top and entrance the season."""

from dataclasses import asdict, replace
from datetime import date

import numpy as np
import pytest
from tests.advice.situations import Case, situation

from combwright.advice.deciding import Deciding
from combwright.advice.decisions import space
from combwright.advice.decisions.space import Space
from combwright.advice.kit_acts import Boards, Entrance, Feeding, Frames, SuperOff
from combwright.advice.plan import plan
from combwright.advice.prices import Prices
from combwright.advice.season_ahead import LEAST_GAIN
from combwright.advice.words.wording import many

MAY = Case(date(2027, 5, 8), 7.0, 4.0, 6.0, 8)


def decided(case: Case) -> Space:
    return Deciding(situation(case)).of(space.decide)


def test_bees_beyond_their_frames_get_more() -> None:
    told = decided(replace(MAY, frames_of_bees=9.0, frames_of_brood=6.0))
    assert [each.more > 0 for each in told.asks(Frames)] == [True]


@pytest.mark.parametrize(("bees", "more"), [(8.0, 1), (10.0, 2)])
def test_the_second_frame_is_weighed_as_the_first_is(bees: float, more: int) -> None:
    """Of two frames each must be covered soon: where bees hang out they are worth two at once."""
    told = decided(replace(MAY, frames_of_bees=bees, frames_of_brood=0.6 * bees, stores_kg=9.0))
    assert sum(each.more for each in told.asks(Frames)) >= more
    of = "worth_more" if "worth_more" in told.inputs else "super_worth_more"
    assert told.inputs[of] > more * LEAST_GAIN


@pytest.mark.parametrize("bees", [4.0, 7.0, 8.5])
def test_nothing_is_added_for_a_queen_that_does_not_lay(bees: float) -> None:
    lost = replace(MAY, frames_of_bees=bees, frames_of_brood=0.0, queen="lost", frames=7)
    assert decided(lost).set_up.frames <= 7


@pytest.mark.parametrize("day", [4, 6, 8])
def test_few_bees_on_many_frames_without_a_board_are_closed_up_in_spring(day: int) -> None:
    few = situation(Case(date(2027, 4, day), 3.0, 1.2, 2.5, 11))
    bare = few.standing.set_up.model_copy(update={"dummy_boards": 0})
    told = Deciding(few.with_set_up(bare)).of(space.decide).set_up
    assert told.frames < 11
    assert told.dummy_boards > 0


def test_the_more_bees_the_wider_the_entrance() -> None:
    widths = [
        decided(replace(MAY, frames_of_bees=b, frames_of_brood=0.5 * b)).set_up.entrance_mm
        for b in (2.5, 5.0, 8.0)
    ]
    assert widths == sorted(widths)
    assert widths[0] < widths[-1]


@pytest.mark.parametrize(
    "case", [replace(MAY, queen="virgin"), replace(MAY, disease_signs="sunken caps")]
)
def test_what_is_kept_shut_stays_as_it_stands(case: Case) -> None:
    case = replace(case, frames_of_bees=9.0)
    told = decided(case)
    assert not told.actions
    assert told.set_up == situation(case).standing.set_up


def test_in_winter_only_the_air_is_set() -> None:
    told = decided(replace(MAY, on=date(2027, 12, 8), frames_of_brood=0.0))
    assert not told.asks(Frames)
    assert told.set_up.tray_open_mm > 400


def test_a_colony_starving_under_empty_supers_loses_them() -> None:
    starving = Case(date(2027, 5, 8), 9.0, 6.0, 0.4, 11, supers=1, nectar=0.0)
    told = decided(starving)
    assert [each.why for each in told.asks(SuperOff)] == ["must be fed"]


def test_an_entrance_that_is_right_is_not_told() -> None:
    at = situation(MAY)
    first = Deciding(at).of(space.decide)
    again = Deciding(at.with_set_up(first.set_up)).of(space.decide)
    assert not again.asks(Entrance)


def test_the_second_choice_is_not_the_first() -> None:
    told = [decided(replace(MAY, frames_of_bees=bees)) for bees in (4.0, 7.0, 9.0)]
    named = [each for each in told if each.runner_up]
    assert named
    for each in named:
        stack = [many(each.set_up.frames, "frame"), many(each.set_up.dummy_boards, "board")]
        stack += [many(each.set_up.supers, "super")] if each.set_up.supers else []
        assert each.runner_up.partition(":")[0] != ", ".join(stack)


@pytest.mark.parametrize("on", [date(2027, 5, 1), date(2027, 6, 14), date(2027, 7, 10)])
@pytest.mark.parametrize("bees", [7.0, 10.0])
def test_supers_with_honey_stay_on_where_hunger_is_not_likely(on: date, bees: float) -> None:
    """A look, and the branch for a bare colony, come before honey is taken off unseen."""
    case = Case(on, bees, 0.5 * bees, 2.5, 11, supers=1, honey_above_kg=2.0)
    told = decided(case)
    assert told.inputs["hunger_as_it_is"] >= 0.5 or not told.asks(SuperOff)


@pytest.mark.parametrize("on", [date(2027, 4, 24), date(2027, 5, 10), date(2027, 6, 1)])
@pytest.mark.parametrize("frames", [5, 6, 8])
def test_frames_are_added_only_where_bees_may_soon_cover_them(on: date, frames: int) -> None:
    for bees in (2.0, 3.0, 3.6, 5.0):
        case = Case(on, bees, 0.45 * bees, 5.0, frames)
        told = decided(case)
        assert told.set_up.frames <= max(frames, bees + 3.0), case


@pytest.mark.parametrize("on", [date(2027, 4, 24), date(2027, 5, 10), date(2027, 9, 10)])
@pytest.mark.parametrize("bees", [2.0, 3.6, 5.0, 8.0])
def test_boards_alone_go_in_only_where_they_are_worth_it(on: date, bees: float) -> None:
    for frames in (6, 8, 9):
        told = decided(replace(MAY, on=on, frames_of_bees=bees, frames=frames))
        boards_alone = told.asks(Boards) and not told.asks(Frames)
        assert not boards_alone or told.inputs["worth_more"] > 0.5


@pytest.mark.parametrize("month", [7, 8, 9])
@pytest.mark.parametrize(("hive", "bees"), [("nuc 6 polystyrene", 4.0), ("national timber", 9.0)])
def test_where_robbers_may_be_about_the_entrance_is_narrowed_before_it_is_fed(
    month: int, hive: str, bees: float
) -> None:
    frames = 6 if bees < 6.0 else 10
    case = Case(date(2027, month, 20), bees, 2.0, 1.0, frames, hive, nectar=0.0)
    quiet, robbed = (
        plan(replace(situation(case), robbed=chance), with_branches=False) for chance in (0.0, 0.6)
    )
    assert robbed.portion.grams > 0
    assert robbed.set_up.entrance_mm <= 15 < quiet.set_up.entrance_mm
    told = [type(each) for each in robbed.actions if isinstance(each, Entrance | Feeding)]
    assert told == [Entrance, Feeding]


@pytest.mark.parametrize(("bees", "stores"), [(2.25, 4.0), (2.35, 3.9), (2.45, 3.8), (2.4, 5.0)])
def test_a_frame_that_stays_cold_must_bring_more_than_a_trifle(bees: float, stores: float) -> None:
    """Where the queen is short of room more often on it, it is not added for next to nothing."""
    prices = Prices(**{name: 0.6 * price for name, price in asdict(Prices()).items()})
    few = situation(Case(date(2027, 5, 10), bees, 0.45 * bees, stores, 4, prices=prices))
    often = few.with_members(np.repeat(np.arange(len(few.colonies)), 4))
    told = space.space(often)
    shorter = told.inputs["no_room"] - told.inputs["no_room_as_it_is"]
    assert shorter <= 4 / len(often.colonies) or told.inputs["worth_more"] > 1.0

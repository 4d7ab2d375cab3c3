"""Food: the least portion that keeps the limits, and none without a reason."""

from dataclasses import replace
from datetime import date
from itertools import pairwise

import numpy as np
import pytest
from tests.advice.situations import AHEAD, Case, situation
from tests.advice.test_stable import STEP_G, STEP_SHARE

from combwright.advice.bee_acts import LeaveShut
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import food, queen
from combwright.advice.decisions.food import FEEDER_G, Food
from combwright.advice.decisions.going import goes
from combwright.advice.prices import Prices
from combwright.advice.situation import MARGIN_DAYS, Limits

APRIL = Case(date(2027, 4, 20), 7.0, 4.0, 3.0, 8, nectar=0.0)


def decided(case: Case) -> Food:
    return Deciding(situation(case)).of(food.decide)


def test_a_full_larder_is_not_fed_and_a_bare_one_is() -> None:
    assert decided(replace(APRIL, stores_kg=9.0)).portion.grams == 0
    assert decided(replace(APRIL, stores_kg=1.0)).portion.grams > 0


def test_feeding_never_makes_hunger_more_likely() -> None:
    for stores in (0.5, 1.0, 2.0, 4.0):
        told = decided(replace(APRIL, stores_kg=stores))
        assert told.tried.chances["hunger"] <= told.without.chances["hunger"]


@pytest.mark.parametrize("stores", [0.5, 2.0, 6.0])
def test_the_portion_by_the_day_makes_the_portion(stores: float) -> None:
    portion = decided(replace(APRIL, stores_kg=stores)).portion
    assert 0 <= portion.grams <= FEEDER_G
    assert portion.grams - portion.per_day_g * portion.days < max(1, portion.days)


def test_it_is_hand_warm_in_the_cool_and_fondant_in_the_cold() -> None:
    cool, warm = (
        decided(replace(APRIL, stores_kg=0.8, warmer_k=k)).portion.hand_warm for k in (0.0, 12.0)
    )
    assert (cool, warm) == (True, False)
    cold = decided(replace(APRIL, on=date(2027, 2, 10), stores_kg=1.0, warmer_k=-4.0))
    assert cold.portion.feed == "fondant"


def test_no_action_where_nothing_is_given() -> None:
    told = decided(replace(APRIL, stores_kg=9.0))
    assert not told.actions
    assert told.is_told
    assert told.because


GRID = [date(2027, 4, 10), date(2027, 4, 24), date(2027, 5, 10), date(2027, 6, 12)]


def of_bees(on: date, bees: float, stores: float, days: int = 7) -> int:
    frames = int(min(11, max(5, bees + 1)))
    case = Case(on, bees, 0.5 * bees, stores, frames, days=days, nectar=0.0)
    at = situation(case)
    return food.food(at, at.standing.set_up).portion.grams


@pytest.mark.parametrize("on", GRID)
@pytest.mark.parametrize("stores", [1.0, 2.0])
def test_more_bees_on_the_same_stores_are_never_given_less(on: date, stores: float) -> None:
    given = [of_bees(on, bees, stores) for bees in (2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)]
    assert given == sorted(given)
    assert given[-1] > given[0]


@pytest.mark.parametrize("on", GRID)
@pytest.mark.parametrize("bees", [3.0, 6.0, 9.0])
def test_more_days_are_never_given_less(on: date, bees: float) -> None:
    given = [of_bees(on, bees, 2.0, days) for days in (5, 7, 10, 12, 14)]
    assert given == sorted(given)


@pytest.mark.parametrize("on", GRID)
@pytest.mark.parametrize("bees", [3.0, 6.0])
def test_a_portion_grows_smoothly_from_nothing_as_stores_get_fewer(on: date, bees: float) -> None:
    given = [of_bees(on, bees, stores) / 7 for stores in np.arange(6.0, 0.4, -0.5)]
    assert given[0] == 0
    assert given == sorted(given)
    assert all(more - less <= max(STEP_G, STEP_SHARE * more) for less, more in pairwise(given))


@pytest.mark.parametrize("on", GRID[::2])
def test_a_portion_is_none_or_worth_carrying(on: date) -> None:
    """A quarter of a litre is what keepers give to small colonies and nucs; less is not carried."""
    given = [of_bees(on, 4.0, stores, days=4) for stores in np.arange(4.0, 1.4, -0.25)]
    assert not any(0 < grams < 0.24 * 1287 for grams in given)
    assert given[0] < given[-1]


def test_where_all_that_it_lacks_would_do_harm_it_is_given_a_part() -> None:
    tight = situation(Case(date(2027, 5, 13), 4.0, 3.0, 1.4, 5, seed=5))
    careless = replace(tight, limits=Limits(no_room=1.0, chilled=1.0))
    part, whole = (food.food(at, at.standing.set_up).portion.grams for at in (tight, careless))
    assert 0 < part < whole


@pytest.mark.parametrize("bees", [8.0, 10.0])
def test_a_strong_colony_in_the_june_gap_gets_litres(bees: float) -> None:
    """The trade gives four to five litres; without stores and without nectar here too."""
    given = of_bees(date(2027, 6, 14), bees, 1.0)
    assert given >= 3.0 * 1287


@pytest.mark.parametrize("on", [date(2027, 3, 5), date(2027, 3, 20), date(2027, 4, 10)])
@pytest.mark.parametrize("bees", [3.0, 5.0, 8.0])
def test_a_feed_beyond_need_brings_more_than_its_sugar(on: date, bees: float) -> None:
    case = Case(on, bees, 0.35 * bees, 6.0, 9, nectar=0.0)
    told = decided(case)
    if told.portion.grams and told.inputs["hunger_without"] <= 0.02:
        is_short = told.inputs["stores_left_unfed_kg"] < told.inputs["reserve_kg"]
        sugar_kg = told.portion.grams * told.portion.sugar_fraction / 1000.0
        assert is_short or told.inputs["worth_more"] > Prices().sugar * sugar_kg


@pytest.mark.parametrize("on", [date(2027, 3, 20), date(2027, 4, 24), date(2027, 5, 20)])
@pytest.mark.parametrize(("bees", "stores"), [(3.0, 8.0), (6.0, 10.0), (9.0, 14.0)])
def test_a_colony_with_combs_of_stores_is_not_fed(on: date, bees: float, stores: float) -> None:
    told = decided(Case(on, bees, 0.4 * bees, stores, 11, nectar=0.0))
    assert told.inputs["hunger_without"] > 0.02 or told.portion.grams == 0


def test_a_colony_left_shut_for_its_queen_is_fed_for_as_long() -> None:
    waiting = replace(APRIL, on=date(2027, 6, 3), stores_kg=0.6, queen="cell", days=7)
    told = Deciding(situation(waiting))
    (shut,) = told.of(queen.decide).asks(LeaveShut)
    assert shut.until is not None
    portion = told.of(food.decide).portion
    assert portion.grams > 0
    assert portion.days == min((shut.until - waiting.on).days, AHEAD - MARGIN_DAYS)


@pytest.mark.parametrize("on", [date(2027, 7, 28), date(2027, 8, 10)])
@pytest.mark.parametrize("stores", [0.5, 3.0])
def test_what_is_to_be_united_is_not_fed_for_a_winter(on: date, stores: float) -> None:
    """Nor for less: its bees go to a colony that has food."""
    case = Case(on, 2.0, 0.0, stores, 8, queen="lost")
    told = Deciding(situation(case))
    assert goes(told)
    assert told.of(food.decide).portion.grams == 0

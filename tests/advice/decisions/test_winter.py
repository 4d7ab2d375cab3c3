"""Winter: strength and stores in autumn, hefting and fondant in the cold."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import ClearEntrance, Heft, Look, MakeFast, Uniting
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import food, winter
from combwright.advice.decisions.winter import Winter
from combwright.advice.kit_acts import Feeding
from combwright.advice.plan import plan
from combwright.advice.situation import Situation
from combwright.terms.entries import Visit

SEPTEMBER = Case(date(2027, 9, 8), 8.0, 3.0, 12.0, 11)
JANUARY = Case(date(2028, 1, 8), 7.0, 0.0, 12.0, 11)


def decided(case: Case) -> Winter:
    return Deciding(situation(case)).of(winter.decide)


def test_the_lighter_the_colony_the_more_is_fed() -> None:
    fed = [decided(replace(SEPTEMBER, stores_kg=kg)).syrup_kg for kg in (6.0, 9.0, 12.0, 15.0)]
    assert fed == sorted(fed, reverse=True)
    assert fed[0] > fed[-1] > 0.0


def test_a_heavy_one_is_not_fed() -> None:
    told = decided(replace(SEPTEMBER, hive="commercial", frames_of_brood=1.0, stores_kg=26.0))
    assert (told.syrup_kg, told.fondant_kg) == (0.0, 0.0)


def test_a_nuc_needs_less_than_a_hive() -> None:
    nuc = replace(SEPTEMBER, hive="nuc 6 polystyrene", frames=6, frames_of_bees=5.0, stores_kg=7.0)
    assert decided(nuc).inputs["target_kg"] < decided(SEPTEMBER).inputs["target_kg"]


def test_a_weak_hive_is_united_and_not_fed() -> None:
    weak = replace(SEPTEMBER, frames_of_bees=2.0, frames_of_brood=1.0, stores_kg=6.0)
    assert decided(weak).asks(Uniting)
    assert not plan(situation(weak)).asks(Feeding)


def test_after_the_last_day_for_syrup_it_is_fondant() -> None:
    late = decided(replace(SEPTEMBER, on=date(2027, 10, 20), stores_kg=8.0))
    assert late.syrup_kg == 0.0
    assert late.fondant_kg > 0.0


def test_in_the_cold_it_is_hefted_and_a_light_one_gets_fondant() -> None:
    heavy, light = decided(JANUARY), decided(replace(JANUARY, stores_kg=2.0))
    assert heavy.asks(Heft)
    assert heavy.asks(ClearEntrance)
    assert heavy.fondant_kg == 0.0
    assert light.fondant_kg > 0.0


@pytest.mark.parametrize("month", [3, 4, 5, 6, 7])
def test_from_spring_to_summer_winter_asks_for_nothing(month: int) -> None:
    told = decided(replace(SEPTEMBER, on=date(2027, month, 10)))
    assert not told.actions
    assert not told.because


@pytest.mark.parametrize(
    ("month", "day", "guarded"),
    [(8, 28, False), (9, 19, False), (9, 20, True), (9, 30, True), (10, 25, False)],
)
def test_it_is_made_fast_in_the_last_days_of_september(
    month: int, day: int, *, guarded: bool
) -> None:
    told = decided(replace(SEPTEMBER, on=date(2027, month, day)))
    assert bool(told.asks(MakeFast)) is guarded


@pytest.mark.parametrize("on", [date(2027, 8, 20), date(2027, 9, 10), date(2027, 10, 12)])
def test_few_bees_are_fed_towards_less(on: date) -> None:
    """One frame of bees is not fed towards the stores of ten."""
    wanted = [
        decided(replace(SEPTEMBER, on=on, frames_of_bees=b, frames_of_brood=0.5)).inputs
        for b in (1.0, 3.0, 5.0, 8.0, 11.0)
    ]
    targets = [each["target_kg"] for each in wanted]
    assert targets == sorted(targets)
    assert targets[0] < 8.0
    assert targets[-1] == 20.0


def test_what_is_too_weak_to_winter_is_not_fed_for_winter_in_august() -> None:
    weak = replace(SEPTEMBER, on=date(2027, 8, 20), frames_of_bees=1.0, frames_of_brood=0.3)
    told = decided(replace(weak, stores_kg=3.0))
    assert (told.syrup_kg, told.fondant_kg) == (0.0, 0.0)


def test_warm_days_of_october_are_still_days_for_syrup() -> None:
    """Syrup gives way to fondant with the warmth, not at a date."""
    warm, cool = (
        decided(replace(SEPTEMBER, on=date(2027, 10, 4), stores_kg=8.0, warmer_k=k))
        for k in (3.0, -3.0)
    )
    assert (warm.syrup_kg > 0.0, warm.fondant_kg > 0.0) == (True, False)
    assert (cool.syrup_kg > 0.0, cool.fondant_kg > 0.0) == (False, True)


def noted_with(case: Case, frames: float, days_ago: int) -> Situation:
    at = situation(case)
    seen = Visit(
        id=UUID(int=9),
        on=case.on - timedelta(days=days_ago),
        colony="colony",
        frames_of_bees=frames,
    )
    return replace(at, history=(*at.history, seen))


@pytest.mark.parametrize("on", [date(2027, 9, 5), date(2027, 9, 25), date(2027, 10, 9)])
@pytest.mark.parametrize("believed", [3.1, 3.3, 3.8])
def test_what_was_counted_lately_as_too_weak_is_united_whatever_is_believed(
    on: date, believed: float
) -> None:
    case = replace(SEPTEMBER, on=on, frames_of_bees=believed, frames_of_brood=0.8)
    united = [
        bool(Deciding(noted_with(case, *seen)).of(winter.decide).asks(Uniting))
        for seen in ((2.5, 3), (2.5, 40), (4.0, 3))
    ]
    assert united == [True, False, False]


@pytest.mark.parametrize(("before", "is_united"), [(9.0, False), (4.0, True)])
def test_so_few_after_so_many_are_counted_again_before_they_are_united(
    before: float, *, is_united: bool
) -> None:
    """The slip of one line in September must not cost a colony."""
    weak = replace(SEPTEMBER, frames_of_bees=2.0, frames_of_brood=0.8)
    at = noted_with(weak, 2.0, 0)
    earlier = noted_with(weak, before, 20).history[-1]
    told = Deciding(replace(at, history=(earlier, at.history[-1]))).of(winter.decide)
    assert bool(told.asks(Uniting)) is is_united
    assert [look.at for look in told.asks(Look)] == ([] if is_united else ["bees"])
    again = noted_with(weak, 2.0, 7).history[-1]
    sure = Deciding(replace(at, history=(earlier, again, at.history[-1]))).of(winter.decide)
    assert sure.asks(Uniting), "counted twice, it is so"


def test_a_light_one_gets_the_more_the_less_it_has_and_never_less_than_a_pack() -> None:
    fed = [decided(replace(JANUARY, stores_kg=kg)).fondant_kg for kg in (1.0, 3.0, 5.0, 12.0)]
    assert fed == sorted(fed, reverse=True)
    assert all(kg == 0.0 or 1.0 <= kg <= 2.5 for kg in fed)
    assert fed[-1] == 0.0


DAYS = [(7, 14), (7, 15), (7, 31), (8, 1), (8, 20), (8, 21)]


@pytest.mark.parametrize(
    ("bees", "stores", "frames"), [(4.0, 3.0, 6), (6.0, 8.0, 9), (9.0, 5.0, 11)]
)
def test_feeding_for_winter_begins_without_a_step(bees: float, stores: float, frames: int) -> None:
    """By the day the portion changes by less than a litre; the trade begins it about 1 August."""
    fed = [
        decided(Case(date(2027, *day), bees, 0.4 * bees, stores, frames, days=10)).syrup_kg
        for day in DAYS
    ]
    assert all(abs(fed[i + 1] - fed[i]) < 1.29 for i in (0, 2, 4))
    assert fed[0] == 0.0
    assert fed[5] > 0.0
    assert fed == [*sorted(fed[:5]), fed[5]]


def test_with_a_super_on_nothing_is_fed_for_winter_in_july() -> None:
    bare = Case(date(2027, 7, 31), 9.0, 4.0, 3.0, 11, supers=1)
    assert decided(bare).syrup_kg == 0.0
    assert decided(replace(bare, supers=0)).syrup_kg > 0.0


def test_what_it_lacks_meanwhile_is_given_where_that_is_more() -> None:
    """In mid July winter asks for little yet; a colony that would starve is fed as in June."""
    starving = Case(date(2027, 7, 19), 8.0, 4.0, 0.5, 9, nectar=0.0)
    deciding = Deciding(situation(starving))
    for_winter = deciding.of(winter.decide).syrup_kg
    assert deciding.of(food.decide).portion.grams > 1000.0 * for_winter > 0.0


@pytest.mark.parametrize(("month", "is_asked"), [(9, False), (12, True)])
def test_supers_that_the_book_leaves_on_in_the_cold_are_asked_after(
    month: int, *, is_asked: bool
) -> None:
    at = situation(Case(date(2027, month, 10), 8.0, 0.0, 14.0, 11, supers=1))
    asked = winter.still_supered(at)
    assert bool(asked) is is_asked
    assert all("excluder" in each for each in asked)
    assert not winter.still_supered(situation(JANUARY))

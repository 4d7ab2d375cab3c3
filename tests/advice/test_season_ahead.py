"""The season ahead in money: equal candidates are equal, and prices move what they should."""

from dataclasses import replace
from datetime import date, timedelta
from functools import cache

import numpy as np
import pytest
from tests.advice.situations import Case, drawn, situation

from combwright.advice.bee_acts import Divide, Give
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import nucs
from combwright.advice.kit_acts import Feeding, Frames, SuperOn
from combwright.advice.plan import plan
from combwright.advice.prices import NUCS, Prices
from combwright.advice.season_ahead import ahead_of, season_ends
from combwright.advice.trial import doing
from combwright.advice.weighing import gain, weigh

AT = situation(Case(date(2027, 4, 24), 8.0, 4.0, 6.0, 9))
FED = (Feeding(feed="syrup", grams=1500, sugar_fraction=0.6),)
SEASON = [
    each
    for each in (drawn(number) for number in range(9000, 9400))
    if 4 <= each.on.month <= 7 and each.queen == "laying" and not each.disease_signs
][:12]


def planned(case: Case, **prices: float) -> tuple[int, int]:
    """Supers on the set-up, and grams given."""
    told = plan(situation(replace(case, prices=replace(Prices(), **prices))), with_branches=False)
    return told.set_up.supers, told.portion.grams


def given(case: Case, price: float) -> int:
    """Frames of brood that go for nucs where every one brings this price, its queen's too."""
    prices = replace(Prices(), **dict.fromkeys(NUCS, price))
    decided = Deciding(situation(replace(case, prices=prices))).of(nucs.decide)
    return sum(each.frames_of_brood for each in decided.asks(Give)) + len(decided.asks(Divide))


def test_equal_candidates_bring_the_same_and_order_does_not_matter() -> None:
    idle, fed = doing(AT, ()), doing(AT, FED)
    one, two, three = ahead_of(AT.colonies, [idle, fed, idle], AT.account)
    assert np.array_equal(one.money, three.money)
    again, first = ahead_of(AT.colonies, [fed, idle], AT.account)
    assert again.money == pytest.approx(two.money)
    assert first.money == pytest.approx(one.money)


def test_weighing_leaves_the_colony_as_it_was() -> None:
    before = AT.colonies.copy()
    weigh(AT, [doing(AT, FED)], [FED])
    assert np.array_equal(AT.colonies, before)


def test_work_and_what_it_uses_up_are_charged() -> None:
    idle = doing(AT, ())
    free, charged = weigh(AT, [idle, idle], [(), (Frames(more=1), SuperOn())])
    prices = Prices()
    paid = prices.frame_of_foundation + prices.super + prices.work(5.0)
    assert gain(free, charged).money == pytest.approx(paid)
    assert gain(charged, free).minutes == charged.minutes - free.minutes > 0.0
    assert gain(charged, charged).minutes == 0.0


def test_a_swarm_in_spring_costs_and_a_later_one_costs_less() -> None:
    spring, summer = (
        situation(Case(day, 9.0, 5.0, 8.0, 11)).account.swarm_loss
        for day in (date(2027, 4, 25), date(2027, 7, 20))
    )
    assert spring > summer > 0.0


@pytest.mark.parametrize("month", range(1, 13))
def test_a_season_ends_in_october_but_never_before_the_next_visits(month: int) -> None:
    on = date(2027, month, 20)
    ends = season_ends(on, 31)
    assert ends >= on + timedelta(days=31)
    assert ends == date(2027, 10, 1) or month >= 9


@cache
def by_honey(number: int) -> list[int]:
    return [planned(SEASON[number], honey=honey)[0] for honey in (2.0, 8.0, 20.0)]


@pytest.mark.parametrize("number", range(len(SEASON)))
def test_dearer_honey_never_means_fewer_supers(number: int) -> None:
    supers = by_honey(number)
    assert supers == sorted(supers)


@pytest.mark.parametrize("number", range(len(SEASON)))
def test_dearer_sugar_never_means_more_of_it(number: int) -> None:
    grams = [planned(SEASON[number], sugar=sugar)[1] for sugar in (0.2, 1.1, 6.0)]
    assert grams == sorted(grams, reverse=True)


@pytest.mark.parametrize("number", range(len(SEASON)))
def test_dearer_nucs_never_mean_fewer_of_them(number: int) -> None:
    frames = [given(SEASON[number], price) for price in (40.0, 150.0, 400.0)]
    assert frames == sorted(frames)


def test_a_strong_colony_in_late_may_gives_at_the_usual_prices_and_none_where_nobody_buys() -> None:
    strong = Case(date(2027, 5, 25), 13.0, 7.0, 9.0, 11)
    assert given(strong, 190.0) >= 1
    assert given(strong, 0.0) == 0

"""What things are worth by week: the curves that a keeper would expect."""

from datetime import date

import pytest

from combwright.advice.numbers import numbers
from combwright.advice.prices import Prices
from combwright.services.worth import Worth, worth_on


@pytest.fixture(scope="module")
def worth() -> Worth:
    return worth_on((), date(2027, 4, 1), "Dublin Airport")


def at(worth: Worth, name: str, month: int) -> float:
    """Mean worth over the weeks of a month."""
    values = worth.curves[name]
    found = [value for week, value in zip(worth.weeks, values, strict=True) if week.month == month]
    return sum(found) / len(found)


def test_a_bee_in_april_is_worth_several_in_july(worth: Worth) -> None:
    assert at(worth, "a frame of bees", 4) > 2.0 * at(worth, "a frame of bees", 7) > 0.0


def test_sugar_before_any_flow_brings_no_more_than_it_costs(worth: Worth) -> None:
    assert 0.0 <= at(worth, "a kilogram of stores", 3) < Prices().sugar


def test_stores_are_worth_most_in_a_gap_and_nothing_once_it_is_fed_for_winter(worth: Worth) -> None:
    stores = {month: at(worth, "a kilogram of stores", month) for month in range(3, 10)}
    assert max(stores[4], stores[5], stores[6]) > 2.0 * stores[3]
    assert stores[9] < stores[8] < stores[6]


def test_mites_cost_most_in_spring_and_a_young_queen_is_worth_most_then(worth: Worth) -> None:
    for name in ("a hundred mites fewer", "a queen a year younger"):
        months = [at(worth, name, month) for month in range(3, 8)]
        assert months == sorted(months, reverse=True)
        assert months[-1] > 0.0


def test_a_super_in_march_does_not_pay_and_in_the_main_flow_brings_more(worth: Worth) -> None:
    prices, name = Prices(), "a super today"
    pays = prices.super + prices.work(numbers("minutes")["super"].value)
    assert at(worth, name, 3) < pays
    assert max(at(worth, name, month) for month in (5, 6, 7)) > at(worth, name, 3)

"""Prices in the book: the last one up to the day counts, and reaches the decisions."""

from datetime import date
from pathlib import Path
from uuid import uuid4

import pytest

from combwright.advice.prices import Prices
from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.rounds.price_list import price_list, prices_on, set_prices
from combwright.services.rounds.situations import AskedRound, situations_of
from combwright.terms.entries import Aim, Colony, Noted, Price, Yard
from combwright.terms.errors import NotFoundError, OutOfRangeError

ON = date(2027, 5, 1)


def honey(amount: float, on: date) -> Price:
    return Price(id=uuid4(), on=on, of="honey", amount=amount)


def test_the_last_price_up_to_the_day_counts() -> None:
    entries = [honey(7, date(2027, 3, 1)), honey(9, date(2027, 4, 1)), honey(5, date(2027, 6, 1))]
    assert prices_on(entries, ON).honey == 9.0
    assert prices_on([], ON) == Prices()


def test_an_aim_weighs_prices_but_does_not_change_what_is_shown_as_set() -> None:
    entries: list[Noted] = [honey(9, date(2027, 4, 1))]
    entries.append(Aim(id=uuid4(), on=date(2027, 4, 2), aim="honey first"))
    assert prices_on(entries, ON).honey > 9.0
    told = price_list(entries, ON)
    assert told.aim == "honey first"
    assert next(each.amount for each in told.prices if each.of == "honey") == 9.0


def test_prices_that_are_set_reach_the_decisions(tmp_path: Path) -> None:
    book = Book(tmp_path / "keeper.book")
    start = date(2027, 4, 1)
    yard = Yard(id=uuid4(), on=start, yard="Top Field")
    colony = Colony(id=uuid4(), on=start, colony="Reed", yard="Top Field", hive="national timber")
    add_entries(book, [yard, colony])
    set_prices(book, date(2027, 4, 2), {"mated queen": 60.0}, "few visits")
    situations = situations_of(book, AskedRound(ON, members=20))
    prices = situations.of(situations.follow("Reed")).prices
    assert prices.mated_queen == 60.0
    assert prices.road_to_a_hive > Prices().road_to_a_hive


def test_what_has_no_price_or_is_no_price_is_refused(tmp_path: Path) -> None:
    book = Book(tmp_path / "keeper.book")
    with pytest.raises(NotFoundError, match="no price of “gold”"):
        set_prices(book, ON, {"gold": 1.0}, None)
    with pytest.raises(OutOfRangeError, match="cannot be a price"):
        set_prices(book, ON, {"honey": -1.0}, None)
    with pytest.raises(NotFoundError, match="no aim “fame”"):
        set_prices(book, ON, {}, "fame")

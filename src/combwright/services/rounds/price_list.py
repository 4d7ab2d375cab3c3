"""The keeper's prices and aim, as the book has them, beside the usual ones."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import get_args
from uuid import uuid4

from combwright.advice.prices import AIMS, USUAL, Prices
from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.terms.entries import Aim, AnyEntry, Noted, Price, Priced
from combwright.terms.errors import NotFoundError, OutOfRangeError


@dataclass(frozen=True)
class PriceShown:
    """One price: what it is of, as set and as usual, and where the usual one comes from."""

    of: str
    amount: float
    usual: float
    unit: str
    low: float
    high: float
    source: str
    verified: str


@dataclass(frozen=True)
class PriceList:
    """All prices on a day, and the aim that weighs them."""

    aim: str
    prices: tuple[PriceShown, ...]


def prices_on(entries: Sequence[Noted], on: date) -> Prices:
    """Give the prices as the keeper last set them up to a day, weighed by the aim."""
    return _as_set(entries, on).aimed(aim_on(entries, on))


def aim_on(entries: Sequence[Noted], on: date) -> str:
    """Give the aim as last set up to a day."""
    aims = [entry.aim for entry in entries if isinstance(entry, Aim) and entry.on <= on]
    return aims[-1] if aims else next(iter(AIMS))


def price_list(entries: Sequence[Noted], on: date) -> PriceList:
    """Give all prices on a day, before the aim weighs them."""
    now = _as_set(entries, on)
    shown = (_shown(of, getattr(now, _field(of))) for of in get_args(Priced))
    return PriceList(aim_on(entries, on), tuple(shown))


def set_prices(book: Book, on: date, amounts: Mapping[str, float], aim: str | None) -> None:
    """Put prices and an aim into the book; an unknown name is answered with those there are."""
    _check(amounts)
    if aim is not None and aim not in AIMS:
        raise NotFoundError(f"There is no aim “{aim}”.", remedy=f"Known: {', '.join(AIMS)}.")
    said = [{"kind": "price", "of": name, "amount": amount} for name, amount in amounts.items()]
    entries: list[AnyEntry] = [
        Price.model_validate({"id": uuid4(), "on": on, **one}) for one in said
    ]
    if aim is not None:
        entries.append(Aim.model_validate({"id": uuid4(), "on": on, "aim": aim}))
    add_entries(book, entries)


def with_prices(prices: Prices, amounts: Mapping[str, float]) -> Prices:
    """Give the prices as they would be with some of them otherwise."""
    _check(amounts)
    return replace(prices, **{_field(name): amount for name, amount in amounts.items()})


MOST = 10_000.0


def _check(amounts: Mapping[str, float]) -> None:
    known = get_args(Priced)
    for name, amount in amounts.items():
        if name not in known:
            raise NotFoundError(
                f"There is no price of “{name}”.", remedy=f"Known: {', '.join(known)}."
            )
        if not 0.0 <= amount <= MOST:
            raise OutOfRangeError(
                f"{amount:g} cannot be a price.", remedy=f"Give 0 to {MOST:,.0f} of your own money."
            )


def _field(of: str) -> str:
    return of.replace(" ", "_").lower()


def _as_set(entries: Sequence[Noted], on: date) -> Prices:
    by_keeper = {
        _field(entry.of): entry.amount
        for entry in entries
        if isinstance(entry, Price) and entry.on <= on
    }
    return replace(Prices(), **by_keeper)


def _shown(of: str, amount: float) -> PriceShown:
    usual = USUAL[_field(of)]
    return PriceShown(
        of, amount, usual.value, usual.unit, usual.low, usual.high, usual.source, usual.verified
    )

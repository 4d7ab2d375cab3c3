"""The sheet that goes with bees that are sold: made from the sale and from the book."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from combwright.records.replay.known_honey import yard_on
from combwright.records.store.book_handle import Book
from combwright.records.store.contents import Contents
from combwright.science.health.bees_for_sale import (
    DATA,
    NucPoints,
    colour_caution,
    standard_faults,
)
from combwright.services.honey.tanks import keeper_of
from combwright.terms.dated import dated
from combwright.terms.entries import (
    BeesSold,
    Feed,
    Keeper,
    Noted,
    Split,
    TrayCount,
    Treatment,
    WashCount,
)
from combwright.terms.entries.bees_sold import STANDARDS
from combwright.terms.errors import NotFoundError

A_YEAR: Final = timedelta(days=365)
FED_LATELY: Final = timedelta(days=42)  # six weeks: what may still be in the combs, judgement
LAW: Final = (
    "No official certificate is asked for inside one country as far as we know; records of sales "
    "and treatments are. Check the current law of your country."
)
HAS_COMBS: Final = ("nuc", "colony")
CARE: Final = {"queen": "queen", "queen cell": "cell"}
Told = tuple[str, str]


@dataclass(frozen=True, slots=True)
class HandOver:
    """A hand-over sheet: sections of what is told, treatments, care, terms, what is missing."""

    sale: str
    title: str
    on: date
    sections: tuple[tuple[str, tuple[Told, ...]], ...]
    treatments: tuple[str, ...]
    care: tuple[str, ...]
    terms: str
    missing: tuple[str, ...]
    cautions: tuple[str, ...]
    law: str = LAW


def hand_over(book: Book, sale: str) -> HandOver:
    """Make the sheet of one sale."""
    now, keeper = book.now(), keeper_of(book)
    found = [each for each in now.entries if isinstance(each, BeesSold) and each.sale == sale]
    if not found:
        raise NotFoundError(
            f"There is no sale “{sale}” in the book.",
            remedy="“combwright bees list” names them; note “bees handed over” first.",
        )
    sold, history = found[-1], _history(now, found[-1])
    treated = tuple(_treated(history, sold))
    sections = (
        ("Seller", _seller(keeper)),
        ("Buyer", _buyer(sold)),
        ("Bees", _bees(now, sold)),
        ("Queen", _queen(now, sold)),
        ("Health", tuple(_health(history, sold))),
    )
    return HandOver(
        sale,
        f"Hand-over of {'a' if sold.count == 1 else sold.count} {bees_words(sold)}",
        sold.on,
        tuple((title, tuple(one for one in rows if one[1])) for title, rows in sections),
        treated or (("None in the last 12 months.",) if sold.no_treatment else ()),
        tuple(DATA["care"][CARE.get(sold.what, "lines")]),
        keeper.terms if keeper else "",
        tuple(_missing(sold, keeper, treated)),
        _cautions(now, sold),
    )


def bees_words(sold: BeesSold) -> str:
    """Name what was sold, one or many."""
    many = {"colony": "colonies"}.get(sold.what, f"{sold.what}s")
    return sold.what if sold.count == 1 else many


def _history(now: Contents, sold: BeesSold) -> list[Noted]:
    """Give what stands of the colony, and of those it was split from, up to the sale."""
    found: list[Noted] = []
    name, until = sold.colony, sold.on
    while name is not None:
        own = [each for each in now.of(name) if each.on <= until]
        found = [*own, *found]
        split = next((e for e in own if isinstance(e, Split) and e.new_colony == name), None)
        name, until = (split.colony, split.on) if split else (None, until)
    return list(dict.fromkeys(found))


def _seller(keeper: Keeper | None) -> tuple[Told, ...]:
    if keeper is None:
        return ()
    return (
        ("Name", keeper.keeper),
        ("Address", keeper.address),
        ("Phone", keeper.phone),
        ("Registration", keeper.registration),
    )


def _buyer(sold: BeesSold) -> tuple[Told, ...]:
    return (("Name", sold.buyer), ("Address", sold.address), ("Phone or e-mail", sold.contact))


def _bees(now: Contents, sold: BeesSold) -> tuple[Told, ...]:
    number = {
        "Combs in all": sold.combs,
        "covered by bees": sold.combs_of_bees,
        "with brood": sold.combs_of_brood,
        "full of food": sold.combs_of_food,
    }
    known = now.standings.get(sold.colony or "")
    counted = [(word, f"{n:g}") for word, n in number.items() if n is not None]
    return (
        ("What", f"{sold.count} {bees_words(sold)}"),
        ("Colony", sold.colony or ""),
        ("From the yard", sold.yard or yard_on(now.entries, sold.colony or "", sold.on)),
        ("Hive or frames", sold.box or (known.hive if known else "")),
        *counted,
        ("Age of the combs", sold.comb_age),
        ("Temper", sold.temper),
        (
            "Described by",
            DATA["standard"].get(sold.standard, {}).get("name", STANDARDS["as agreed"]),
        ),
        ("Faults told", sold.defects),
        ("Box", sold.box_deposit),
    )


def _queen(now: Contents, sold: BeesSold) -> tuple[Told, ...]:
    known = now.queens.get(sold.queen or "")
    year = sold.queen_raised.year if sold.queen_raised else known.year if known else None
    mark = sold.mark or (known.mark if known else None)
    clipped = sold.clipped if sold.clipped is not None else known.clipped if known else None
    mother = f"daughter of {known.mother}" if known and known.mother else ""
    return (
        ("Name", sold.queen or ""),
        ("Emerged", f"{sold.queen_raised:%B %Y}" if sold.queen_raised else str(year or "")),
        ("Mark", mark or ""),
        ("Clipped", {True: "yes", False: "no", None: ""}[clipped]),
        ("Origin", ", ".join(one for one in (sold.origin, mother, sold.origin_note) if one)),
    )


def _health(history: Sequence[Noted], sold: BeesSold) -> Iterator[Told]:
    by = f" by {sold.inspected_by}" if sold.inspected_by else ""
    if sold.inspected:
        yield "Inspected", f"{dated(sold.inspected)}{by}: {sold.found}".rstrip(": ")
    counts = [each for each in history if isinstance(each, TrayCount | WashCount)]
    match counts[-1:]:
        case [TrayCount() as tray]:
            told = f"{dated(tray.on)}: {tray.mites} mites on the tray in {tray.days:g} days"
        case [WashCount() as wash]:
            told = f"{dated(wash.on)}: {wash.mites} mites on {wash.bees} bees"
        case _:
            told = "none noted"
    if sold.what in HAS_COMBS:
        yield "Last mite count", told
        yield "Fed", "; ".join(_fed(history, sold)) or "nothing in the last six weeks"


def _fed(history: Sequence[Noted], sold: BeesSold) -> Iterator[str]:
    for each in history:
        if isinstance(each, Feed) and each.on > sold.on - FED_LATELY:
            yield f"{dated(each.on)} {each.grams / 1000:g} kg of {each.feed}"


def _treated(history: Sequence[Noted], sold: BeesSold) -> Iterator[str]:
    for each in history:
        if isinstance(each, Treatment) and each.on > sold.on - A_YEAR:
            batch = f", batch {each.batch}" if each.batch else ""
            until = f" to {dated(each.until)}" if each.until else ""
            named = f"{each.product} ({each.substance})" if each.product else each.substance
            yield f"{named}{batch}: {dated(each.on)}{until}"


def _missing(sold: BeesSold, keeper: Keeper | None, treated: Sequence[str]) -> Iterator[str]:
    """Say what the sheet does not tell and a good one does."""
    needed = {
        "your name and address": keeper is not None,
        "your terms for complaints": keeper is not None and bool(keeper.terms),
        "a phone or e-mail of the buyer": bool(sold.contact),
        "the day of the last inspection for disease": sold.inspected is not None,
        "treatments, or that there were none in the last 12 months": bool(
            treated or sold.no_treatment
        ),
    }
    if sold.what in HAS_COMBS:
        needed |= {
            "combs in all": sold.combs is not None,
            "combs of bees": sold.combs_of_bees is not None,
            "combs of brood": sold.combs_of_brood is not None,
            "combs of food": sold.combs_of_food is not None,
        }
    if sold.what in {*HAS_COMBS, "queen"}:
        needed["when the queen emerged"] = sold.queen_raised is not None or sold.queen is not None
    yield from (what for what, is_told in needed.items() if not is_told)


def _cautions(now: Contents, sold: BeesSold) -> tuple[str, ...]:
    known = now.queens.get(sold.queen or "")
    mark = sold.mark or (known.mark if known else None)
    year = sold.queen_raised.year if sold.queen_raised else known.year if known else None
    clipped = sold.clipped if sold.clipped is not None else known.clipped if known else None
    marked = None if mark is None else mark != "none"
    told = [colour_caution(year, mark)] if year and mark else []
    if sold.what == "nuc":
        points = NucPoints(sold.combs, sold.combs_of_bees, sold.queen_raised, marked, clipped)
        told += standard_faults(sold.standard, points, sold.on)
    return tuple(one for one in told if one)

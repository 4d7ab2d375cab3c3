"""Who got bees, what was moved, what was lost: as an inspector may ask for it."""

from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import date
from typing import Final

from combwright.records.replay.colonies import standings
from combwright.records.replay.known_honey import yard_on
from combwright.records.replay.standstill import origin, standstills
from combwright.records.store.book_handle import Book
from combwright.records.store.contents import Contents
from combwright.services.bees_sold.hand_over import bees_words
from combwright.services.book.checking import seal_words
from combwright.services.register.record import Record, WordTable
from combwright.terms.dated import dated
from combwright.terms.entries import BeesSold, End, Move, Movement, Noted
from combwright.terms.errors import OutOfRangeError

LAW: Final = (
    "Purchaser’s name, address and contact, day of despatch and last inspection are what guidance "
    "of inspectorates asks a seller to keep; where disease is found the inspector may ask for it "
    "(read, checked 27 November 2026). Check the current law of your country."
)
SOLD: Final = (
    *("day", "sale", "what", "from", "queen", "buyer", "address", "contact", "inspected"),
)
MOVED: Final = ("day", "what", "from", "to", "papers")
LOST: Final = ("day", "colony", "yard", "why")
COUNTED: Final = ("yard", "colonies")


def sales_register(book: Book, first: date, last: date, yard: str = "") -> Record:
    """Write the register of some days; of one yard, or of all."""
    if first > last:
        raise OutOfRangeError(
            f"{dated(last)}, the last day, lies before the first, {dated(first)}.",
            remedy="Give a later last day, or an earlier first one.",
        )
    now = book.now()
    some = [each for each in now.entries if first <= each.on <= last]
    counted = min(date(last.year, 11, 1), last)
    rows = (
        WordTable("Bees handed over", SOLD, tuple(_sold(some, now, yard))),
        WordTable("Moved", MOVED, tuple(_moved(some, now, yard))),
        WordTable("Lost or ended", LOST, tuple(_lost(some, now, yard))),
        WordTable(f"Colonies on {counted}", COUNTED, tuple(_counted(book, counted, yard))),
    )
    place = f", yard {yard}" if yard else ""
    return Record(
        f"Bees sold, moved and lost, {first} to {last}{place}",
        last,
        LAW,
        tuple(_missing(some, now, yard)),
        rows,
        "Every sale has its buyer’s address and contact, and an inspection.",
        seal_words(book),
    )


def _sales(some: Sequence[Noted], now: Contents, yard: str) -> Iterator[tuple[BeesSold, str]]:
    for each in some:
        if isinstance(each, BeesSold):
            place = each.yard or origin(each, now.entries)
            if yard in {"", place}:
                yield each, place


def _sold(some: Sequence[Noted], now: Contents, yard: str) -> Iterator[tuple[str, ...]]:
    for each, place in _sales(some, now, yard):
        bees = f"{each.count} {bees_words(each)}" + (f" ({each.colony})" if each.colony else "")
        raised = f"{each.queen_raised:%b %Y}" if each.queen_raised else ""
        queen = " ".join(part for part in (each.queen or "", raised, each.mark or "") if part)
        yield (
            *(str(each.on), each.sale, bees, place, queen),
            *(each.buyer, each.address, each.contact, str(each.inspected or "")),
        )


def _moved(some: Sequence[Noted], now: Contents, yard: str) -> Iterator[tuple[str, ...]]:
    for each in some:
        if isinstance(each, Move):
            what, to, papers = f"colony {each.colony}", each.yard, ""
        elif isinstance(each, Movement):
            count = f"{each.count} " if each.count else ""
            what, to, papers = f"{count}{each.what}", each.yard or each.to, each.papers
        else:
            continue
        left = origin(each, now.entries)
        if yard in {"", left, to}:
            yield str(each.on), what, left, to, papers


def _lost(some: Sequence[Noted], now: Contents, yard: str) -> Iterator[tuple[str, ...]]:
    for each in some:
        if isinstance(each, End):
            place = yard_on(now.entries, each.colony, each.on)
            if yard in {"", place}:
                yield str(each.on), each.colony, place, each.reason


def _counted(book: Book, on: date, yard: str) -> Iterator[tuple[str, str]]:
    """Count colonies by yard, as the yearly count of hives asks on 1 November."""
    now = standings(book.now().entries, book.kit, on).values()
    found = Counter(each.yard for each in now if each.ended is None or each.ended > on)
    yield from ((place, str(n)) for place, n in sorted(found.items()) if yard in {"", place})


def _missing(some: Sequence[Noted], now: Contents, yard: str) -> Iterator[str]:
    for each, _ in _sales(some, now, yard):
        lacking = [
            word
            for word, told in {
                "contact of the buyer": each.contact,
                "day of the last inspection": each.inspected,
            }.items()
            if not told
        ]
        if lacking:
            yield f"{each.on}, sale {each.sale}: {', '.join(lacking)}."
    for one in standstills(now.entries):
        if one.until is None and yard in {"", one.yard}:
            yield f"{one.yard}: {one.of} since {one.since}; nothing may leave until it is cleared."

"""Honey one step back and one step forward: from a lot, batch, colony, yard or seller."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

from combwright.records.replay.known_honey import KnownHoney, KnownLot, colonies_of
from combwright.records.store.book_handle import Book
from combwright.records.store.contents import Contents
from combwright.science.honey.lots import best_before_words
from combwright.services.book.checking import seal_words
from combwright.services.register.record import Record, WordTable
from combwright.terms.entries import HoneySale, HoneySource, JarRun, Treatment
from combwright.terms.errors import NotFoundError

A_YEAR: Final = timedelta(days=365)
LAW: Final = (
    "One step back and one step forward, as Regulation (EC) 178/2002, article 18, asks of food "
    "businesses (read second-hand, checked 27 November 2026). "
    "Check the current law of your country."
)


@dataclass(frozen=True, slots=True)
class TracedSource:
    """Honey that went into a batch: its colonies, and what was given to them in the year before."""

    honey: str
    source: HoneySource
    colonies: tuple[str, ...]
    treated: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class HoneyTrace:
    """All that hangs together with one name: where it came from, its jars, and who has them."""

    name: str
    what: str
    batches: tuple[KnownHoney, ...]
    sources: tuple[TracedSource, ...]
    lots: tuple[KnownLot, ...]
    sales: tuple[HoneySale, ...]
    seal: str = ""

    @property
    def out(self) -> int:
        """Jars that left the shelf."""
        return sum(each.sold for each in self.lots)

    @property
    def left(self) -> int:
        """Jars that should still be on the shelf."""
        return sum(each.left for each in self.lots)


def trace(book: Book, name: str) -> HoneyTrace:
    """Follow a name both ways: a lot, a batch of honey, a colony, a yard, who sold honey."""
    return replace(_hanging_together(book.now(), name), seal=seal_words(book))


def _hanging_together(now: Contents, name: str) -> HoneyTrace:
    if name in now.lots:
        lot = now.lots[name]
        return _traced(now, name, "lot", _before(now.honey, {lot.run.honey}), {name})
    if name in now.honey:
        met, what = {name}, "batch of honey"
    else:
        met, what = _fed_by(now, name)
    after = _after(now.honey, met)
    lots = {code for code, each in now.lots.items() if each.run.honey in after}
    return _traced(now, name, what, _before(now.honey, after), lots)


def _fed_by(now: Contents, name: str) -> tuple[set[str], str]:
    """Name the batches that hold honey of a colony, a yard or a seller."""
    found: set[str] = set()
    what = "colony" if name in now.standings else "yard" if name in now.yards else ""
    for source in _sources(now.honey.values()):
        sold = source.supplier.partition(",")[0].strip()
        if name in (source.yard, sold) or name in colonies_of(source, now.entries):
            found.add(source.honey)
            what = what or "seller"
    if not what:
        raise NotFoundError(
            f"“{name}” is no lot, batch of honey, colony, yard or seller of this book.",
            remedy="“combwright honey list” names the lots and batches.",
        )
    return found, what


def _sources(batches: Iterable[KnownHoney]) -> Iterable[HoneySource]:
    return (source for each in batches for source in each.sources)


def _before(batches: Mapping[str, KnownHoney], some: set[str]) -> set[str]:
    """Name the batches that honey of some came through, those themselves included."""
    found = set(some)
    while (
        more := {s.from_honey for name in found for s in batches[name].sources if s.from_honey}
        - found
    ):
        found |= more
    return found


def _after(batches: Mapping[str, KnownHoney], some: set[str]) -> set[str]:
    """Name the batches that honey of some went into, those themselves included."""
    found = set(some)
    while more := {s.honey for s in _sources(batches.values()) if s.from_honey in found} - found:
        found |= more
    return found


def _traced(now: Contents, name: str, what: str, batches: set[str], lots: set[str]) -> HoneyTrace:
    some = tuple(each for key, each in now.honey.items() if key in batches)
    jars = tuple(each for code, each in now.lots.items() if code in lots)
    return HoneyTrace(
        name,
        what,
        some,
        tuple(_source(now, each) for each in _sources(some)),
        jars,
        tuple(sorted((s for each in jars for s in each.sales), key=lambda one: one.on)),
    )


def _source(now: Contents, source: HoneySource) -> TracedSource:
    colonies = colonies_of(source, now.entries)
    treated = tuple(
        f"{each.colony}: {each.product or each.substance}, {each.on} to {each.until or each.on}"
        for colony in colonies
        for each in now.of(colony)
        if isinstance(each, Treatment) and source.on - A_YEAR <= each.on <= source.on
    )
    return TracedSource(source.honey, source, colonies, treated)


def recall(found: HoneyTrace, on: date) -> Record:
    """Write the list for calling jars back: which lots, who has them, what is on the shelf."""
    count = f"{found.out} jars are out, {found.left} should be on the shelf."
    missing = tuple(
        f"{each.on}: where {each.jars} jars of {each.lot} went is not said; if they were sold at "
        "the door, put up a notice."
        for each in found.sales
        if not each.buyer
    )
    return Record(
        f"Recall, {found.what} {found.name}: {count}",
        on,
        LAW,
        missing,
        tables(found),
        "Every jar that is out is accounted for.",
        found.seal,
    )


def tables(found: HoneyTrace) -> tuple[WordTable, ...]:
    """Give a trace as tables of words."""
    return (
        WordTable("Jars", JARS, tuple(_lot(each) for each in found.lots)),
        WordTable("Who has them", SOLD, tuple(_sale(each) for each in found.sales)),
        WordTable("Where it came from", CAME, tuple(_came(each) for each in found.sources)),
    )


JARS: Final = ("lot", "batch", "filled", "jars", "of", "best before", "out", "left")
SOLD: Final = ("day", "lot", "jars", "who", "address")
CAME: Final = (
    "batch",
    "from",
    "days",
    "supers",
    "weight",
    "colonies",
    "treated in the year before",
)


def _lot(each: KnownLot) -> tuple[str, ...]:
    run: JarRun = each.run
    return (
        *(run.lot, run.honey, str(run.on), str(run.jars), f"{run.jar_g:g} g"),
        best_before_words(run.best_before, run.shows).removeprefix("Best before "),
        *(str(each.sold), str(each.left)),
    )


def _sale(each: HoneySale) -> tuple[str, ...]:
    return (str(each.on), each.lot, str(each.jars), each.buyer or "at the door", each.address)


def _came(each: TracedSource) -> tuple[str, ...]:
    source = each.source
    batch = source.from_honey and f"batch {source.from_honey}"
    bought = source.supplier and f"{source.supplier} ({source.country})"
    return (
        each.honey,
        source.colony or source.yard or batch or bought or "",
        f"{source.first_day} to {source.on}" if source.first_day else str(source.on),
        "" if source.supers is None else str(source.supers),
        "" if source.kg is None else f"{source.kg:g} kg",
        ", ".join(each.colonies),
        "; ".join(each.treated) or ("none noted" if each.colonies else ""),
    )

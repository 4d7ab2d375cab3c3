"""Honey as the book knows it: each batch with what came in and went out, each lot of jars."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from combwright.science.honey.lots import last_day
from combwright.terms.entries import (
    Colony,
    End,
    Harvest,
    HoneyBatch,
    HoneySale,
    HoneySource,
    JarRun,
    JarWeights,
    Move,
    Noted,
    Split,
)

GRAM: Final = 1e-3  # less than this is nothing [kg]


@dataclass(frozen=True, slots=True)
class KnownHoney:
    """A batch: what came in, what stood in the tank, what went into jars or another batch. [kg]."""

    batch: HoneyBatch
    sources: tuple[HoneySource, ...] = ()
    jarred_kg: float = 0.0
    lost_kg: float = 0.0
    given_kg: float = 0.0

    @property
    def in_kg(self) -> float | None:
        """What was weighed in, if every source was."""
        weighed = [each.kg for each in self.sources if each.kg is not None]
        return sum(weighed) if weighed and len(weighed) == len(self.sources) else None

    @property
    def lost_percent(self) -> float | None:
        """What was lost from the boxes to the tank, of what came in."""
        if self.in_kg is None:
            return None
        return 100.0 * (self.in_kg - self.batch.kg) / self.in_kg

    @property
    def left_kg(self) -> float:
        """What should still be in the tank; below nought where more went out than was in."""
        left = self.batch.kg - self.jarred_kg - self.lost_kg - self.given_kg
        return 0.0 if abs(left) < GRAM else round(left, 6)


@dataclass(frozen=True, slots=True)
class KnownLot:
    """A lot of jars, to whom they went, and how they weighed."""

    run: JarRun
    sales: tuple[HoneySale, ...] = ()
    weighed: tuple[JarWeights, ...] = ()

    @property
    def sold(self) -> int:
        """Jars that went out."""
        return sum(each.jars for each in self.sales)

    @property
    def left(self) -> int:
        """Jars that should still be on the shelf."""
        return self.run.jars - self.sold

    @property
    def durable_until(self) -> date:
        """The last day that the label promises."""
        return last_day(self.run.best_before, self.run.shows)


def known_honey(entries: Iterable[Noted]) -> dict[str, KnownHoney]:
    """Replay the batches by name."""
    told = list(entries)
    found = {each.honey: KnownHoney(each) for each in told if isinstance(each, HoneyBatch)}
    for each in told:
        if isinstance(each, HoneySource) and each.honey in found:
            now = found[each.honey]
            found[each.honey] = replace(now, sources=(*now.sources, each))
        if isinstance(each, HoneySource) and each.from_honey in found:
            now = found[each.from_honey]
            found[each.from_honey] = replace(now, given_kg=now.given_kg + (each.kg or 0.0))
        if isinstance(each, JarRun) and each.honey in found:
            now = found[each.honey]
            found[each.honey] = replace(
                now,
                jarred_kg=now.jarred_kg + each.jars * each.jar_g / 1000.0,
                lost_kg=now.lost_kg + each.lost_kg,
            )
    return found


def known_lots(entries: Iterable[Noted]) -> dict[str, KnownLot]:
    """Replay the lots by their codes, in the order of filling."""
    told = list(entries)
    found = {each.lot: KnownLot(each) for each in told if isinstance(each, JarRun)}
    for each in told:
        if isinstance(each, HoneySale) and each.lot in found:
            now = found[each.lot]
            found[each.lot] = replace(now, sales=(*now.sales, each))
        if isinstance(each, JarWeights) and each.lot in found:
            now = found[each.lot]
            found[each.lot] = replace(now, weighed=(*now.weighed, each))
    return found


def colonies_of(source: HoneySource, entries: Sequence[Noted]) -> tuple[str, ...]:
    """Name the colonies that honey may have come from.

    Of a whole yard: those with honey taken there in those days; all that stood there where nothing
    is noted of single ones, so that a recall leaves none out.
    """
    if source.colony is not None:
        return (source.colony,)
    if source.yard is None:
        return ()
    since = source.first_day or source.on
    taken = [e for e in entries if isinstance(e, Harvest) and since <= e.on <= source.on]
    of_yard = sorted({e.colony for e in taken if yard_on(entries, e.colony, e.on) == source.yard})
    if of_yard:
        return tuple(of_yard)
    names = (
        getattr(e, "new_colony", None) or e.colony for e in entries if isinstance(e, Colony | Split)
    )
    stood = {name for name in names if yard_on(entries, name, source.on) == source.yard}
    return tuple(sorted(stood))


def yard_on(entries: Sequence[Noted], colony: str, on: date) -> str:
    """Name the yard of a colony on a day; nothing before it came and after it left."""
    yard = ""
    for each in entries:
        if each.on > on:
            break
        match each:
            case Colony() | Move() if each.colony == colony:
                yard = each.yard
            case Split() if each.new_colony == colony:
                yard = yard_on(entries, each.colony, each.on)
            case End() if each.colony == colony and each.on < on:
                yard = ""
    return yard

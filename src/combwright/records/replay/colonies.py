"""How each colony stands, replayed from the entries: its yard, hive, frames, boards, supers."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from itertools import groupby

from combwright.kit.catalogue import Catalogue
from combwright.records.replay.stacks import Stacks
from combwright.terms.entries import Colony, End, Move, Noted, Queen, Split, Unite


@dataclass(frozen=True, slots=True)
class KnownColony:
    """One colony as the book knows it on a day; ``None`` where nothing was noted yet."""

    colony: str
    yard: str
    hive: str
    since: date
    split_from: str | None = None
    queen_year: int | None = None
    brood_boxes: int | None = None
    frames: int | None = None
    foundation: int | None = None
    dummy_boards: int | None = None
    supers: int | None = None
    excluder: bool | None = None
    entrance_mm: int | None = None
    tray_open_mm: int | None = None
    cover: str | None = None
    pitch_mm: float | None = None
    ended: date | None = None
    ended_by: str | None = None


def standings(
    entries: Iterable[Noted], kit: Catalogue, on: date | None = None
) -> dict[str, KnownColony]:
    """Replay entries up to the end of a day: every colony that has entered, ended ones too."""
    found: dict[str, KnownColony] = {}
    stacks = Stacks(kit)
    for day, today in by_day(entries):
        if on is None or day <= on:
            for each in today:
                replay(found, each)
            stacks.pass_day(today)
    return {
        name: replace(now, **stacks.now[name].told()) if name in stacks.now else now
        for name, now in found.items()
    }


def by_day(entries: Iterable[Noted]) -> Iterator[tuple[date, list[Noted]]]:
    """Give the entries of each day."""
    for day, today in groupby(entries, key=lambda each: each.on):
        yield day, list(today)


def replay(found: dict[str, KnownColony], each: Noted) -> None:
    """Let one entry act; entries about colonies that the book does not know change nothing."""
    if isinstance(each, Colony) and each.colony not in found:
        found[each.colony] = KnownColony(
            each.colony, each.yard, each.hive, each.on, queen_year=each.queen_year
        )
    now = found.get(getattr(each, "colony", ""))
    if now is None:
        return
    if isinstance(each, Split) and each.new_colony not in found:
        found[each.new_colony] = KnownColony(
            each.new_colony, now.yard, each.hive, each.on, split_from=each.colony
        )
    found[now.colony] = after(now, each)


def after(now: KnownColony, each: Noted) -> KnownColony:
    """Tell where a colony is, with which queen, after an entry about it."""
    match each:
        case Queen() if each.queen_year is not None:
            return replace(now, queen_year=each.queen_year)
        case Move():
            return replace(now, yard=each.yard)
        case Unite():
            return replace(now, ended=each.on, ended_by="united")
        case End() if now.ended is None:
            return replace(now, ended=each.on, ended_by=each.reason)
        case _:
            return now

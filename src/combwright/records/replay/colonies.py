"""How each colony stands, replayed from the entries: its yard, hive, frames, boards, supers."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from combwright.terms.entries import (
    Change,
    Colony,
    End,
    Harvest,
    Move,
    Noted,
    Queen,
    Split,
    Stack,
    Unite,
)

STACK_FIELDS = (
    "hive",
    "frames",
    "foundation",
    "dummy_boards",
    "supers",
    "excluder",
    "entrance_mm",
    "tray_open_mm",
    "cover",
    "pitch_mm",
)


@dataclass(frozen=True, slots=True)
class Standing:
    """One colony as the book knows it on a day; ``None`` where nothing was noted yet."""

    colony: str
    yard: str
    hive: str
    since: date
    split_from: str | None = None
    queen_year: int | None = None
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


def standings(entries: Iterable[Noted], on: date | None = None) -> dict[str, Standing]:
    """Replay entries up to the end of a day.

    Parameters
    ----------
    entries
        Entries as they stand, in the order of their days.
    on
        The last day that counts; all when left out.

    Returns
    -------
    dict[str, Standing]
        Every colony that has entered the book by then, ended ones included, by name.

    """
    found: dict[str, Standing] = {}
    for each in entries:
        if on is None or each.on <= on:
            replay(found, each)
    return found


def replay(found: dict[str, Standing], each: Noted) -> None:
    """Let one entry act; entries about colonies that the book does not know change nothing."""
    if isinstance(each, Colony) and each.colony not in found:
        found[each.colony] = Standing(
            each.colony, each.yard, each.hive, each.on, queen_year=each.queen_year
        )
    now = found.get(getattr(each, "colony", ""))
    if now is None:
        return
    if isinstance(each, Split) and each.new_colony not in found:
        found[each.new_colony] = Standing(
            each.new_colony, now.yard, each.hive, each.on, split_from=each.colony
        )
    found[now.colony] = after(now, each)


def after(now: Standing, each: Noted) -> Standing:  # noqa: PLR0911  (one line a kind)
    """Tell how a colony stands after an entry about it."""
    match each:
        case Stack():
            noted = {name: getattr(each, name) for name in STACK_FIELDS}
            return replace(
                now, **{name: value for name, value in noted.items() if value is not None}
            )
        case Change():
            return changed(now, each)
        case Harvest():
            return replace(now, supers=moved(now.supers, -each.supers))
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


def changed(now: Standing, each: Change) -> Standing:
    """Put frames, boards or supers in, or take them out; a feeder is no part of the stack."""
    if each.part == "feeder":
        return now
    if each.part == "super":
        return replace(now, supers=moved(now.supers, each.count))
    if each.part == "dummy board":
        return replace(now, dummy_boards=moved(now.dummy_boards, each.count))
    foundation = now.foundation
    if each.part == "foundation frame":
        foundation = moved(foundation, each.count)
    return replace(now, frames=moved(now.frames, each.count), foundation=foundation)


def moved(before: int | None, count: int) -> int | None:
    """Count on from what was there; what was never counted stays unknown."""
    return None if before is None else max(0, before + count)

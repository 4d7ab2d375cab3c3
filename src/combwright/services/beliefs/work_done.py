"""What was done at a colony, as the charts mark it: fed, supers, divided, treated."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from combwright.terms.entries import Change, Feed, Harvest, Noted, Split, Stack, Treatment

FED: Final = "fed"
SUPERS: Final = "supers on or off"
DIVIDED: Final = "divided"
TREATED: Final = "treated"


@dataclass(frozen=True, slots=True)
class WorkDone:
    """One thing that was done on a day."""

    on: date
    what: str


def work_done(entries: Iterable[Noted], before: date) -> tuple[WorkDone, ...]:
    """Give what was done at a colony before a day, each thing once a day."""
    known = [each for each in entries if each.on < before]
    return tuple(dict.fromkeys(_of(known)))


def _of(entries: Iterable[Noted]) -> Iterator[WorkDone]:
    supers = 0
    for each in entries:
        match each:
            case Feed():
                yield WorkDone(each.on, FED)
            case Split():
                yield WorkDone(each.on, DIVIDED)
            case Treatment():
                yield WorkDone(each.on, TREATED)
            case _:
                now = _supers(each, supers)
                if now != supers:
                    yield WorkDone(each.on, SUPERS)
                supers = now


def _supers(each: Noted, before: int) -> int:
    """Count the supers on a hive after an entry."""
    match each:
        case Change(part="super"):
            return before + each.count
        case Harvest():
            return before - (each.supers or 0)
        case Stack(supers=int(now)):
            return now
    return before

"""Reading notes in the way in which their keeper counts."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Final

from combwright.belief.numbers import number
from combwright.belief.weighing.counting import OTHER
from combwright.terms.entries import Entry, HowCounted, Noted, Visit

MEANT_OTHERWISE: Final = {"brood": "combs with brood", "bees": "seams"}
FIELD: Final = {"brood": "frames_of_brood", "bees": "frames_of_bees"}


def as_counted(entries: Sequence[Noted]) -> list[Noted]:
    """Give entries with numbers of frames moved to what their keeper says they are.

    What is said holds from its day on, and what is said first before it too.
    """
    ways = [each for each in entries if isinstance(each, HowCounted)]
    if not ways:
        return list(entries)
    return [_read(each, ways) if isinstance(each, Visit) else each for each in entries]


def counting_on(entries: Sequence[Entry], on: date) -> HowCounted | None:
    """Give the way of counting that holds on a day; ``None`` where nobody ever said one."""
    ways = sorted((each for each in entries if isinstance(each, HowCounted)), key=lambda e: e.on)
    return next((each for each in reversed(ways) if each.on <= on), ways[0] if ways else None)


def _read(visit: Visit, ways: Sequence[HowCounted]) -> Visit:
    way = counting_on(ways, visit.on)
    moved: dict[str, object] = {}
    for what, meant in MEANT_OTHERWISE.items():
        frames, other = FIELD[what], OTHER[FIELD[what]]
        seen = getattr(visit, frames)
        if getattr(way, what, "") == meant and seen is not None and getattr(visit, other) is None:
            moved |= {frames: None, other: seen}
    return visit.model_copy(update=moved) if moved else visit


def doubts(entries: Sequence[Noted]) -> Mapping[str, float]:
    """Give the chance that each is counted otherwise than its heading says, before any note."""
    said = any(isinstance(each, HowCounted) for each in entries)
    return {
        f"{what}_otherwise": number("said_but_otherwise" if said else f"{what}_counted_otherwise")
        for what in FIELD
    }

"""The day on which a colony comes into the book: what it came with is known on that day already.

A round takes in what was noted before its day. Of a colony that has no notes from before, that
would be nothing; what was written of it up to its first look counts as known in the morning.
"""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from combwright.records.replay.corrections import names
from combwright.terms.entries import Colony, Noted, Visit

A_DAY = timedelta(days=1)


def openings(entries: Sequence[Noted], on: date) -> Iterator[Noted]:
    """Give what colonies came with into the book on a day, up to the first look at each."""
    coming = newcomers(entries, on)
    for each in entries:
        colony = getattr(each, "colony", None)
        if each.on == on and colony in coming:
            yield each
            if isinstance(each, Visit):
                coming.remove(colony)


def newcomers(entries: Sequence[Noted], on: date) -> set[str]:
    """Name the colonies that come into the book on a day, with no notes from before."""
    coming = {each.colony for each in entries if isinstance(each, Colony) and each.on == on}
    if not coming:
        return coming
    return coming - {name for each in entries if each.on < on for name in names(each)}


def known_on(entries: Sequence[Noted], on: date) -> list[Noted]:
    """Give the entries with those that colonies came with on a day moved to its eve."""
    early = {each.id for each in openings(entries, on)}
    if not early:
        return list(entries)
    moved = (
        each.model_copy(update={"on": on - A_DAY}) if each.id in early else each for each in entries
    )
    return sorted(moved, key=lambda each: each.on)

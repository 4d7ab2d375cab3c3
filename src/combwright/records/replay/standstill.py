"""Yards from which nothing may go, and yards that something came from them to."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.known_honey import yard_on
from combwright.science.health.notifiable import STOPS
from combwright.terms.dated import dated
from combwright.terms.entries import BeesSold, Move, Movement, Noted, Suspicion

CONTACT_DAYS: Final = 365  # moves before a suspicion that make a contact of a yard; judgement
OUTGOING: Final = BeesSold | Move | Movement
CLEAR: Final = (
    "Move and sell nothing from there until the authority clears it; then note that it is cleared. "
    "If the sign was noted by mistake, strike that note out."
)


@dataclass(frozen=True, slots=True)
class Standstill:
    """A yard from which nothing may go: for what, since when, and until when if it was cleared."""

    yard: str
    of: str
    since: date
    until: date | None = None

    def holds(self, on: date) -> bool:
        """Tell whether nothing may go on a day."""
        return self.since <= on and (self.until is None or on < self.until)


def standstills(entries: Iterable[Noted]) -> list[Standstill]:
    """Give every standstill that was, and those that still are."""
    open_now: dict[tuple[str, str], Standstill] = {}
    over = []
    for each in entries:
        if not isinstance(each, Suspicion) or each.of not in STOPS:
            continue
        key = each.yard, each.of
        if each.state == "cleared" and key in open_now:
            now = open_now.pop(key)
            over.append(Standstill(now.yard, now.of, now.since, each.on))
        elif each.state != "cleared":
            open_now.setdefault(key, Standstill(each.yard, each.of, each.on))
    return [*over, *open_now.values()]


def outgoing_clashes(stand: Sequence[Noted]) -> Iterator[Problem]:
    """Find bees and things that went out of a yard at a standstill, or out of a contact of one."""
    stopped = standstills(stand)
    if not stopped:
        return
    contacts = contact_yards(stand, stopped)
    for each in stand:
        holding = [one for one in stopped if one.holds(each.on)]
        if not holding or not isinstance(each, OUTGOING):
            continue
        yard = origin(each, stand)
        for one in holding:
            if one.yard == yard:
                what = (
                    f"Nothing may leave “{yard}”: {one.of} is suspected since {dated(one.since)}."
                )
                yield wrong(each, "on", what, CLEAR)
            elif one in contacts.get(yard, ()):
                what = (
                    f"“{yard}” is a contact: something came from “{one.yard}”, where {one.of} is "
                    f"suspected since {dated(one.since)}."
                )
                yield odd(each, what, "Ask the authority before anything goes.")


def origin(each: Noted, stand: Sequence[Noted]) -> str:
    """Name the yard that something went out of."""
    if isinstance(each, Movement):
        return each.from_yard
    colony = getattr(each, "colony", None)
    if colony is None:
        return getattr(each, "yard", None) or ""
    # where it stood before it was moved that day
    before = each.on - timedelta(days=1) if isinstance(each, Move) else each.on
    return yard_on(stand, colony, before) or yard_on(stand, colony, each.on)


def contact_yards(
    stand: Sequence[Noted], stopped: Iterable[Standstill]
) -> Mapping[str, list[Standstill]]:
    """Name the yards that bees or things came to from a stopped yard in the year before."""
    found: defaultdict[str, list[Standstill]] = defaultdict(list)
    moves = [each for each in stand if isinstance(each, Move | Movement) and each.yard]
    for one in stopped:
        since = one.since - timedelta(days=CONTACT_DAYS)
        for each in moves:
            if since <= each.on <= one.since and origin(each, stand) == one.yard and each.yard:
                found[each.yard].append(one)
    return found

"""Days that nobody can mean: outside any keeper's calendar, or years ahead of all other notes."""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from typing import Final

from combwright.records.problems import Problem, odd, wrong
from combwright.terms.dated import dated
from combwright.terms.entries import AnyEntry, Noted, Visit

EARLIEST: Final = date(1990, 1, 1)
LATEST: Final = date(2100, 12, 31)
AHEAD: Final = timedelta(
    days=400
)  # a season is planned ahead, two are a slip of the pen; judgement


def last_meant(days: Iterable[date], today: date) -> date | None:
    """Give the last day that can be meant: those after it lie far beyond it, and beyond today.

    A book that begins in another time than ours, as the demo's does, is taken as it is.

    Examples
    --------
    >>> days = date(2026, 4, 1), date(2026, 5, 1), date(2037, 5, 1)
    >>> last_meant(days, date(2026, 5, 2))
    datetime.date(2026, 5, 1)

    """
    last = None
    for day in sorted(set(days)):
        if day > LATEST or (last is not None and day - max(last, today) > AHEAD):
            break
        last = day
    return last


def far_days(written: Iterable[AnyEntry], stand: Iterable[Noted], today: date) -> Iterator[Problem]:
    """Find entries whose day cannot be meant."""
    last = last_meant((each.on for each in stand), today)
    for each in stand:
        if EARLIEST <= each.on <= LATEST and last is not None and each.on > last:
            what = f"{dated(each.on)} lies years ahead of today and of every other note."
            yield wrong(each, "on", what, "Correct the year.")
    yield from to_come(stand, today)
    for one in written:
        if not EARLIEST <= one.on <= LATEST:
            what = f"{dated(one.on)} lies in the year {one.on.year}."
            remedy = f"Write a year from {EARLIEST.year} to {LATEST.year}."
            yield wrong(one, "on", what, remedy)


def to_come(stand: Iterable[Noted], today: date) -> Iterator[Problem]:
    """Find visits of days to come in a book that keeps step with the calendar.

    A phone may be a day ahead of the machine that keeps the book.
    """
    visits = [each for each in stand if isinstance(each, Visit)]
    if not any(each.on <= today for each in visits):
        return
    for each in visits:
        if each.on > today + timedelta(days=1):
            yield odd(
                each, f"{dated(each.on)} is still to come.", "Correct the day if it is not meant."
            )

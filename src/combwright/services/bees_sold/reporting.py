"""What a keeper must report, to what kind of authority, and what still stands."""

from dataclasses import dataclass
from typing import Final

from combwright.records.replay.standstill import Standstill, standstills
from combwright.records.store.book_handle import Book
from combwright.science.health.notifiable import CHECKED_ON, THINGS, notices_wanted, told_to
from combwright.services.honey.tanks import country_of
from combwright.terms.dated import in_days
from combwright.terms.entries import BeesSold, Suspicion, TrayCount, WashCount
from combwright.terms.entries.keeper import COUNTRIES

CAUTION: Final = (
    "Never a diagnosis. If you see or suspect it: close up, move nothing, wash tools and hands, "
    f"report. Looked up on {in_days(CHECKED_ON)} in copies that may be old: check the current law "
    "of your country."
)


@dataclass(frozen=True, slots=True)
class DutyToTell:
    """One thing to report in the keeper's country."""

    name: str
    sign: str
    duty: str
    to: str
    stops_moves: bool


@dataclass(frozen=True, slots=True)
class BeesPage:
    """Sales, standstills, and what must be reported to whom."""

    place: str
    sales: tuple[BeesSold, ...]
    stopped: tuple[Standstill, ...]
    varroa_notices: int
    duties: tuple[DutyToTell, ...]
    caution: str = CAUTION


def bees_page(book: Book) -> BeesPage:
    """Tell what was sold, what stands still, and what the keeper's country wants reported."""
    now, country = book.now(), country_of(book)
    counts = [each for each in now.entries if isinstance(each, TrayCount | WashCount)]
    with_mites = {
        now.standings[e.colony].yard for e in counts if e.mites and e.colony in now.standings
    }
    reported = {
        each.yard
        for each in now.entries
        if isinstance(each, Suspicion) and each.of == "varroa" and each.state != "suspected"
    }
    return BeesPage(
        COUNTRIES[country],
        tuple(each for each in now.entries if isinstance(each, BeesSold))[::-1],
        tuple(one for one in standstills(now.entries) if one.until is None),
        notices_wanted(len(with_mites), len(with_mites & reported), country),
        tuple(
            DutyToTell(
                one.name, one.sign, one.duty[country], told_to(one.name, country), one.stops_moves
            )
            for one in THINGS
        ),
    )

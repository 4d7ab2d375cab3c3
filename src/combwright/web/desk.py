"""What the page works with, put together once."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import Annotated, Final

from fastapi import Depends, Request
from starlette.responses import Response

from combwright.records.store.book_handle import Book
from combwright.services.access import Access
from combwright.services.backup.nightly import Nightly
from combwright.services.book.photos import Photos
from combwright.services.rounds.kept_rounds import Rounds
from combwright.services.supply.kept_plans import SupplyPlans

DAY: Final = "day"
Clock = Callable[[], datetime]


@dataclass(frozen=True)
class Desk:
    """The book, the rounds planned from it, who may see them, and the time."""

    book: Book
    rounds: Rounds
    access: Access
    photos: Photos
    supplies: SupplyPlans
    clock: Clock
    nightly: Nightly
    is_demo: bool = False
    may_fetch: bool = True  # a forecast, from an open service
    own: "Desk | None" = None  # the keeper's own, while an example lies on the desk

    @property
    def today(self) -> date:
        """The day by the clock."""
        return self.clock().date()

    def close(self) -> None:
        """Let go of everything."""
        self.rounds.close()
        self.supplies.close()
        self.book.close()

    def close_all(self) -> None:
        """Let go of this desk, and of the keeper's own below it."""
        self.close()
        if self.own is not None:
            self.own.close()

    def day_meant(self, request: Request) -> date:
        """Give the day that was last looked at today, or that of the round that comes next.

        So a note never makes the day jump.
        """
        day, _, chosen_on = request.cookies.get(day_cookie(request), "").partition("/")
        if chosen_on == str(self.today):
            try:
                return date.fromisoformat(day)
            except ValueError:
                pass
        return self.book.now().next_round(self.today)

    def remember_day(self, request: Request, answer: Response, on: date) -> None:
        """Keep the day that is looked at, for today."""
        answer.set_cookie(
            day_cookie(request),
            f"{on}/{self.today}",
            max_age=86400,
            httponly=True,
            samesite="lax",
            secure=request.url.scheme == "https",
        )


def day_cookie(request: Request) -> str:
    """Name the cookie of the day; over HTTPS the browser itself ties it to this host."""
    return f"__Host-{DAY}" if request.url.scheme == "https" else DAY


def lay_out(
    book: Book,
    *,
    clock: Clock,
    is_demo: bool = False,
    members: int = 200,
    backups: Path | None = None,
    keep: int = 0,
    may_fetch: bool = True,
) -> Desk:
    """Put together what the page works with; a book that cannot be read is refused here."""
    book.open()
    rounds = Rounds(book, members=members)
    return Desk(
        book,
        rounds,
        Access(book),
        Photos(book),
        SupplyPlans(book, members=members),
        clock,
        Nightly(book, clock, backups, keep),
        is_demo=is_demo,
        may_fetch=may_fetch,
    )


def desk(request: Request) -> Desk:
    """Give a handler the desk."""
    found: Desk = request.app.state.desk
    return found


AtDesk = Annotated[Desk, Depends(desk)]

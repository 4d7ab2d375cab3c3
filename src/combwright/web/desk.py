"""What the page works with, put together once."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from typing import Annotated

from fastapi import Depends, Request

from combwright.records.store.book_handle import Book
from combwright.services.access import Access
from combwright.services.book.photos import Photos
from combwright.services.rounds.kept_rounds import Rounds
from combwright.services.supply.kept_plans import SupplyPlans

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
    is_demo: bool = False

    @property
    def today(self) -> date:
        """The day by the clock."""
        return self.clock().date()

    def close(self) -> None:
        """Let go of everything."""
        self.rounds.close()
        self.supplies.close()
        self.book.close()


def lay_out(book: Book, *, clock: Clock, is_demo: bool = False, members: int = 200) -> Desk:
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
        is_demo=is_demo,
    )


def desk(request: Request) -> Desk:
    """Give a handler the desk."""
    found: Desk = request.app.state.desk
    return found


AtDesk = Annotated[Desk, Depends(desk)]

"""Plans of the season worked out in the background, and kept while the book stands as it is."""

from dataclasses import replace
from functools import partial
from typing import Final

from combwright.records.store.book_handle import Book
from combwright.services.supply.asked import AskedSupply
from combwright.services.supply.season_plan import supply_plan
from combwright.services.supply.supply_sheet import SupplySheet
from combwright.services.work_queue import InWork, WorkQueue

MOST: Final = 6
SCENARIOS_A_MEMBER, SECONDS_A_MEMBER = 5, 0.3


class SupplyPlans:
    """Plans by the state of the book and what is asked.

    Fewer ``members`` make a rougher plan sooner: scenarios and seconds go with them.
    """

    def __init__(self, book: Book, *, members: int = 200) -> None:
        self._book = book
        self._members = members
        self._queue: WorkQueue[tuple[str, AskedSupply], SupplySheet] = WorkQueue(
            "supply", kept=MOST
        )

    def begin(self, asked: AskedSupply) -> InWork[SupplySheet]:
        """Give the plan, done or in work."""
        asked = replace(
            asked,
            members=self._members,
            scenarios=SCENARIOS_A_MEMBER * self._members,
            seconds=SECONDS_A_MEMBER * self._members,
        )
        key = (self._book.now().mark(before=asked.on), asked)
        return self._queue.begin(key, partial(supply_plan, self._book, asked))

    def close(self) -> None:
        """Stop working, without going to the end of the plan in work."""
        self._queue.close()

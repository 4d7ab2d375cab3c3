"""Plans of the season worked out in the background, and kept while the book stands as it is."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from threading import Lock
from typing import Final

from combwright.records.store.book_handle import Book
from combwright.services.in_work import InWork
from combwright.services.progress import OPENING, Step
from combwright.services.supply.asked import AskedSupply
from combwright.services.supply.season_plan import supply_plan
from combwright.services.supply.supply_sheet import SupplySheet

MOST: Final = 6
SCENARIOS_A_MEMBER, SECONDS_A_MEMBER = 5, 0.3


class SupplyPlans:
    """Plans by the state of the book and what is asked.

    Fewer ``members`` make a rougher plan sooner: scenarios and seconds go with them.
    """

    def __init__(self, book: Book, *, members: int = 200) -> None:
        self._book = book
        self._members = members
        self._worker = ThreadPoolExecutor(1, thread_name_prefix="supply")
        self._known: dict[tuple[str, AskedSupply], InWork[SupplySheet]] = {}
        self._lock = Lock()

    def begin(self, asked: AskedSupply) -> InWork[SupplySheet]:
        """Give the plan, done or in work."""
        asked = replace(
            asked,
            members=self._members,
            scenarios=SCENARIOS_A_MEMBER * self._members,
            seconds=SECONDS_A_MEMBER * self._members,
        )
        key = (self._book.now().mark(before=asked.on), asked)
        with self._lock:
            if key not in self._known:
                work = self._known[key] = InWork(Step(OPENING))
                work.future = self._worker.submit(supply_plan, self._book, asked, work.tell)
            while len(self._known) > MOST:
                self._known.pop(next(iter(self._known))).future.cancel()
            return self._known[key]

    def close(self) -> None:
        """Stop working, without going to the end of the plan in work."""
        for each in self._known.values():
            each.is_wanted = False
        self._worker.shutdown(wait=False, cancel_futures=True)

"""Rounds worked out in the background, and kept as long as what they rest on stands."""

from collections import OrderedDict
from concurrent.futures import ThreadPoolExecutor
from datetime import date, timedelta
from threading import Lock
from typing import Final

from combwright.planning.sheet import RoundSheet
from combwright.planning.supplies import bench, load
from combwright.records.store.book_handle import Book
from combwright.services.in_work import InWork
from combwright.services.progress import BUSY, OPENING, Step
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.kept_plans import KeptPlans
from combwright.services.rounds.situations import SYRUP_FRACTION
from combwright.terms.errors import NotFoundError, OutOfRangeError

KEPT: Final = 12
FARTHEST: Final = timedelta(
    days=400
)  # beyond a year nothing is known that the climate does not say


class Rounds:
    """Rounds by day and days until the next visit."""

    def __init__(self, book: Book, *, members: int = 200) -> None:
        self._book = book
        self._members = members
        self._worker = ThreadPoolExecutor(1, thread_name_prefix="round")
        self._known: OrderedDict[tuple[str, date, int], InWork[RoundSheet]] = OrderedDict()
        self._plans = KeptPlans()
        self._lock = Lock()

    def begin(self, on: date, days: int) -> InWork[RoundSheet]:
        """Give the round of a day, done or in work."""
        book = self._book.now()
        if book.entries and abs(on - book.entries[-1].on) > FARTHEST:
            raise OutOfRangeError(
                f"{on} is more than {FARTHEST.days} days from the last note.",
                remedy="Ask for a nearer day.",
            )
        key = (book.mark(before=on), on, days)
        with self._lock:
            if key not in self._known:
                self._known[key] = self._start(on, days)
            self._known.move_to_end(key)
            while len(self._known) > KEPT:
                self._known.popitem(last=False)[1].future.cancel()
            return self._known[key]

    def _start(self, on: date, days: int) -> InWork[RoundSheet]:
        is_busy = any(not each.future.done() for each in self._known.values())
        working: InWork[RoundSheet] = InWork(Step(BUSY if is_busy else OPENING))
        working.future = self._worker.submit(
            round_sheet,
            self._book,
            on,
            days=days,
            members=self._members,
            progress=working.tell,
            kept=self._plans,
        )
        return working

    def sheet(self, on: date, days: int) -> RoundSheet:
        """Give the round of a day, waiting for it."""
        return self.begin(on, days).future.result()

    def newest(self) -> RoundSheet | None:
        """Give the round that was asked for last and is ready, if any."""
        with self._lock:
            ready = [each.future for each in self._known.values() if each.future.done()]
        return next((one.result() for one in reversed(ready) if one.exception() is None), None)

    def close(self) -> None:
        """Stop working, without going to the end of the round in work."""
        for each in self._known.values():
            each.is_wanted = False
        self._worker.shutdown(wait=False, cancel_futures=True)


def of_yard(sheet: RoundSheet, yard: str) -> RoundSheet:
    """Keep of a round what concerns one yard, with the bench list for it alone."""
    colonies = [each for each in sheet.colonies if each.yard == yard]
    if not colonies:
        raise NotFoundError(
            f"There is no yard “{yard}” on this round.",
            remedy=f"There are: {', '.join(sheet.yards)}.",
        )
    return sheet.model_copy(
        update={
            "yards": [yard],
            "colonies": colonies,
            "bench": bench(colonies, SYRUP_FRACTION),
            "load": load(colonies, [yard], SYRUP_FRACTION),
        }
    )

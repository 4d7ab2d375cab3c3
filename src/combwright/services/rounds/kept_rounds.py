"""Rounds worked out in the background, and kept as long as what they rest on stands."""

from bisect import bisect_right
from datetime import date, timedelta
from functools import partial
from operator import attrgetter
from typing import Final

from combwright import __version__
from combwright.planning.at_every_colony import at_any
from combwright.planning.sheet import ColonySheet, RoundSheet
from combwright.planning.supplies import bench, load
from combwright.records.store.book_handle import Book
from combwright.services.progress import Progress
from combwright.services.rounds.from_book import NOTICES, round_sheet
from combwright.services.rounds.kept_plans import KeptPlans, plans_folder
from combwright.services.rounds.situations import SYRUP_FRACTION
from combwright.services.work_queue import InWork, WorkQueue
from combwright.terms.dated import dated
from combwright.terms.errors import NotFoundError, OutOfRangeError

KEPT: Final = 12
FARTHEST: Final = timedelta(days=400)  # beyond it nothing is known but the climate; judgement


class Rounds:
    """Rounds by day and days until the next visit."""

    def __init__(self, book: Book, *, members: int = 200) -> None:
        self._book = book
        self._members = members
        self._queue: WorkQueue[tuple[str, date, int], RoundSheet] = WorkQueue("round", kept=KEPT)
        self._plans = KeptPlans(plans_folder())

    def __len__(self) -> int:
        return len(self._queue)

    def begin(self, on: date, days: int) -> InWork[RoundSheet]:
        """Give the round of a day, done or in work."""
        book = self._book.now()
        noted = book.entries
        before = bisect_right(noted, on, key=attrgetter("on"))
        if noted and on - noted[max(0, before - 1)].on > FARTHEST:
            raise OutOfRangeError(
                f"{dated(on)} is more than {FARTHEST.days} days from the last note.",
                remedy="Ask for a nearer day.",
            )
        make = partial(self._sheet, on, days)
        return self._queue.begin((book.mark(before=on), on, days), make)

    def _sheet(self, on: date, days: int, progress: Progress) -> RoundSheet:
        return round_sheet(
            self._book, on, days=days, members=self._members, progress=progress, kept=self._plans
        )

    def sheet(self, on: date, days: int) -> RoundSheet:
        """Give the round of a day, waiting for it."""
        return self.begin(on, days).future.result()

    def so_far(self, on: date, days: int) -> list[ColonySheet]:
        """Give the sheets of a round in work that are ready, as they came."""
        found = {
            part.colony: part
            for part in tuple(self.begin(on, days).parts)
            if isinstance(part, ColonySheet)
        }
        return list(found.values())

    def newest(self) -> RoundSheet | None:
        """Give the round that was asked for last and is ready, if any."""
        return self._queue.newest()

    def close(self) -> None:
        """Stop working, without going to the end of the round in work."""
        self._queue.close()


def part_of_round(on: date, ready: list[ColonySheet]) -> RoundSheet:
    """Give a round of the colonies that are ready, while the others are still in work."""
    yards = list(dict.fromkeys(each.yard for each in ready))
    return RoundSheet(
        on=on,
        version=__version__,
        seed=1,
        weather="",
        yards=yards,
        colonies=ready,
        bench=bench(ready, SYRUP_FRACTION),
        load=load(ready, yards, SYRUP_FRACTION),
        at_any_colony=at_any(on, ready),
        notices=list(NOTICES),
    )


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
            "at_any_colony": at_any(sheet.on, colonies),
            "bench": bench(colonies, SYRUP_FRACTION, on_shelf=sheet.on_shelf),
            "load": load(colonies, [yard], SYRUP_FRACTION),
        }
    )

"""What the page does each night: it looks through the whole book, and makes a backup if told to."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from pathlib import Path
from typing import Final

from combwright.records.store.book_handle import Book
from combwright.services.backup.backups import make_backup, reminder
from combwright.terms.errors import CombwrightError

AT: Final = time(3, 0)  # when nobody notes anything


@dataclass
class Nightly:
    """The work of the night, and what the keeper has to be told of it in the morning."""

    book: Book
    clock: Callable[[], datetime]
    folder: Path | None = None
    keep: int = 0
    failed: str = ""

    @property
    def seconds_left(self) -> float:
        """How long it is until the next night's work."""
        now = self.clock()
        tonight = now.replace(hour=AT.hour, minute=AT.minute, second=0, microsecond=0)
        return ((tonight if tonight > now else tonight + timedelta(days=1)) - now).total_seconds()

    def work(self) -> None:
        """Do it; what a person can put right is told, and tried again the next night."""
        try:
            if not self.book.check() and self.folder is not None:
                make_backup(self.book, self.folder, self.clock(), keep=self.keep)
            self.failed = ""
        except CombwrightError as error:
            self.failed = str(error)

    @property
    def told(self) -> list[str]:
        """Say what is wrong with the book, the last night's work, or the age of the last backup."""
        trouble = self.book.trouble
        damaged = f"The book is damaged, so nothing is written to it: {trouble}" if trouble else ""
        old = reminder(self.book, self.clock().date())
        return [each for each in (damaged, self.failed, old) if each]

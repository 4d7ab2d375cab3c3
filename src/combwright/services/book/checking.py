"""Whether the book still says what was once written into it."""

from dataclasses import dataclass
from datetime import date

from combwright.records.store.book_handle import Book
from combwright.records.store.seals import NEWEST, SealsChecked, check_seals, found_by
from combwright.terms.dated import dated
from combwright.terms.errors import NotFoundError

ALTERED = (
    "Something other than this program, or a failing disk, changed it. Keep this file as it is, "
    "and restore a backup from before; if it was you, say so to whoever asks for the register."
)


@dataclass(frozen=True, slots=True)
class CheckedBook:
    """What a check found: entries, the code of the last seal, up to when, and what is wrong."""

    entries: int
    code: str
    until: date | None
    wrong: str = ""

    @property
    def words(self) -> str:
        """The seal as it is printed on registers."""
        if self.wrong:
            return self.wrong
        until = f", notes up to {dated(self.until)}" if self.until else ""
        return f"Seal {self.code} over {self.entries} entries{until}"


def check_book(book: Book) -> CheckedBook:
    """Go through the book’s file, every entry and its seal."""
    wrong = " ".join(book.check())
    if wrong:
        return CheckedBook(0, "", None, f"{wrong} {ALTERED}")
    with book.reading() as db:
        found = check_seals(db)
    return _told(book, found, found.entries)


def code_words(book: Book, code: str) -> str:
    """Say of which entries the code on a paper is the seal."""
    with book.reading() as db:
        found = found_by(db, code)
    if found is None:
        raise NotFoundError(
            f"No seal of this book has the code “{code}”.",
            remedy="Copy it once more, such as c96f-4929-03fe; or it is the paper of another book.",
        )
    entries, is_old = found
    since = ", as they were sealed before buyers were kept apart from them" if is_old else ""
    return f"The code {code} is the seal over the first {entries} entries{since}."


def _told(book: Book, found: SealsChecked, entries: int) -> CheckedBook:
    until = max((each.on for each in book.now().history), default=None)
    return CheckedBook(entries, found.code, until)


def seal_words(book: Book) -> str:
    """Give the seal that is printed on a register; the last entries are looked at, not all."""
    with book.reading() as db:
        found = check_seals(db, newest=NEWEST)
    if found.broken_at is not None:
        return f"Entry {found.broken_at} does not fit its seal. {ALTERED}"
    entries = book.now().last
    return _told(book, found, entries).words

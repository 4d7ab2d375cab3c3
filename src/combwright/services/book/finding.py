"""Notes of any year found again by their words."""

from dataclasses import dataclass
from datetime import date
from uuid import UUID

from combwright.records.replay.corrections import subject
from combwright.records.store.book_handle import Book
from combwright.services.book.entry_words import said


@dataclass(frozen=True, slots=True)
class FoundNote:
    """A note in which the words stand: what it is about, and what it says."""

    on: date
    kind: str
    about: str
    says: str
    entry: UUID


def find(book: Book, words: str) -> list[FoundNote]:
    """Find the notes in which every word stands, newest first."""
    now = book.now()
    found = (now.entries[at] for at in sorted(now.words.find(words), reverse=True))
    return [FoundNote(one.on, one.kind, subject(one), said(one), one.id) for one in found]

"""Notes of any year found again by their words, their day, or their photo."""

from dataclasses import dataclass
from datetime import date
from uuid import UUID

from combwright.records.replay.corrections import subject
from combwright.records.store.book_handle import Book
from combwright.services.book.entry_words import said
from combwright.services.book.photos import Photos


@dataclass(frozen=True, slots=True)
class FoundNote:
    """A note that was looked for: what it is about, what it says, whether it has a photo."""

    on: date
    kind: str
    about: str
    says: str
    entry: UUID
    has_photo: bool = False


def find(
    book: Book, words: str, *, on: date | None = None, only_photos: bool = False
) -> list[FoundNote]:
    """Find the notes in which every word stands, newest first.

    Without words all are looked through, if a day or only those with a photo are asked for.
    """
    now = book.now()
    if words.strip():
        some = [now.entries[at] for at in sorted(now.words.find(words), reverse=True)]
    else:
        some = now.entries[::-1] if on or only_photos else []
    some = [each for each in some if on in {None, each.on}]
    photos = Photos(book).among(each.id for each in some)
    return [
        FoundNote(one.on, one.kind, subject(one), said(one), one.id, one.id in photos)
        for one in some
        if one.id in photos or not only_photos
    ]

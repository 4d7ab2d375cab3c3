"""What belongs to a book and is not in it: the passphrase, headings remembered, photos."""

from collections.abc import Iterator
from pathlib import Path
from typing import Final

from combwright.records.store.book_handle import Book
from combwright.services.book.importing import REMEMBERED
from combwright.services.book.photos import MEDIA

BESIDE: Final = ("access", REMEMBERED)  # files that go with a book


def belongings(book: Book) -> Iterator[tuple[str, Path]]:
    """Give names and places of what there is. Sessions and forecasts can be had again."""
    for name in BESIDE:
        if (kept := book.beside(name)).exists():
            yield name, kept
    photos = book.beside("photos")
    for each in sorted(photos.iterdir()) if photos.is_dir() else ():
        if each.suffix in MEDIA and not each.name.startswith("."):
            yield f"photos/{each.name}", each


def place_for(book: Book, name: str) -> Path:
    """Say where something of a name lies."""
    folder, _, file = name.rpartition("/")
    return book.beside(folder) / file if folder else book.beside(name)

"""Photos of a note: pictures in a folder beside the book, named after the visit they belong to."""

from collections.abc import Collection
from typing import Final
from uuid import UUID, uuid5

from combwright.records.store.book_handle import Book
from combwright.services.book.book import save
from combwright.services.book.field_words import FieldProblem
from combwright.services.book.notes import NoteError
from combwright.terms.errors import NotFoundError

LARGEST: Final = 4_000_000
SIGNS: Final = {
    ".jpg": (b"\xff\xd8\xff", "image/jpeg"),
    ".png": (b"\x89PNG\r\n\x1a\n", "image/png"),
    ".webp": (b"RIFF", "image/webp"),
}


def photo_kind(data: bytes) -> str:
    """Tell the kind of a picture by its first bytes, whatever its name says."""
    if len(data) > LARGEST:
        said = f"{len(data) / 1e6:.0f} MB"
        raise NoteError([FieldProblem("photo", f"The photo has {said}.", "4 MB at most.")])
    for ending, (sign, _) in SIGNS.items():
        if data.startswith(sign):
            return ending
    raise NoteError(
        [FieldProblem("photo", "This is not a photo.", "Choose a JPEG, PNG or WebP picture.")]
    )


class Photos:
    """The photos of one book."""

    def __init__(self, book: Book) -> None:
        self._folder = book.beside("photos")

    def keep(self, note: UUID, data: bytes) -> None:
        """Keep the photo of a note; keeping it again changes nothing."""
        ending = photo_kind(data)
        self._folder.mkdir(exist_ok=True)
        save(self._folder / f"{uuid5(note, 'visit')}{ending}", data)

    def among(self, visits: Collection[UUID]) -> set[UUID]:
        """Tell which of some visits have a photo."""
        if not self._folder.is_dir():
            return set()
        names = {path.stem for path in self._folder.iterdir()}
        return {visit for visit in visits if str(visit) in names}

    def of(self, visit: UUID) -> tuple[bytes, str]:
        """Give the photo of a visit, and its media type."""
        for ending, (_, media) in SIGNS.items():
            path = self._folder / f"{visit}{ending}"
            if path.is_file():
                return path.read_bytes(), media
        raise NotFoundError("There is no such photo.", remedy="Look at the colony's page.")

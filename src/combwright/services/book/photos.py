"""Photos of notes: pictures in a folder beside the book, named after the entry they belong to."""

from collections.abc import Iterable
from io import BytesIO
from pathlib import Path
from typing import Final
from uuid import UUID, uuid5

from combwright.records.store.book_handle import Book
from combwright.services.book.book import save
from combwright.services.book.field_words import FieldProblem
from combwright.services.book.notes import NoteError
from combwright.terms.errors import NotFoundError

LARGEST: Final = 4_000_000  # bytes
MOST_PIXELS: Final = 60_000_000
LONGEST_SIDE: Final = 1600  # pixels
QUALITY: Final = 85  # per cent, by the scale of JPEG
MEDIA: Final = {".jpg": "image/jpeg", ".png": "image/png", ".webp": "image/webp"}


def plain_picture(data: bytes) -> bytes:
    """Draw a photo anew, upright and no larger than needed.

    Whatever else its file held is gone: the place and time where it was taken, and anything that
    was no picture at all.
    """
    if len(data) > LARGEST:
        said = f"{len(data) / 1e6:.0f} MB"
        raise NoteError([FieldProblem("photo", f"The photo has {said}.", "4 MB at most.")])
    from PIL import Image, ImageOps  # only where there is a photo

    drawn = BytesIO()
    try:
        with Image.open(BytesIO(data), formats=("JPEG", "PNG", "WEBP")) as picture:
            if picture.width * picture.height > MOST_PIXELS:
                raise ValueError("too many pixels")  # noqa: TRY301  (said as below)
            picture.draft("RGB", (LONGEST_SIDE, LONGEST_SIDE))
            upright = ImageOps.exif_transpose(picture).convert("RGB")
            upright.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
            upright.info.clear()
            upright.save(drawn, "JPEG", quality=QUALITY)
    except Exception as error:  # a decoder meets in a damaged file whatever it meets
        raise NoteError(
            [FieldProblem("photo", "This is not a photo.", "Choose a JPEG, PNG or WebP picture.")]
        ) from error
    return drawn.getvalue()


class Photos:
    """The photos of one book."""

    def __init__(self, book: Book) -> None:
        self._folder = book.beside("photos")

    def keep(self, note: UUID, data: bytes) -> None:
        """Keep the photo of a note at a hive: it belongs to its visit."""
        self.keep_of(uuid5(note, "visit"), data)

    def keep_of(self, entry: UUID, data: bytes) -> None:
        """Keep the photo of an entry, drawn anew; keeping it again changes nothing."""
        picture = plain_picture(data)
        self._folder.mkdir(mode=0o700, exist_ok=True)
        save(self._folder / f"{entry}.jpg", picture, mode=0o600)

    def carry(self, old: UUID, new: UUID) -> None:
        """Let the photo of an entry stay with what takes its place."""
        if (path := self._path(old)) is not None:
            save(path.with_stem(str(new)), path.read_bytes(), mode=0o600)

    def among(self, entries: Iterable[UUID]) -> set[UUID]:
        """Tell which of some entries have a photo."""
        if not self._folder.is_dir():
            return set()
        names = {path.stem for path in self._folder.iterdir() if path.suffix in MEDIA}
        return {each for each in entries if str(each) in names}

    def of(self, entry: UUID) -> tuple[bytes, str]:
        """Give the photo of an entry, and its media type."""
        if (path := self._path(entry)) is None:
            raise NotFoundError(
                "There is no such photo.", remedy="“combwright book find --photos” lists them."
            )
        return path.read_bytes(), MEDIA[path.suffix]

    def _path(self, entry: UUID) -> Path | None:
        named = (self._folder / f"{entry}{ending}" for ending in MEDIA)
        return next((path for path in named if path.is_file()), None)

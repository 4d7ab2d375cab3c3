"""A whole book moved to another place, such as from a file to a server, or back."""

from collections.abc import Mapping
from contextlib import ExitStack
from dataclasses import dataclass

from combwright.records.store.book_handle import Book
from combwright.records.store.pouring import Poured
from combwright.records.store.private_folders import private_folder
from combwright.services.backup.belongings import belongings, place_for
from combwright.services.whole_file import write_whole
from combwright.terms.errors import BookError


@dataclass(frozen=True, slots=True)
class Moved:
    """From where to where, what was compared of each table, and how much lay beside the book."""

    source: str
    target: str
    tables: Mapping[str, Poured]
    files: int


def move_book(source: Book, target: Book) -> Moved:
    """Write all of a book into an empty one, and compare; the old one is left as it is.

    Nobody can write to the old one meanwhile. Whatever fails, nothing is left in the new one.
    """
    if source.key == target.key:
        raise BookError("The book is there already.", where=target.place, remedy="Name another.")
    if wrong := source.check():
        raise BookError(
            f"The book is damaged: {wrong[0]}",
            where=source.place,
            remedy="Nothing was moved. Restore the last backup there.",
        )
    with source.writing() as old, ExitStack() as undo:
        files = _carried(source, target, undo)
        tables = target.take(old)
        undo.pop_all()
    return Moved(source.place, target.place, tables, files)


def _carried(source: Book, target: Book, undo: ExitStack) -> int:
    """Copy what lies beside a book; it goes again if the book does not follow."""
    files = 0
    for name, path in belongings(source):
        place, content = place_for(target, name), path.read_bytes()
        if place.exists() and place.read_bytes() != content:
            raise BookError(
                "There is something already.",
                where=str(place),
                remedy="Nothing was changed. Move it away, or name another place.",
            )
        private_folder(place.parent)
        if not place.exists():
            undo.callback(place.unlink, missing_ok=True)
            write_whole(place, content, mode=0o600)
        files += 1
    return files

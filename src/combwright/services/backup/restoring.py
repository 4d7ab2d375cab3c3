"""A backup looked through, and made into a book again."""

from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from combwright.records.store.book_handle import Book
from combwright.records.store.private_folders import private_folder
from combwright.services.backup.archive import Archive, BackupList, opened
from combwright.services.backup.belongings import BESIDE, place_for
from combwright.services.backup.moving import move_book
from combwright.services.whole_file import write_whole
from combwright.terms.errors import BookError


@dataclass(frozen=True, slots=True)
class Checked:
    """What was looked through, and what is wrong with it."""

    place: str
    entries: int
    wrong: tuple[str, ...]


def check_backup(path: Path, passphrase: str = "") -> Checked:
    """Go through a whole backup: each checksum, and the book in it."""
    with TemporaryDirectory() as room, opened(path, passphrase) as archive:
        book = _laid_out(archive, Path(room) / "book")
        wrong = tuple(book.check())
        book.close()
        return Checked(str(path), archive.contents.entries, wrong)


def restore(path: Path, place: Path | str, passphrase: str = "") -> BackupList:
    """Make a book again from a backup, where there is none; nothing half done remains."""
    target = Book(place)
    if target.file is not None:
        return _into_file(path, target.file, passphrase)
    with (
        TemporaryDirectory() as room,
        opened(path, passphrase) as archive,
        closing(_laid_out(archive, Path(room) / "book")) as book,
        closing(target),
    ):
        move_book(book, target)
        return archive.contents


def _into_file(path: Path, target: Path, passphrase: str) -> BackupList:
    for there in (target, *(Book(target).beside(name) for name in ("photos", *BESIDE))):
        if there.exists():
            raise BookError(
                "There is something already.",
                where=str(there),
                remedy="Nothing was changed. Name another place with --book, or move it away.",
            )
    try:
        private_folder(target.parent)
        room = TemporaryDirectory(dir=target.parent, prefix=".restoring-")
    except OSError as error:
        raise BookError(
            f"The book cannot be written: {error.strerror}.",
            where=str(target),
            remedy="Name a folder with room that you may write to.",
        ) from error
    with room as name, opened(path, passphrase) as archive:
        book = _laid_out(archive, Path(name) / target.name)
        wrong = book.check()
        book.close()
        if wrong:
            raise BookError(
                f"The book in this backup is damaged: {wrong[0]}",
                where=str(path),
                remedy="Nothing was changed. Take an older backup.",
            )
        # the book last: until it is there, nothing is taken for one
        for each in sorted(Path(name).iterdir(), key=lambda one: one.name == target.name):
            each.replace(target.parent / each.name)
        return archive.contents


def _laid_out(archive: Archive, target: Path) -> Book:
    """Write what a backup holds, each content as it was."""
    book = Book(target, must_exist=True)
    for each in archive.contents.kept:
        place = target if each.name == "book" else place_for(book, each.name)
        private_folder(place.parent)
        write_whole(place, archive.read(each), mode=0o600)
    return book

"""Backups of a book: made while it is in use, some of them kept, and whether the last is old."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from combwright import __version__
from combwright.records.store.book_handle import Book
from combwright.records.store.private_folders import private_folder
from combwright.services.backup.archive import BackupList, opened, write
from combwright.services.backup.belongings import belongings
from combwright.services.backup.seal import Seal
from combwright.services.private_file import PrivateFile
from combwright.terms.errors import BookError, OutOfRangeError

OLD: Final = timedelta(days=30)  # what may be lost with a disk: a month's notes; judgement
ENDING: Final = ".backup.zip"
REMEDY: Final = "Run “combwright backup”, best into a folder of another disk."


@dataclass(frozen=True, slots=True)
class Backup:
    """A backup that was made: where, of how much, and which older ones went for it."""

    path: Path
    made: datetime
    entries: int
    photos: int
    bytes: int
    sealed: bool
    gone: tuple[Path, ...]


def make_backup(
    book: Book, folder: Path | None, now: datetime, *, keep: int = 0, passphrase: str = ""
) -> Backup:
    """Make a backup of all that belongs to a book, and look whether it can be read again.

    Others may go on writing meanwhile. The newest ``keep`` in the folder stay; 0 keeps all.
    """
    if keep < 0:
        raise OutOfRangeError(
            f"{keep} backups cannot be kept.", remedy="Give 1 or more; 0 for all."
        )
    seal = Seal.new(passphrase) if passphrase else None
    folder = folder or book.beside("backups")
    path = folder / f"{book.name}-{now:%Y-%m-%d-%H%M%S}{ENDING}"
    try:
        private_folder(folder)
        with TemporaryDirectory(dir=folder, prefix=".making-") as room:
            part = Path(room) / path.name
            told = _written(book, part, now, seal)
            with opened(part, passphrase) as again:
                for each in again.contents.kept:
                    again.read(each)
            part.chmod(0o600)
            part.replace(path)
    except OSError as error:
        raise BookError(
            f"The backup cannot be written: {error.strerror}.",
            where=str(folder),
            remedy="Name a folder with room that you may write to.",
        ) from error
    _last(book).write({"made": now.isoformat(), "entries": told.entries, "path": str(path)})
    gone = _thinned(book, folder, keep)
    photos = sum(each.name.startswith("photos/") for each in told.kept)
    size = path.stat().st_size
    return Backup(path, now, told.entries, photos, size, seal is not None, gone)


def _written(book: Book, path: Path, now: datetime, seal: Seal | None) -> BackupList:
    copy = path.with_name("book")
    book.copy_to(copy)
    entries = Book(copy, kit=book.kit).now().last
    about = BackupList(book=book.name, made=now, version=__version__, entries=entries, kept=())
    return write(path, about, _contents(book, copy), seal)


def _contents(book: Book, copy: Path) -> Iterator[tuple[str, bytes]]:
    """Give the book and what belongs to it."""
    yield "book", copy.read_bytes()
    for name, path in belongings(book):
        yield name, path.read_bytes()


def _thinned(book: Book, folder: Path, keep: int) -> tuple[Path, ...]:
    made = sorted(folder.glob(f"{_plain(book.name)}-????-??-??-??????{ENDING}"))
    gone = tuple(made[:-keep]) if keep else ()
    for each in gone:
        each.unlink(missing_ok=True)
    return gone


def _plain(name: str) -> str:
    """Write a name so that no sign of it stands for others in a pattern."""
    return "".join(f"[{sign}]" if sign in "[*?" else sign for sign in name)


def _last(book: Book) -> PrivateFile:
    return PrivateFile(book.beside("last-backup"), "Remove it, and make a backup.")


def reminder(book: Book, today: date) -> str:
    """Say that the last backup is old or that there is none, if notes could be lost by it."""
    told = _last(book).read()
    now = book.now()
    if not told:
        first = now.entries[0].on if now.entries else today
        return f"No backup of this book was made yet. {REMEDY}" if today - first > OLD else ""
    made = datetime.fromisoformat(str(told["made"])).date()
    newer = now.last - int(told["entries"])
    if newer <= 0 or today - made <= OLD:
        return ""
    said = f"{newer} entries are" if newer > 1 else "1 entry is"
    return f"The last backup is {(today - made).days} days old, and {said} newer. {REMEDY}"

"""A backup is a promise: it is the book, byte for byte, wherever it is restored."""

import sqlite3
import threading
from datetime import UTC, date, datetime, timedelta
from io import BytesIO
from pathlib import Path
from uuid import UUID, uuid4
from zipfile import ZipFile

import pytest
from PIL import Image
from tests.noted import noted
from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.services.access import Access
from combwright.services.backup.backups import make_backup, reminder
from combwright.services.backup.restoring import check_backup, restore
from combwright.services.book.book import add_entries, export
from combwright.services.book.photos import Photos
from combwright.terms.errors import BookError, OutOfRangeError

NOW = datetime(2027, 4, 24, 9, tzinfo=UTC)
WORDS = "four unlikely words together"
OAK = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"
NOTE = UUID(int=7)


@pytest.fixture
def book(tmp_path: Path) -> Book:
    """Give a book with a note, a photo and a passphrase."""
    (tmp_path / "here").mkdir()
    made = Book(noted(tmp_path / "here", OAK))
    photo = BytesIO()
    Image.new("RGB", (40, 30), "orange").save(photo, "JPEG")
    Photos(made).keep(NOTE, photo.getvalue())
    made.beside("headings.json").write_text('{"food": "stores kg"}')
    made.beside("headings.json").chmod(0o600)
    return made


def all_files(of: Book) -> dict[str, bytes]:
    """Give what lies beside a book, and itself, without what can be had again."""
    folder = Path(of.place).parent
    return {
        str(each.relative_to(folder)): without_counters(each)
        for each in folder.rglob("*")
        if each.is_file() and not each.name.endswith((".csv", ".last-backup", ".zip"))
    }


def without_counters(file: Path) -> bytes:
    """Give a file without what SQLite counts in its header (how often it was written)."""
    content = bytearray(file.read_bytes())
    if content.startswith(b"SQLite format 3"):
        for first, last in ((24, 28), (40, 44), (92, 100)):  # https://sqlite.org/fileformat2.html
            content[first:last] = bytes(last - first)
    return bytes(content)


@pytest.mark.parametrize("words", ["", WORDS])
def test_elsewhere_it_is_the_same_byte_for_byte(book: Book, tmp_path: Path, words: str) -> None:
    Access(book).set_passphrase(WORDS)
    made = make_backup(book, tmp_path / "stick", NOW, passphrase=words)
    assert (made.entries, made.photos, made.sealed) == (book.now().last, 1, bool(words))
    assert check_backup(made.path, words).wrong == ()
    target = tmp_path / "elsewhere" / "a.book"
    assert restore(made.path, target, words).book == "a.book"
    again = Book(target)
    assert export(again) == export(book)
    again.close()
    book.close()
    assert all_files(again) == all_files(book)
    assert all(each.stat().st_mode & 0o077 == 0 for each in (target, made.path, target.parent))


def test_without_its_passphrase_a_sealed_one_tells_nothing(book: Book, tmp_path: Path) -> None:
    path = make_backup(book, tmp_path / "stick", NOW, passphrase=WORDS).path
    assert b"Oak" not in path.read_bytes()
    for words in ("", "another four unlikely words"):
        with pytest.raises(BookError, match=r"sealed|does not fit"):
            restore(path, tmp_path / "b.book", words)
    assert not (tmp_path / "b.book").exists()


def test_a_seal_that_is_soon_guessed_is_refused(book: Book, tmp_path: Path) -> None:
    for words in ("short", "passwordpassword"):
        with pytest.raises(OutOfRangeError, match=r"12 or more|guessed first"):
            make_backup(book, tmp_path / "stick", NOW, passphrase=words)
    assert not list(tmp_path.glob("stick/*"))


def test_while_others_write_it_holds_a_moment_whole(book: Book, tmp_path: Path) -> None:
    stop = threading.Event()

    def write_on() -> None:
        while not stop.is_set():
            with book.writing() as db:
                pair = [a_visit(colony="Oak").model_copy(update={"id": uuid4()}) for _ in range(2)]
                keep(db, pair)

    writer = threading.Thread(target=write_on, daemon=True)
    before = book.now().last
    writer.start()
    try:
        path = make_backup(book, tmp_path / "stick", NOW).path
    finally:
        stop.set()
        writer.join()
    restore(path, tmp_path / "b.book")
    held = Book(tmp_path / "b.book").now().last
    assert before <= held <= book.now().last
    assert (held - before) % 2 == 0  # both of a pair, or neither


def test_the_newest_are_kept_and_nobody_else_s(book: Book, tmp_path: Path) -> None:
    folder = tmp_path / "stick"
    make_backup(book, folder, NOW)
    (folder / "other.book-2020-01-01-000000.backup.zip").write_bytes(b"")
    for days in range(1, 4):
        made = make_backup(book, folder, NOW + timedelta(days=days), keep=2)
    names = sorted(each.name for each in folder.iterdir())
    assert names == [
        "a.book-2027-04-26-090000.backup.zip",
        "a.book-2027-04-27-090000.backup.zip",
        "other.book-2020-01-01-000000.backup.zip",
    ]
    assert [each.name for each in made.gone] == ["a.book-2027-04-25-090000.backup.zip"]


def test_nothing_that_is_there_is_ever_overwritten(book: Book, tmp_path: Path) -> None:
    path = make_backup(book, tmp_path / "stick", NOW).path
    before = all_files(book)
    with pytest.raises(BookError, match="something already"):
        restore(path, Path(book.place))
    assert all_files(book) == before


def test_a_damaged_one_is_named_and_leaves_nothing(book: Book, tmp_path: Path) -> None:
    whole = make_backup(book, tmp_path / "stick", NOW).path.read_bytes()
    path, named = tmp_path / "damaged.zip", 0
    for at in range(0, len(whole), len(whole) // 23):
        turned = bytes(one ^ 255 for one in whole[at : at + 40])
        path.write_bytes(whole[:at] + turned + whole[at + 40 :])
        target = tmp_path / f"new {at}" / "b.book"
        try:
            restore(path, target)
        except BookError:
            named += 1
            assert not [each for each in target.parent.rglob("*") if each.is_file()]
        else:  # what was turned was a time or another word about a content
            assert export(Book(target)) == export(book)
    assert named > 15


@pytest.mark.parametrize("name", ["../evil", "photos/../../evil.jpg", "/etc/evil", "book.access"])
def test_a_made_up_one_writes_nowhere_else(book: Book, tmp_path: Path, name: str) -> None:
    path = make_backup(book, tmp_path / "stick", NOW).path
    with ZipFile(path) as file:
        held = {one: file.read(one) for one in file.namelist()}
    with ZipFile(path, "w") as file:
        for one, content in held.items():
            file.writestr(
                one, content.replace(b'"book",\n   "length"', f'"{name}",\n   "length"'.encode())
            )
        file.writestr(name, held["book"])
    with pytest.raises(BookError):
        restore(path, tmp_path / "new" / "b.book")
    assert not list(tmp_path.rglob("evil*"))


def test_a_book_that_fails_is_read_and_never_written_to(book: Book) -> None:
    place = Path(book.place)
    book.close()
    with sqlite3.connect(place) as other:
        other.execute("DROP TRIGGER entry_is_never_deleted")
    other.close()
    held = Book(place)
    assert "entry_is_never_deleted" in held.check()[0]
    assert held.now().living
    before = held.now().last
    with pytest.raises(BookError, match="nothing is written"):
        add_entries(held, [a_visit(colony="Oak")])
    assert held.now().last == before


def test_the_page_reminds_of_an_old_backup_if_notes_could_be_lost(
    book: Book, tmp_path: Path
) -> None:
    today = date(2027, 4, 24)
    assert reminder(book, today) == ""
    assert "No backup" in reminder(book, today + timedelta(days=40))
    make_backup(book, tmp_path / "stick", NOW)
    assert reminder(book, today + timedelta(days=40)) == ""
    with book.writing() as db:
        keep(db, [a_visit(colony="Oak")])
    assert reminder(book, today + timedelta(days=9)) == ""
    assert "40 days old, and 1 entry is newer" in reminder(book, today + timedelta(days=40))

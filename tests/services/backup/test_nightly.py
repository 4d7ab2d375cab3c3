import sqlite3
from datetime import UTC, datetime
from pathlib import Path

from tests.noted import noted

from combwright.records.store.book_handle import Book
from combwright.services.backup.nightly import Nightly

OAK = "2027-04-23,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"


def test_each_night_the_book_is_looked_through_and_saved(tmp_path: Path) -> None:
    now = datetime(2027, 4, 24, 22, 30, tzinfo=UTC)
    nightly = Nightly(Book(noted(tmp_path, OAK)), lambda: now, tmp_path / "saved", keep=2)
    assert nightly.seconds_left == 4.5 * 3600
    nightly.work()
    assert len(list((tmp_path / "saved").iterdir())) == 1
    assert nightly.told == []


def test_what_it_finds_is_told_in_the_morning(tmp_path: Path) -> None:
    place = noted(tmp_path, OAK)
    (tmp_path / "file").write_text("in the way")
    now = datetime(2027, 4, 24, 2, 30, tzinfo=UTC)
    nightly = Nightly(Book(place), lambda: now, tmp_path / "file")
    nightly.work()
    assert "cannot be written" in nightly.told[0]
    with sqlite3.connect(place) as other:
        other.execute("DROP TRIGGER entry_is_never_changed")
    other.close()
    nightly.work()
    assert "damaged" in nightly.told[0]

"""Who shares a book goes with it; who is logged in does not."""

from datetime import UTC, datetime
from pathlib import Path
from uuid import UUID

import pyotp
import pytest
from tests.noted import noted

from combwright.records.store.authorship import written_by
from combwright.records.store.book_handle import Book
from combwright.records.store.people_rows import add_person
from combwright.records.store.pouring import pour
from combwright.services.access import Access, Caller
from combwright.services.backup.backups import make_backup
from combwright.services.backup.restoring import restore
from combwright.services.book.mending import strike
from combwright.services.people.second_factor import confirm, offer, passes
from combwright.services.people.sharing import (
    change_role,
    door_lines,
    end_person,
    invite,
    people_of,
    person_named,
    whose_notes,
)
from combwright.terms.errors import NotAllowedError, OutOfRangeError
from combwright.terms.person import Person, Role

NOW = datetime(2027, 4, 24, 9, tzinfo=UTC)
OAK = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"
ANNA = Person(UUID(int=1), "Anna", Role.KEEPER, NOW)


@pytest.fixture
def book(tmp_path: Path) -> Book:
    """Give a book that Anna keeps with a second factor, and in which she struck a note out."""
    (tmp_path / "here").mkdir()
    made = Book(noted(tmp_path / "here", OAK))
    with made.writing() as db:
        add_person(db, ANNA, passphrase="a hash")  # noqa: S106
    author = Caller(ANNA).hand(NOW)
    with written_by(author):
        last = made.now().entries[-1]
        strike(made, last, change=UUID(int=9), on=NOW.date(), reason="another hive")
    return made


def test_a_backup_brings_people_names_and_log_and_no_session(book: Book, tmp_path: Path) -> None:
    seed = offer(book, ANNA, NOW).seed
    codes = confirm(book, ANNA, pyotp.TOTP(seed).at(NOW), NOW)
    token = Access(book).begin(NOW, Caller(ANNA))
    assert Access(book).who(token, NOW) is not None
    path = make_backup(book, tmp_path / "stick", NOW).path
    restore(path, tmp_path / "there" / "a.book")
    again = Book(tmp_path / "there" / "a.book")
    assert people_of(again) == people_of(book)
    assert whose_notes(again, [UUID(int=9)]) == {UUID(int=9): "Anna"}
    assert door_lines(again, 9) == door_lines(book, 9)
    assert Access(again).needs_passphrase
    assert Access(again).who(token, NOW) is None
    assert passes(again, ANNA, codes[0], NOW)


def test_they_move_to_another_database(book: Book, tmp_path: Path) -> None:
    other = Book(tmp_path / "other.book")
    with book.reading() as source, other.writing() as target:
        pour(source, target)
    assert people_of(other) == people_of(book)
    assert whose_notes(other, [UUID(int=9)]) == {UUID(int=9): "Anna"}
    invite(other, "Ben", Role.HELPER, NOW, None)  # and the log goes on
    assert [one.what for one in door_lines(other, 9)] == ["invited Ben as helper"]


def test_a_book_always_has_a_keeper_who_can_come_in(book: Book) -> None:
    invite(book, "Ben", Role.KEEPER, NOW, ANNA)
    with pytest.raises(NotAllowedError, match="only keeper"):  # Ben has not come in yet
        change_role(book, ANNA, Role.READER, NOW, ANNA)
    with pytest.raises(NotAllowedError, match="only keeper"):
        end_person(book, ANNA, NOW, ANNA)
    with pytest.raises(OutOfRangeError, match="already"):
        invite(book, "ben", Role.READER, NOW, ANNA)
    end_person(book, person_named(book, "Ben"), NOW, ANNA)
    end_person(book, ANNA, NOW, None)  # at the machine
    assert not Access(book).needs_passphrase
    assert [one.ended for one in people_of(book)] == [NOW, NOW]

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from combwright.records.store.book_handle import Book
from combwright.services.access import SESSION, TRIES, TRIES_OF_ALL, Access, WrongTries
from combwright.terms.errors import BookError

NOW = datetime(2027, 4, 24, 9, tzinfo=UTC)
WORDS = "four unlikely words together"


def test_a_passphrase_is_recognised_and_nothing_else(tmp_path: Path) -> None:
    access = Access(Book(tmp_path / "a.book"))
    assert not access.is_right(WORDS)
    access.set_passphrase(WORDS)
    again = Access(Book(tmp_path / "a.book"))
    assert again.needs_passphrase
    assert again.is_right(WORDS)
    assert not again.is_right(WORDS.upper())
    assert not again.is_right("")


def test_a_session_holds_until_its_end(tmp_path: Path) -> None:
    access = Access(Book(tmp_path / "a.book"))
    token = access.begin(NOW)
    assert access.holds(token, NOW + SESSION - timedelta(seconds=1))
    assert not access.holds(token, NOW + SESSION)
    assert not access.holds("", NOW)
    access.end(token)
    assert not access.holds(token, NOW)


def test_sessions_that_are_over_are_forgotten(tmp_path: Path) -> None:
    access = Access(Book(tmp_path / "a.book"))
    for day in range(90):
        access.begin(NOW + timedelta(days=day))
    kept = (tmp_path / "a.book.access").read_text("utf-8")
    assert kept.count("2027-") <= SESSION.days + 1


def test_one_address_must_wait_before_all_must() -> None:
    wrong = WrongTries()
    for _ in range(TRIES):
        assert not wrong.must_wait("a", NOW)
        wrong.count("a", NOW)
    assert wrong.must_wait("a", NOW)
    assert not wrong.must_wait("b", NOW)
    assert not wrong.must_wait("a", NOW + timedelta(minutes=11))


def test_many_addresses_together_must_wait_too() -> None:
    wrong = WrongTries()
    for number in range(TRIES_OF_ALL):
        wrong.count(f"address {number}", NOW)
    assert wrong.must_wait("one more", NOW)


def test_a_damaged_file_is_named_and_opens_nothing(tmp_path: Path) -> None:
    (tmp_path / "a.book.access").write_text("{", "utf-8")
    with pytest.raises(BookError, match=r"a\.book\.access"):
        Access(Book(tmp_path / "a.book"))


def test_the_calendar_s_key_stays_the_same(tmp_path: Path) -> None:
    key = Access(Book(tmp_path / "a.book")).calendar_key
    again = Access(Book(tmp_path / "a.book"))
    assert again.calendar_key == key
    assert again.opens_calendar(key)
    assert not again.opens_calendar(key[:-1])

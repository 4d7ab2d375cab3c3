from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from combwright.records.store.book_handle import Book
from combwright.services.access import SESSION, Access
from combwright.services.people.sessions import UNUSED
from combwright.terms.errors import BookError, OutOfRangeError

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


def test_a_passphrase_is_stretched_as_is_recommended(tmp_path: Path) -> None:
    Access(Book(tmp_path / "a.book")).set_passphrase(WORDS)
    kept = (tmp_path / "a.book.access").read_text("utf-8")
    # https://www.rfc-editor.org/rfc/rfc9106#section-4, the second set
    assert "$argon2id$v=19$m=65536,t=3,p=4$" in kept


def test_a_session_holds_until_its_end(tmp_path: Path) -> None:
    access = Access(Book(tmp_path / "a.book"))
    access.set_passphrase(WORDS)
    token = access.begin(NOW)
    for day in (10, 20):
        assert access.who(token, NOW + timedelta(days=day))
    assert access.who(token, NOW + SESSION - timedelta(seconds=1))
    assert access.who(token, NOW + SESSION) is None
    assert access.who("", NOW) is None
    access.sessions.end(access.sessions.going(NOW)[0].key)
    assert access.who(token, NOW) is None


def test_a_session_that_nobody_uses_ends_sooner(tmp_path: Path) -> None:
    access = Access(Book(tmp_path / "a.book"))
    access.set_passphrase(WORDS)
    token = access.begin(NOW)
    used = NOW + UNUSED - timedelta(minutes=1)
    assert access.who(token, used)
    assert access.who(token, used + UNUSED - timedelta(minutes=1))
    assert access.who(access.begin(NOW), NOW + UNUSED) is None
    assert access.who(token, NOW + SESSION - timedelta(seconds=1))  # that other ended alone


def test_sessions_that_are_over_are_forgotten(tmp_path: Path) -> None:
    access = Access(Book(tmp_path / "a.book"))
    for day in range(90):
        access.begin(NOW + timedelta(days=day))
    kept = (tmp_path / "a.book.sessions").read_text("utf-8")
    assert kept.count("until") <= SESSION.days + 1


def test_a_login_never_writes_an_old_passphrase_back(tmp_path: Path) -> None:
    serving = Access(Book(tmp_path / "a.book"))
    serving.set_passphrase(WORDS)
    token = serving.begin(NOW)
    Access(Book(tmp_path / "a.book")).set_passphrase("another four unlikely words")  # a command
    assert serving.who(token, NOW) is None
    assert not serving.is_right(WORDS)
    serving.begin(NOW)
    assert Access(Book(tmp_path / "a.book")).is_right("another four unlikely words")


@pytest.mark.parametrize(
    "words", ["passwordpassword", "123456789012", "Combwright2027!", "Correct horse battery staple"]
)
def test_passphrases_that_are_guessed_first_are_refused(tmp_path: Path, words: str) -> None:
    access = Access(Book(tmp_path / "a.book"))
    with pytest.raises(OutOfRangeError, match="guessed first"):
        access.set_passphrase(words)
    assert not access.needs_passphrase


@pytest.mark.parametrize("damage", ["{", "[]", "[" * 100_000])
def test_a_damaged_file_is_named_and_opens_nothing(tmp_path: Path, damage: str) -> None:
    (tmp_path / "a.book.access").write_text(damage, "utf-8")
    with pytest.raises(BookError, match=r"a\.book\.access"):
        Access(Book(tmp_path / "a.book"))


def test_the_calendar_s_key_stays_the_same(tmp_path: Path) -> None:
    key = Access(Book(tmp_path / "a.book")).calendar_key
    again = Access(Book(tmp_path / "a.book"))
    assert again.calendar_key == key
    assert again.opens_calendar(key)
    assert not again.opens_calendar(key[:-1])

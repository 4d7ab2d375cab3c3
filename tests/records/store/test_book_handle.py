"""A book as a handle."""

from datetime import date
from pathlib import Path

import pytest
from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import history, keep
from combwright.terms.errors import BookError


def test_a_handle_costs_nothing_until_the_book_is_needed(tmp_path: Path) -> None:
    book = Book(tmp_path / "a.book")
    assert list(tmp_path.iterdir()) == []
    assert book.now().entries == []
    assert [path.name for path in tmp_path.iterdir()] == ["a.book"]


def test_a_book_that_must_exist_is_not_made(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="no book here yet"):
        Book(tmp_path / "a.book", must_exist=True).now()
    assert list(tmp_path.iterdir()) == []


def test_a_book_that_was_closed_opens_again(tmp_path: Path) -> None:
    book = Book(tmp_path / "a.book")
    with book.writing() as db:
        keep(db, [a_visit(1)])
    book.close()
    with book.reading() as db:
        assert history(db) == [a_visit(1)]


def test_a_book_that_is_taken_away_is_missed_or_begun_again(tmp_path: Path) -> None:
    path = tmp_path / "a.book"
    book = Book(path)
    with book.writing() as db:
        keep(db, [a_visit(1)])
    strict = Book(path, must_exist=True)
    assert len(strict.now().history) == 1
    path.unlink()
    with pytest.raises(BookError, match="no book here yet"):
        strict.now()
    with book.writing() as db:
        keep(db, [a_visit(2)])
    assert book.now().history == [a_visit(2)]


def test_another_book_in_its_place_is_read_from_its_beginning(tmp_path: Path) -> None:
    book, other = Book(tmp_path / "a.book"), Book(tmp_path / "b.book")
    for one, ids in ((book, (1, 2, 3)), (other, (9,))):
        with one.writing() as db:
            keep(db, [a_visit(each) for each in ids])
    assert len(book.now().history) == 3
    Path(other.place).replace(book.place)
    assert book.now().history == [a_visit(9)]


def test_a_book_is_known_by_one_key_however_it_is_named(tmp_path: Path) -> None:
    (tmp_path / "deep").mkdir()
    round_about = Book(tmp_path / "deep" / ".." / "a.book")
    assert round_about.key == Book(tmp_path / "a.book").key
    assert round_about.key != Book(tmp_path / "b.book").key


def test_what_goes_with_a_book_lies_beside_it(tmp_path: Path) -> None:
    book = Book(tmp_path / "a.book")
    assert book.beside("photos") == tmp_path / "a.book.photos"
    assert book.name == "a.book"
    assert book.now().next_round(date(2027, 5, 1)) == date(2027, 5, 1)

"""Who noted an entry stands beside it: id, seal and content are the same whoever it was."""

from datetime import UTC, datetime
from pathlib import Path
from uuid import UUID, uuid4

import pytest
import sqlalchemy as sa
from tests.postgres import Places
from tests.records.samples import a_visit

from combwright.records.store import people_rows
from combwright.records.store.authorship import authors_of, written_by
from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.records.store.people_rows import KEPT, add_person, people, tell, told
from combwright.records.store.tables import door_log, noted_by, seal
from combwright.terms.entries import Correction
from combwright.terms.errors import NotAllowedError
from combwright.terms.person import Author, Person, Role

NOW = datetime(2027, 4, 24, 9, tzinfo=UTC)
BEN = Person(UUID(int=1), "Ben", Role.HELPER, NOW)


def by(role: Role = Role.HELPER) -> Author:
    return Author(BEN.id, role, NOW)


@pytest.fixture
def book(places: Places) -> Book:
    made = Book(places("a.book"))
    with made.writing() as db:
        add_person(db, BEN)
    return made


def test_the_same_note_is_the_same_entry_whoever_made_it(book: Book, tmp_path: Path) -> None:
    alone, note = Book(tmp_path / "b.book"), a_visit(1)
    with alone.writing() as db:
        keep(db, [note])
    with written_by(by()), book.writing() as db:
        assert keep(db, [note]) == 1
        assert keep(db, [note]) == 0  # sent twice, by whomever
    seals = sa.select(seal.c.hash)
    with alone.reading() as one, book.reading() as other:
        assert one.scalars(seals).all() == other.scalars(seals).all()
        assert authors_of(other, [note.id]) == {note.id: "Ben"}
        assert authors_of(one, [note.id]) == {}
    assert alone.now().history == book.now().history


def test_a_helper_corrects_their_own_alone(book: Book) -> None:
    annas, bens = a_visit(1), a_visit(2)

    def struck(which: UUID) -> Correction:
        return Correction(id=uuid4(), on=NOW.date(), corrects=which)

    with book.writing() as db:
        keep(db, [annas])
    with written_by(by()), book.writing() as db:
        keep(db, [bens, struck(bens.id)])
    with (
        pytest.raises(NotAllowedError, match="Another person noted this"),
        written_by(by()),
        book.writing() as db,
    ):
        keep(db, [a_visit(3), struck(annas.id)])
    with pytest.raises(NotAllowedError), written_by(by(Role.READER)), book.writing() as db:
        keep(db, [a_visit(3)])
    assert book.now().last == 3
    with written_by(by(Role.KEEPER)), book.writing() as db:
        keep(db, [struck(annas.id)])


@pytest.mark.parametrize("what", [sa.delete(noted_by), sa.update(noted_by).values(person=uuid4())])
def test_whose_a_note_is_is_never_changed(book: Book, what: sa.Executable) -> None:
    with written_by(by()), book.writing() as db:
        keep(db, [a_visit(1)])
    with pytest.raises(sa.exc.IntegrityError, match="never"), book.writing() as db:
        db.execute(what)


def test_the_log_lets_go_of_what_is_old_or_too_much(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(people_rows, "MOST", 50)
    with book.writing() as db:
        many = [{"sequence": at, "at": NOW, "what": "a wrong passphrase"} for at in range(1, 51)]
        db.execute(sa.insert(door_log), many)
        tell(db, NOW, BEN.id, "logged in")
        assert db.scalar(sa.select(sa.func.count()).select_from(door_log)) == 50
        assert [(one.name, one.what) for one in told(db, 1)] == [("Ben", "logged in")]
        tell(db, NOW + KEPT * 1.01, None, "logged in")
        assert len(told(db, 9)) == 1
        assert [one.name for one in people(db)] == ["Ben"]

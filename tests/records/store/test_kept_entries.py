from datetime import date
from pathlib import Path
from uuid import UUID, uuid4

import pytest
import sqlalchemy as sa
from hypothesis import HealthCheck, given, settings
from tests.postgres import Places
from tests.records.samples import a_visit, histories

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import all_entries, entries_of, history, keep
from combwright.records.store.tables import entry
from combwright.terms.entries import AnyEntry, Correction, Split
from combwright.terms.errors import ClashError


def wrote(path: Path | str, entries: list[AnyEntry]) -> list[AnyEntry]:
    book = Book(path)
    with book.writing() as db:
        keep(db, entries)
    with book.reading() as db:
        found = history(db)
    book.close()
    return found


def test_writing_twice_changes_nothing(places: Places) -> None:
    book = Book(places("a.book"))
    entries = [a_visit(1), a_visit(2)]
    with book.writing() as db:
        assert keep(db, entries) == 2
        assert keep(db, entries) == 0
        assert keep(db, [*entries, a_visit(3), a_visit(3)]) == 1
        assert history(db) == [a_visit(1), a_visit(2), a_visit(3)]


def test_an_id_cannot_stand_for_two_things(places: Places) -> None:
    book = Book(places("a.book"))
    with book.writing() as db:
        keep(db, [a_visit(1, frames_of_bees=5)])
    with pytest.raises(ClashError, match="write a correction"), book.writing() as db:
        keep(db, [a_visit(2), a_visit(1, frames_of_bees=6)])
    with pytest.raises(ClashError, match="already used"), book.writing() as db:
        keep(db, [a_visit(3), a_visit(3, frames_of_bees=6)])
    with book.reading() as db:
        assert history(db) == [a_visit(1, frames_of_bees=5)]


def test_an_entry_written_before_a_field_was_added_is_still_the_same(places: Places) -> None:
    """What lies in the table leaves out what was not noted, as an older version would have."""
    book = Book(places("a.book"))
    with book.writing() as db:
        keep(db, [a_visit(1, frames_of_bees=5)])
        (body,) = db.scalars(sa.select(entry.c.body))
        assert "eggs" not in body
        assert keep(db, [a_visit(1, frames_of_bees=5)]) == 0


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE entry SET kind = 'feed'",
        "DELETE FROM entry",
        {
            "sqlite": "INSERT OR REPLACE INTO entry SELECT * FROM entry",
            "postgresql": "TRUNCATE entry",
        },
    ],
)
def test_the_database_itself_refuses_to_change_an_entry(
    places: Places, statement: str | dict[str, str]
) -> None:
    book = Book(places("a.book"))
    with book.writing() as db:
        keep(db, [a_visit()])
    with book.reading() as db:
        told = statement if isinstance(statement, str) else statement[db.dialect.name]
    with pytest.raises(sa.exc.IntegrityError, match="write a correction"), book.writing() as db:
        db.exec_driver_sql(told)
    with book.reading() as db:
        assert history(db) == [a_visit()]


@settings(max_examples=40, deadline=None, suppress_health_check=[*HealthCheck])
@given(entries=histories())
def test_what_was_written_is_read_back_in_order(places: Places, entries: list[AnyEntry]) -> None:
    assert wrote(places(str(uuid4())), entries) == entries


@settings(max_examples=40, deadline=None, suppress_health_check=[*HealthCheck])
@given(entries=histories())
def test_one_colony_read_alone_is_the_same_as_picked_from_the_whole_book(
    places: Places, entries: list[AnyEntry]
) -> None:
    book = Book(places(str(uuid4())))
    with book.writing() as db:
        keep(db, entries)
    with book.reading() as db:
        whole = all_entries(db)
        colonies = {getattr(each, "colony", "") for each in whole}
        for colony in colonies:
            picked = [each for each in whole if getattr(each, "colony", "") == colony]
            assert entries_of(db, colony) == picked
    book.close()


def test_a_colony_remembers_the_split_that_made_it(places: Places) -> None:
    split = Split(
        id=UUID(int=9),
        on=date(2026, 5, 20),
        colony="Alder",
        new_colony="Birch",
        hive="poly nuc",
        frames_of_bees=3,
    )
    moved = Correction(
        id=UUID(int=10),
        on=date(2026, 5, 21),
        corrects=UUID(int=1),
        replacement=a_visit(11, colony="Birch"),
    )
    book = Book(places("a.book"))
    with book.writing() as db:
        keep(db, [a_visit(1), split, moved])
        assert entries_of(db, "Birch") == [a_visit(11, colony="Birch"), split]
        assert entries_of(db, "Alder") == [split]

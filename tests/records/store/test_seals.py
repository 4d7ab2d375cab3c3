"""The chain of seals: the worked example byte for byte, and whatever is altered shows."""

import sqlite3
from datetime import date
from pathlib import Path
from typing import Any
from uuid import UUID

import pytest
import rfc8785
import sqlalchemy as sa
from hypothesis import given
from hypothesis import strategies as st

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.records.store.migrations.run import upgrade
from combwright.records.store.seals import BEFORE_ALL, NEWEST, canonical, check_seals, seal_of
from combwright.services.book.checking import check_book, code_words, seal_words
from combwright.terms.entries import Correction, Visit
from combwright.terms.errors import BookError, NotFoundError

# Worked out apart, with SHA-256 over the text of RFC 8785 of each entry.
BOUGHT = {
    "batch": "B123",
    "date": "2026-08-01",
    "product": "Example strip",
    "proof": "INV-77",
    "qty": 10,
    "supplier": "Example Supply, 1 Main St, Athlone",
    "type": "medicine.purchase",
    "unit": "strip",
}
USED = {
    "batch": "B123",
    "colonies": ["A1-03", "A1-04"],
    "end": "2026-10-08",
    "product": "Example strip",
    "qty": 4,
    "start": "2026-08-20",
    "type": "medicine.treatment",
    "unit": "strip",
    "withdrawal_days": 0,
}
FIRST = "8910e69f8768c625652befc0d8a6d701af8a50c17a15192341e32b8732bc3164"
SECOND = "8f2a831c68e2a52135352f6dd5535b013e56e560c8b1d9934f5537089c308fa2"
ALTERED = "8888459019d573356b7e011080f4edeef032c2491961dc92eb2627b0710cedef"


def test_the_chain_is_that_of_the_worked_example() -> None:
    assert seal_of(BEFORE_ALL, BOUGHT, 1) == FIRST
    assert seal_of(FIRST, USED, 2) == SECOND
    assert seal_of(BEFORE_ALL, BOUGHT | {"qty": 11}, 1) == ALTERED


JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53) + 1, 2**53 - 1) | st.text()
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.sampled_from([-0.0, 1e-7, 1e15, 2.0**53, 1e21, 5e-324]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)  # fmt: skip


@given(st.dictionaries(st.text(), JSON, max_size=4))
def test_the_quick_way_writes_what_the_library_of_the_standard_writes(
    whole: dict[str, Any],
) -> None:
    assert canonical(whole) == rfc8785.dumps(whole)


def visit(number: int) -> Visit:
    return Visit(id=UUID(int=number), on=date(2027, 4, 3), colony="Alder", stores_kg=number / 2)


COUNT = 30  # more than are looked at on opening
assert COUNT > NEWEST


@pytest.fixture
def path(tmp_path: Path) -> Path:
    book = Book(tmp_path / "keeper.book")
    with book.writing() as db:
        keep(db, [visit(number) for number in range(1, COUNT)])
    with book.writing() as db:
        keep(db, [Correction(id=UUID(int=COUNT), on=date(2027, 4, 4), corrects=UUID(int=2))])
    book.close()
    return tmp_path / "keeper.book"


def behind_its_back(path: Path, *statements: str) -> None:
    db = sqlite3.connect(path)
    for trigger in ("entry_is_never_changed", "entry_is_never_deleted", "seal_is_never_deleted"):
        db.execute(f"DROP TRIGGER {trigger}")
    for statement in statements:
        db.execute(statement)
    db.commit()
    db.close()


def test_notes_corrections_and_strike_outs_all_have_their_seal(path: Path) -> None:
    found = check_book(Book(path))
    assert (found.entries, found.wrong) == (COUNT, "")
    assert found.until == date(2027, 4, 4)
    assert f"over {COUNT} entries" in found.words


def test_the_code_on_a_paper_is_found_again(path: Path) -> None:
    book = Book(path)
    code = check_book(book).code
    with book.writing() as db:
        keep(db, [visit(COUNT + 1)])
    assert code_words(book, code) == f"The code {code} is the seal over the first {COUNT} entries."
    for other in ("0000-0000-0000", "%", ""):
        with pytest.raises(NotFoundError):
            code_words(book, other)


@pytest.mark.parametrize(
    ("statement", "at"),
    [
        ("UPDATE entry SET body = replace(body, '1.5', '9.5') WHERE sequence = 3", 3),
        ("DELETE FROM entry WHERE sequence = 4", 4),
        ("DELETE FROM entry WHERE sequence = 30", COUNT),
        ("UPDATE entry SET body = 'not json' WHERE sequence = 5", 5),
        ("DELETE FROM seal WHERE sequence = 6", 6),
    ],
)
def test_whatever_is_altered_shows_where(path: Path, statement: str, at: int) -> None:
    behind_its_back(path, statement)
    with Book(path).reading() as db:
        assert check_seals(db).broken_at == at


def test_what_is_altered_among_the_last_entries_stops_writing_but_not_reading(path: Path) -> None:
    behind_its_back(path, "UPDATE entry SET body = replace(body, '5', '6') WHERE sequence = 29")
    book = Book(path)
    assert book.now().entries
    assert "Entry 29 does not fit its seal" in seal_words(book)
    with pytest.raises(BookError, match="does not fit its seal"), book.writing():
        pass


def test_a_book_of_before_is_sealed_when_it_is_brought_up_to_date(tmp_path: Path) -> None:
    engine = sa.create_engine(f"sqlite:///{tmp_path / 'old.book'}")
    with engine.begin() as db:
        upgrade(db, "0001")
        body = visit(1).model_dump_json(exclude_none=True)
        row = "INSERT INTO entry (id, sequence, kind, happened, colony, body)"
        row += " VALUES (?, 1, 'visit', ?, ?, ?)"
        db.exec_driver_sql(row, (UUID(int=1).hex, str(visit(1).on), visit(1).colony, body))
    engine.dispose()
    book = Book(tmp_path / "old.book")
    with book.writing() as db:
        keep(db, [visit(2)])
    assert (check_book(book).entries, check_book(book).wrong) == (2, "")

"""All that one book holds poured into another that is still empty, whichever databases they are."""

from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import sha256
from typing import Final

import sqlalchemy as sa

from combwright.records.store.engine import place_of
from combwright.records.store.tables import tables
from combwright.terms.errors import BookError

ROWS: Final = 1000  # that are read and written at once


@dataclass(frozen=True, slots=True)
class Poured:
    """What of one table is in the new book: its rows, and a checksum over all they say."""

    rows: int
    sha256: str


def pour(source: sa.Connection, target: sa.Connection) -> Mapping[str, Poured]:
    """Write all that a book holds into an empty one, and read it there again to compare."""
    refuse_full(target)
    for table in tables.sorted_tables:
        rows = source.execute(sa.select(table)).yield_per(ROWS)
        for some in rows.mappings().partitions(ROWS):
            target.execute(sa.insert(table), [dict(row) for row in some])
    poured = {table.name: counted(target, table) for table in tables.sorted_tables}
    for table in tables.sorted_tables:
        if counted(source, table) != poured[table.name]:
            raise BookError(
                f"What was written of “{table.name}” is not what was read.",
                where=place_of(target),
                remedy="Nothing was kept. Look through the book with “combwright book check”.",
            )
    return poured


def refuse_full(target: sa.Connection) -> None:
    """Refuse a book that holds something already."""
    for table in tables.sorted_tables:
        if target.scalar(sa.select(sa.func.count()).select_from(table)):
            raise BookError(
                "There is something in this book already.",
                where=place_of(target),
                remedy="Nothing was changed. Name a place where there is no book yet.",
            )


def counted(db: sa.Connection, table: sa.Table) -> Poured:
    """Count the rows of a table and seal them, in whatever order the database gives them."""
    rows = db.execute(sa.select(table)).yield_per(ROWS)
    digests = sorted(sha256(repr(tuple(row)).encode()).digest() for row in rows)
    return Poured(len(digests), sha256(b"".join(digests)).hexdigest())

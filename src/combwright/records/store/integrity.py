"""Whether a book is whole: quickly when it is opened, and thoroughly when there is time."""

from itertools import islice
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.exc import DatabaseError

from combwright.records.store.dialect import guards, whatever_stands_in, wrong_pages
from combwright.records.store.failures import AWAY, BUSY, family_of
from combwright.records.store.kept_entries import row
from combwright.records.store.personal import misfits, put_back
from combwright.records.store.seals import NEWEST, check_seals
from combwright.records.store.stored_rows import UNREADABLE
from combwright.records.store.tables import entry, tables
from combwright.terms.entries import ENTRY
from combwright.terms.errors import BookError

NO_DAMAGE: Final = (AWAY, BUSY)
MOST_TOLD: Final = 10
ROWS: Final = 1000  # of the book that are read at once
SAYS_ELSE: Final = "Entry {} says something else than its columns."
NOT_OF: Final = "What is kept of the buyer in entry {} is not what was sealed."
GUARDS: Final = {
    f"{table}_is_never_{done}"
    for table in ("entry", "seal", "old_seal", "noted_by")
    for done in ("changed", "deleted")
}


def quickly(db: sa.Connection) -> str:
    """Say what is wrong with a book at first sight, its file and its last seals, or nothing."""
    try:
        return next(iter(wrong_pages(db, "quick_check(1)")), "") or _seals(db, NEWEST)
    except (DatabaseError, *UNREADABLE) as error:
        return _damage(error)


def thoroughly(db: sa.Connection) -> list[str]:
    """Go through the whole book and say all that is wrong with it, up to some ten things."""
    try:
        told = [*wrong_pages(db, f"integrity_check({MOST_TOLD})"), *_structure(db)]
        if not told:
            told = [*filter(None, [_seals(db, None)]), *_entries(db), *_buyers(db)]
    except (DatabaseError, BookError) as error:
        told = [_damage(error)]
    return told[:MOST_TOLD]


def _damage(error: Exception) -> str:
    """Say what was met; a server that is away, or a lock, is no damage."""
    if family_of(error) in NO_DAMAGE:
        raise error
    return str(getattr(error, "orig", error))


def _seals(db: sa.Connection, newest: int | None) -> str:
    broken = check_seals(db, newest=newest).broken_at
    return "" if broken is None else f"Entry {broken} does not fit its seal."


def _structure(db: sa.Connection) -> list[str]:
    """Find tables, columns and guards that are missing."""
    at, told = sa.inspect(db), []
    there = set(at.get_table_names())
    for name, table in tables.tables.items():
        has = {column["name"] for column in at.get_columns(name)} if name in there else set()
        told += [f"“{name}” lacks “{each.name}”." for each in table.columns if each.name not in has]
    return [*told, *(f"The guard “{name}” is missing." for name in sorted(GUARDS - guards(db)))]


def _entries(db: sa.Connection) -> list[str]:
    """Find entries that cannot be read, or whose columns say something else than they do."""
    try:
        rows = db.execute(sa.select(entry).order_by(entry.c.sequence)).yield_per(ROWS)
        differing = (row.sequence for row in rows if _differs(row._asdict()))
        return [SAYS_ELSE.format(sequence) for sequence in islice(differing, MOST_TOLD)]
    except UNREADABLE:
        return _one_by_one(db)


def _one_by_one(db: sa.Connection) -> list[str]:
    """Find the entries that cannot be read, which takes ten times as long."""
    told: list[str] = []
    at = whatever_stands_in(db, entry.c.sequence)
    for sequence in db.scalars(sa.select(at).order_by(entry.c.sequence)).all():
        try:
            found = db.execute(sa.select(entry).where(at == sequence)).one()._asdict()
            if _differs(found):
                told.append(SAYS_ELSE.format(sequence))
        except UNREADABLE:
            told.append(f"Entry {sequence} cannot be read.")
        if len(told) >= MOST_TOLD:
            break
    return told


def _buyers(db: sa.Connection) -> list[str]:
    """Find what is kept of buyers and is not what the entries were sealed with."""
    try:
        return [NOT_OF.format(sequence) for sequence in islice(misfits(db), MOST_TOLD)]
    except UNREADABLE:
        return ["What is kept of buyers cannot be read."]


def _differs(found: dict[str, Any]) -> bool:
    laid = row(ENTRY.validate_python(put_back(found["body"], None)), found["sequence"])
    return any(found[name] != value for name, value in laid.items() if name != "body")

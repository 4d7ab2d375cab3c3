"""Whether a book is whole: quickly when it is opened, and thoroughly when there is time."""

from itertools import islice
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.exc import DatabaseError

from combwright.records.store.kept_entries import row
from combwright.records.store.seals import NEWEST, check_seals
from combwright.records.store.stored_rows import UNREADABLE
from combwright.records.store.tables import entry, tables
from combwright.terms.entries import ENTRY
from combwright.terms.errors import BookError

WELL: Final = "ok"
MOST_TOLD: Final = 10
ROWS: Final = 1000  # of the book that are read at once
SAYS_ELSE: Final = "Entry {} says something else than its columns."
GUARDS: Final = {
    f"{table}_is_never_{done}" for table in ("entry", "seal") for done in ("changed", "deleted")
}


def quickly(db: sa.Connection) -> str:
    """Say what is wrong with a book at first sight, its file and its last seals, or nothing."""
    try:
        found = db.exec_driver_sql("PRAGMA quick_check(1)").scalar()
        return _seals(db, NEWEST) if found == WELL else str(found)
    except (DatabaseError, *UNREADABLE) as error:
        return str(getattr(error, "orig", error))


def thoroughly(db: sa.Connection) -> list[str]:
    """Go through the whole book and say all that is wrong with it, up to some ten things."""
    try:
        pages = db.exec_driver_sql(f"PRAGMA integrity_check({MOST_TOLD})").scalars().all()
        told = [str(one) for one in pages if one != WELL]
        told += _structure(db)
        if not told:
            told = [*filter(None, [_seals(db, None)]), *_entries(db)]
    except (DatabaseError, BookError) as error:
        told = [str(getattr(error, "orig", error))]
    return told[:MOST_TOLD]


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
    wanted = "SELECT name FROM sqlite_master WHERE type = 'trigger'"
    guards = set(db.exec_driver_sql(wanted).scalars()) if db.dialect.name == "sqlite" else GUARDS
    return [*told, *(f"The guard “{name}” is missing." for name in sorted(GUARDS - guards))]


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
    text = sa.type_coerce(entry.c.sequence, sa.Text)  # whatever stands there
    for sequence in db.scalars(sa.select(text).order_by(entry.c.sequence)).all():
        try:
            found = db.execute(sa.select(entry).where(text == sequence)).one()._asdict()
            if _differs(found):
                told.append(SAYS_ELSE.format(sequence))
        except UNREADABLE:
            told.append(f"Entry {sequence} cannot be read.")
        if len(told) >= MOST_TOLD:
            break
    return told


def _differs(found: dict[str, Any]) -> bool:
    laid = row(ENTRY.validate_python(found["body"]), found["sequence"])
    return any(found[name] != value for name, value in laid.items() if name != "body")

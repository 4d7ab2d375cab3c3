"""The one place that knows which database lies underneath, where SQL itself differs."""

from collections.abc import Callable
from typing import Any, Final

import sqlalchemy as sa
from sqlalchemy.dialects import postgresql, sqlite

Insert = sqlite.Insert | postgresql.Insert

INSERTS: dict[str, Callable[[sa.Table], Insert]] = {
    "sqlite": sqlite.insert,
    "postgresql": postgresql.insert,
}
WELL: Final = "ok"
GUARDS: Final = {
    "sqlite": "SELECT name FROM sqlite_master WHERE type = 'trigger'",
    "postgresql": "SELECT tgname FROM pg_trigger WHERE tgenabled = 'O' AND tgrelid IN "
    "(SELECT oid FROM pg_class WHERE relnamespace = current_schema()::regnamespace)",
}


def insert(db: sa.Connection, table: sa.Table) -> Insert:
    """Insert in a way that can say what to do on a conflict."""
    return INSERTS[db.dialect.name](table)


def guards(db: sa.Connection) -> set[str]:
    """Name the triggers that keep what was written as it is."""
    return set(db.exec_driver_sql(GUARDS[db.dialect.name]).scalars())


def wrong_pages(db: sa.Connection, look: str) -> list[str]:
    """Say what SQLite finds wrong with a file; a server keeps its own to itself."""
    if db.dialect.name != "sqlite":
        return []
    return [str(one) for one in db.exec_driver_sql(f"PRAGMA {look}").scalars() if one != WELL]


def whatever_stands_in(db: sa.Connection, column: sa.Column[Any]) -> sa.ColumnElement[Any]:
    """Read a column as it is: SQLite lets text stand where a number should."""
    return sa.type_coerce(column, sa.Text) if db.dialect.name == "sqlite" else column

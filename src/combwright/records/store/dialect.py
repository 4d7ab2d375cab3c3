"""The one place that knows which database lies underneath, where SQL itself differs."""

from collections.abc import Callable

import sqlalchemy as sa
from sqlalchemy.dialects import postgresql, sqlite

Insert = sqlite.Insert | postgresql.Insert

INSERTS: dict[str, Callable[[sa.Table], Insert]] = {
    "sqlite": sqlite.insert,
    "postgresql": postgresql.insert,
}


def insert(db: sa.Connection, table: sa.Table) -> Insert:
    """Insert in a way that can say what to do on a conflict."""
    return INSERTS[db.dialect.name](table)

"""What entries say of buyers moved into a table of its own, from which it can be deleted.

The entries that said it are written anew without it, and sealed anew from the first of them on. The
chain as it stood is kept, so that the code on a paper of before can still be looked up.
"""

from collections.abc import Sequence
from secrets import token_hex
from typing import Any

import sqlalchemy as sa
from alembic import op

from combwright.records.store.migrations.guards import guard, unguard
from combwright.records.store.personal import taken_out
from combwright.records.store.seals import BEFORE_ALL, seal_rows

revision = "0004"
down_revision = "0003"

entry = sa.table("entry", sa.column("sequence", sa.Integer), sa.column("body", sa.JSON))
seal, old_seal = (
    sa.table(name, sa.column("sequence", sa.Integer), sa.column("hash", sa.String))
    for name in ("seal", "old_seal")
)
AT_ONCE = 5000


def upgrade() -> None:
    """Make the tables, and move what the entries say of buyers."""
    op.create_table(
        "old_seal",
        sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column("hash", sa.String(64), nullable=False),
    )
    personal = op.create_table(
        "personal",
        sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column("salt", sa.String(32), nullable=False),
        sa.Column("told", sa.JSON, nullable=False),
    )
    if moved := list(_moved(op.get_bind())):
        op.bulk_insert(personal, [apart for _, apart in moved])
        _write_anew([(apart["sequence"], body) for body, apart in moved])
    guard(
        "old_seal",
        changed="an old seal is never changed",
        deleted="an old seal is never deleted",
    )


def _moved(db: sa.Connection) -> Sequence[tuple[dict[str, Any], dict[str, Any]]]:
    rows = db.execute(sa.select(entry.c.sequence, entry.c.body).order_by(entry.c.sequence)).all()
    found = []
    for sequence, body in rows:
        salt = token_hex(16)
        kept, told = taken_out(body, salt)
        if told:
            found.append((kept, {"sequence": sequence, "salt": salt, "told": told}))
    return found


def _write_anew(bodies: Sequence[tuple[int, dict[str, Any]]]) -> None:
    """Write entries without their buyers, and every seal from the first of them on."""
    db, first = op.get_bind(), bodies[0][0]
    db.execute(old_seal.insert().from_select(["sequence", "hash"], sa.select(*seal.c)))
    for table in ("entry", "seal"):
        unguard(table)
    for sequence, body in bodies:
        db.execute(sa.update(entry).where(entry.c.sequence == sequence).values(body=body))
    db.execute(sa.delete(seal).where(seal.c.sequence >= first))
    before = db.scalar(sa.select(seal.c.hash).where(seal.c.sequence == first - 1)) or BEFORE_ALL
    rows = db.execute(
        sa.select(entry.c.sequence, entry.c.body)
        .where(entry.c.sequence >= first)
        .order_by(entry.c.sequence)
    )
    sealed = list(seal_rows(before, (tuple(row) for row in rows)))
    for at in range(0, len(sealed), AT_ONCE):
        db.execute(sa.insert(seal), sealed[at : at + AT_ONCE])
    guard(
        "entry",
        changed="an entry is never changed: write a correction",
        deleted="an entry is never deleted: write a correction",
    )
    guard("seal", changed="a seal is never changed", deleted="a seal is never deleted")

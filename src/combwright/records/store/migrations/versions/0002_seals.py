"""A chain of seals over the entries, those that were written before it included."""

import sqlalchemy as sa
from alembic import op

from combwright.records.store.migrations.guards import guard
from combwright.records.store.seals import BEFORE_ALL, seal_rows

revision = "0002"
down_revision = "0001"

entry = sa.table("entry", sa.column("sequence", sa.Integer), sa.column("body", sa.JSON))
AT_ONCE = 5000


def upgrade() -> None:
    """Make the table of seals, and seal what the book holds."""
    seal = op.create_table(
        "seal",
        sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column("hash", sa.String(64), nullable=False),
    )
    db = op.get_bind()
    rows = db.execute(sa.select(entry.c.sequence, entry.c.body).order_by(entry.c.sequence))
    sealed = list(seal_rows(BEFORE_ALL, (tuple(row) for row in rows)))
    for at in range(0, len(sealed), AT_ONCE):
        db.execute(sa.insert(seal), sealed[at : at + AT_ONCE])
    guard("seal", changed="a seal is never changed", deleted="a seal is never deleted")

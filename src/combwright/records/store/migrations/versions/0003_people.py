"""Who shares the book, who noted what, and what happened at the door."""

import sqlalchemy as sa
from alembic import op

from combwright.records.store.migrations.guards import guard
from combwright.records.store.tables import TEXT

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Make the tables; who noted what is in the book so far is not known."""
    op.create_table(
        "person",
        sa.Column("id", sa.Uuid, primary_key=True),
        sa.Column("name", TEXT, nullable=False),
        sa.Column("role", sa.String(10), nullable=False),
        sa.Column("since", sa.String(25), nullable=False),
        sa.Column("ended", sa.String(25)),
        sa.Column("passphrase", TEXT),
        sa.Column("invitation", sa.String(64), unique=True),
        sa.Column("invited_until", sa.String(25)),
        sa.Column("seed", sa.String(64)),
        sa.Column("step", sa.Integer),
        sa.Column("recovery", sa.JSON),
    )
    op.create_table(
        "noted_by",
        sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column("person", sa.Uuid, nullable=False),
        sa.Column("at", sa.String(25), nullable=False),
    )
    op.create_table(
        "door_log",
        sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
        sa.Column("at", sa.String(25), nullable=False),
        sa.Column("person", sa.Uuid),
        sa.Column("what", TEXT, nullable=False),
    )
    guard(
        "noted_by",
        changed="who noted an entry is never changed",
        deleted="who noted an entry is never deleted",
    )

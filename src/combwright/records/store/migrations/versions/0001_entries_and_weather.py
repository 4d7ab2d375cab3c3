"""Entries that only ever grow, and days of weather."""

import sqlalchemy as sa
from alembic import op

from combwright.records.store.migrations.guards import guard
from combwright.records.store.tables import TEXT

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the tables of the first book."""
    op.create_table(
        "entry",
        sa.Column("id", sa.Uuid, primary_key=True),
        sa.Column("sequence", sa.Integer, nullable=False, unique=True),
        sa.Column("kind", sa.String(20), nullable=False),
        sa.Column("happened", sa.Date, nullable=False),
        sa.Column("colony", TEXT),
        sa.Column("other_colony", TEXT),
        sa.Column("yard", TEXT),
        sa.Column("corrects", sa.Uuid),
        sa.Column("body", sa.JSON, nullable=False),
    )
    for column in ("colony", "other_colony", "corrects"):
        op.create_index(f"ix_entry_{column}", "entry", [column])
    op.create_table(
        "weather_day",
        sa.Column("place", TEXT, primary_key=True),
        sa.Column("day", sa.Date, primary_key=True),
        sa.Column("t_max_c", sa.Double, nullable=False),
        sa.Column("t_min_c", sa.Double, nullable=False),
        sa.Column("rain_mm", sa.Double, nullable=False),
        sa.Column("sun_h", sa.Double, nullable=False),
        sa.Column("wind_m_s", sa.Double, nullable=False),
        sa.Column("source", TEXT, nullable=False),
    )
    guard(
        "entry",
        changed="an entry is never changed: write a correction",
        deleted="an entry is never deleted: write a correction",
    )

"""Entries that only ever grow, and days of weather."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None

# PostgreSQL needs the same two refusals as one trigger function before this may run on it.
NEVER = """
CREATE TRIGGER entry_is_never_{done} BEFORE {event} ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never {done}: write a correction'); END
"""


def upgrade() -> None:
    """Make the tables of the first book."""
    op.create_table(
        "entry",
        sa.Column("id", sa.Uuid, primary_key=True),
        sa.Column("sequence", sa.Integer, nullable=False, unique=True),
        sa.Column("kind", sa.String(20), nullable=False),
        sa.Column("happened", sa.Date, nullable=False),
        sa.Column("colony", sa.Text),
        sa.Column("other_colony", sa.Text),
        sa.Column("yard", sa.Text),
        sa.Column("corrects", sa.Uuid),
        sa.Column("body", sa.JSON, nullable=False),
    )
    for column in ("colony", "other_colony", "corrects"):
        op.create_index(f"ix_entry_{column}", "entry", [column])
    op.create_table(
        "weather_day",
        sa.Column("place", sa.Text, primary_key=True),
        sa.Column("day", sa.Date, primary_key=True),
        sa.Column("t_max_c", sa.Double, nullable=False),
        sa.Column("t_min_c", sa.Double, nullable=False),
        sa.Column("rain_mm", sa.Double, nullable=False),
        sa.Column("sun_h", sa.Double, nullable=False),
        sa.Column("wind_m_s", sa.Double, nullable=False),
        sa.Column("source", sa.Text, nullable=False),
    )
    if op.get_bind().dialect.name == "sqlite":
        op.execute(NEVER.format(event="UPDATE", done="changed"))
        op.execute(NEVER.format(event="DELETE", done="deleted"))

"""The tables of a book.

``entry`` only ever grows: what was noted is never changed, a correction is a row of its own.
``seal`` grows with it, a link of the chain for each entry.
``noted_by`` says beside an entry who noted it and when; it only grows too.
``personal`` holds what entries say of buyers: of which rows can be deleted.
``old_seal`` is the chain as it stood before names were kept apart, for papers printed until then.
``weather_day`` may be replaced, because a forecast becomes a measurement.
``person`` and ``door_log`` are of those who share the book, and of what happened at its door.
"""

from datetime import UTC, datetime

import sqlalchemy as sa

CURRENT = "0004"
# sorted by its signs alone on every server, as SQLite does
TEXT = sa.Text().with_variant(sa.Text(collation="C"), "postgresql")


class StoredMoment(sa.types.TypeDecorator[datetime]):
    """A moment as text in UTC, which sorts by time and says its zone in every database."""

    impl = sa.String(25)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: sa.Dialect) -> str | None:
        """Write a moment."""
        del dialect
        return None if value is None else value.astimezone(UTC).isoformat(timespec="seconds")

    def process_result_value(self, value: str | None, dialect: sa.Dialect) -> datetime | None:
        """Read a moment."""
        del dialect
        return None if value is None else datetime.fromisoformat(value)


tables = sa.MetaData()

version = sa.Table(
    "book_version", sa.MetaData(), sa.Column("version_num", sa.String(32), primary_key=True)
)

entry = sa.Table(
    "entry",
    tables,
    sa.Column("id", sa.Uuid, primary_key=True),
    sa.Column("sequence", sa.Integer, nullable=False, unique=True),
    sa.Column("kind", sa.String(20), nullable=False),
    sa.Column("happened", sa.Date, nullable=False),
    sa.Column("colony", TEXT, index=True),
    sa.Column("other_colony", TEXT, index=True),
    sa.Column("yard", TEXT),
    sa.Column("corrects", sa.Uuid, index=True),
    sa.Column("body", sa.JSON, nullable=False),
)

seal = sa.Table(
    "seal",
    tables,
    sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
    sa.Column("hash", sa.String(64), nullable=False),
)

old_seal = sa.Table(
    "old_seal",
    tables,
    sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
    sa.Column("hash", sa.String(64), nullable=False),
)

personal = sa.Table(
    "personal",
    tables,
    sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
    sa.Column("salt", sa.String(32), nullable=False),
    sa.Column("told", sa.JSON, nullable=False),
)

weather_day = sa.Table(
    "weather_day",
    tables,
    sa.Column("place", TEXT, primary_key=True),
    sa.Column("day", sa.Date, primary_key=True),
    sa.Column("t_max_c", sa.Double, nullable=False),
    sa.Column("t_min_c", sa.Double, nullable=False),
    sa.Column("rain_mm", sa.Double, nullable=False),
    sa.Column("sun_h", sa.Double, nullable=False),
    sa.Column("wind_m_s", sa.Double, nullable=False),
    sa.Column("source", TEXT, nullable=False),
)

person = sa.Table(
    "person",
    tables,
    sa.Column("id", sa.Uuid, primary_key=True),
    sa.Column("name", TEXT, nullable=False),
    sa.Column("role", sa.String(10), nullable=False),
    sa.Column("since", StoredMoment, nullable=False),
    sa.Column("ended", StoredMoment),
    sa.Column("passphrase", TEXT),
    sa.Column("invitation", sa.String(64), unique=True),
    sa.Column("invited_until", StoredMoment),
    sa.Column("seed", sa.String(64)),
    sa.Column("step", sa.Integer),
    sa.Column("recovery", sa.JSON),
)

noted_by = sa.Table(
    "noted_by",
    tables,
    sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
    sa.Column("person", sa.Uuid, nullable=False),
    sa.Column("at", StoredMoment, nullable=False),
)

door_log = sa.Table(
    "door_log",
    tables,
    sa.Column("sequence", sa.Integer, primary_key=True, autoincrement=False),
    sa.Column("at", StoredMoment, nullable=False),
    sa.Column("person", sa.Uuid),
    sa.Column("what", TEXT, nullable=False),
)

"""The tables of a book.

``entry`` only ever grows: what was noted is never changed, a correction is a row of its own.
``seal`` grows with it, a link of the chain for each entry.
``weather_day`` may be replaced, because a forecast becomes a measurement.
"""

import sqlalchemy as sa

CURRENT = "0002"
# sorted by its signs alone on every server, as SQLite does
TEXT = sa.Text().with_variant(sa.Text(collation="C"), "postgresql")

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

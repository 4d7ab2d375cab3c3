"""What was written into a book since a point: how a program that stays open keeps up with it."""

from typing import Final

import sqlalchemy as sa

from combwright.records.store.kept_entries import WHOLE
from combwright.records.store.personal import put_back
from combwright.records.store.stored_rows import readable
from combwright.records.store.tables import entry, weather_day
from combwright.terms.entries import ENTRY, AnyEntry

# put together once: it is asked for at every page
MARKS: Final = sa.select(
    sa.select(sa.func.coalesce(sa.func.max(entry.c.sequence), 0)).scalar_subquery(),
    sa.func.count(),
    sa.func.max(weather_day.c.day),
    sa.func.sum(weather_day.c.t_max_c + weather_day.c.rain_mm + weather_day.c.sun_h),
)


def written_since(db: sa.Connection, sequence: int) -> list[tuple[int, AnyEntry]]:
    """Read entries as they were written after one (0: all), each with its place in the book."""
    asked = WHOLE.add_columns(entry.c.sequence).where(entry.c.sequence > sequence)
    with readable(db):
        return [
            (row.sequence, ENTRY.validate_python(put_back(row.body, row.told)))
            for row in db.execute(asked.order_by(entry.c.sequence))
        ]


def marks(db: sa.Connection) -> tuple[int, str]:
    """Tell the last place in the book, and a mark that changes when its weather does."""
    with readable(db):
        found = db.execute(MARKS).one()
        return int(found[0]), "/".join(str(one) for one in found[1:])

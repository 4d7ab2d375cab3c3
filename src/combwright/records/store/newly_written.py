"""What was written into a book since a point: how a program that stays open keeps up with it."""

from datetime import date

import sqlalchemy as sa

from combwright.records.store.tables import entry, weather_day
from combwright.records.store.weather_days import MEASURED
from combwright.terms.entries import ENTRY, AnyEntry


def written_since(db: sa.Connection, sequence: int) -> list[tuple[int, AnyEntry]]:
    """Read entries as they were written after one, each with its place in the book.

    Parameters
    ----------
    db
        A transaction that reads.
    sequence
        The last place that is known already; 0 for the whole book.

    """
    rows = db.execute(
        sa.select(entry.c.sequence, entry.c.body)
        .where(entry.c.sequence > sequence)
        .order_by(entry.c.sequence)
    )
    return [(row.sequence, ENTRY.validate_python(row.body)) for row in rows]


def marks(db: sa.Connection) -> tuple[int, str]:
    """Tell the last place in the book, and a mark that changes when its weather does."""
    last = sa.select(sa.func.coalesce(sa.func.max(entry.c.sequence), 0)).scalar_subquery()
    numbers = (
        sa.func.count(),
        sa.func.max(weather_day.c.day),
        sa.func.sum(weather_day.c.t_max_c + weather_day.c.rain_mm + weather_day.c.sun_h),
    )
    found = db.execute(sa.select(last, *numbers)).one()
    return int(found[0]), "/".join(str(one) for one in found[1:])


def places_with_weather(db: sa.Connection) -> list[tuple[str, str, str, str, int]]:
    """List the places of which weather is kept: name, first and last day, source, days."""
    rows = db.execute(
        sa.select(
            weather_day.c.place,
            sa.func.min(weather_day.c.day),
            sa.func.max(weather_day.c.day),
            sa.func.max(weather_day.c.source),
            sa.func.count(),
        )
        .group_by(weather_day.c.place)
        .order_by(weather_day.c.place)
    )
    return [(row[0], str(row[1]), str(row[2]), row[3], row[4]) for row in rows]


def weather_of_day(
    db: sa.Connection, on: date
) -> dict[str, tuple[float, float, float, float, float]]:
    """Read one day's weather of every place: highest, lowest, rain, sun, wind."""
    rows = db.execute(
        sa.select(weather_day.c.place, *(weather_day.c[name] for name in MEASURED)).where(
            weather_day.c.day == on
        )
    )
    return {row[0]: (row[1], row[2], row[3], row[4], row[5]) for row in rows}

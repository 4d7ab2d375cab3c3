"""Days of weather that were measured or fetched for a place."""

from collections.abc import Sequence
from datetime import date, timedelta

import numpy as np
import sqlalchemy as sa

from combwright.records.store.dialect import insert
from combwright.records.store.stored_rows import readable
from combwright.records.store.tables import weather_day
from combwright.terms.errors import OutOfRangeError
from combwright.terms.weather import DailyWeather

MEASURED = ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")


def keep_weather(db: sa.Connection, place: str, days: DailyWeather, source: str) -> int:
    """Keep days of weather of a place, which replace what is there, and count them."""
    if days.scenarios != 1:
        raise OutOfRangeError(
            f"Weather in {days.scenarios} versions cannot be kept as what happened.",
            where=place,
            remedy="Give one series of days.",
        )
    columns = [getattr(days, name)[0].tolist() for name in MEASURED]
    rows = [
        {"place": place, "day": days.first + timedelta(days=at), "source": source}
        | dict(zip(MEASURED, values, strict=True))
        for at, values in enumerate(zip(*columns, strict=True))
    ]
    if not np.isfinite(np.array(columns)).all():
        raise OutOfRangeError(
            "Weather with missing numbers cannot be kept.",
            where=place,
            remedy="Leave out the days that are not known.",
        )
    if rows:
        adding = insert(db, weather_day)
        replaced = {name: adding.excluded[name] for name in (*MEASURED, "source")}
        db.execute(
            adding.on_conflict_do_update(index_elements=["place", "day"], set_=replaced), rows
        )
    return len(rows)


def weather_between(db: sa.Connection, place: str, first: date, last: date) -> DailyWeather | None:
    """Read the longest unbroken run of known days of a place; of two as long the later one."""
    asked = (
        sa.select(weather_day.c.day, *(weather_day.c[name] for name in MEASURED))
        .where(weather_day.c.place == place, weather_day.c.day.between(first, last))
        .order_by(weather_day.c.day)
    )
    with readable(db):
        found = db.execute(asked).all()
        run = longest_run([row.day for row in found])
        if not run:
            return None
        values = np.array([row[1:] for row in found[run.start : run.stop]], dtype=np.float64).T
        return DailyWeather(found[run.start].day, *(series[np.newaxis, :] for series in values))


def places_with_weather(db: sa.Connection) -> list[tuple[str, date, date, str, int]]:
    """List the places of which weather is kept: name, first and last day, source, days."""
    asked = (
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
    with readable(db):
        return [(row[0], row[1], row[2], row[3], row[4]) for row in db.execute(asked)]


def named_places(db: sa.Connection) -> set[str]:
    """Name every place of which weather is kept."""
    with readable(db):
        return set(db.scalars(sa.select(weather_day.c.place).distinct()))


def weather_of_day(
    db: sa.Connection, on: date
) -> dict[str, tuple[float, float, float, float, float]]:
    """Read one day's weather of every place: highest, lowest, rain, sun, wind."""
    asked = sa.select(weather_day.c.place, *(weather_day.c[name] for name in MEASURED))
    with readable(db):
        rows = db.execute(asked.where(weather_day.c.day == on)).all()
        return {
            place: (float(high), float(low), float(rain), float(sun), float(wind))
            for place, high, low, rain, sun, wind in rows
        }


def longest_run(days: Sequence[date]) -> range:
    """Find the positions of the longest run of consecutive days; of equals the last.

    Examples
    --------
    >>> longest_run([date(2026, 4, 1), date(2026, 4, 3), date(2026, 4, 4)])
    range(1, 3)

    """
    best, start = range(0), 0
    for at, day in enumerate(days):
        if at and day - days[at - 1] != timedelta(days=1):
            start = at
        if at + 1 - start >= len(best):
            best = range(start, at + 1)
    return best

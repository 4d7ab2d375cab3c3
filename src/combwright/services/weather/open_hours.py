"""From when to when a day is warm enough to open a hive, by the clock of Ireland and Britain."""

from datetime import date, timedelta
from typing import Final

from combwright.science.flight.daytime import daylight_moments

OPENED_FROM_C: Final = 12.0  # below it the sheet says to leave the lid on; common practice
POINTS: Final = 48


def open_hours(
    on: date, t_min_c: float, t_max_c: float, *, latitude_deg: float, longitude_deg: float
) -> tuple[int, int] | None:
    """Give the first and last full hour of the warm part of a day's light, if there is one.

    Examples
    --------
    >>> open_hours(date(2027, 4, 24), 6, 15, latitude_deg=53.4, longitude_deg=-6.2)
    (12, 20)
    >>> open_hours(date(2027, 1, 24), 2, 8, latitude_deg=53.4, longitude_deg=-6.2) is None
    True

    """
    moments = list(daylight_moments(on.timetuple().tm_yday, latitude_deg, POINTS))
    light_h = float(sum(moment.length_h for moment in moments))
    rise = 12.0 - light_h / 2
    warm = [
        rise + light_h * (number + 0.5) / POINTS
        for number, moment in enumerate(moments)
        if t_min_c + (t_max_c - t_min_c) * float(moment.warmth) >= OPENED_FROM_C
    ]
    if not warm:
        return None
    by_clock = is_summer_time(on) - longitude_deg / 15.0
    first, last = round(warm[0] + by_clock), round(warm[-1] + by_clock)
    return (first, last) if last > first else None


def is_summer_time(on: date) -> bool:
    """Tell whether clocks are an hour on: last Sunday of March to last Sunday of October."""
    return _last_sunday(on.year, 3) <= on < _last_sunday(on.year, 10)


def clock(hour: int) -> str:
    """Write an hour as it is said.

    Examples
    --------
    >>> clock(11), clock(12), clock(17)
    ('11 am', 'noon', '5 pm')

    """
    if hour == 12:  # noqa: PLR2004  (noon)
        return "noon"
    return f"{hour} am" if hour < 12 else f"{hour - 12} pm"  # noqa: PLR2004  (noon)


def _last_sunday(year: int, month: int) -> date:
    last = date(year, month, 31)
    return last - timedelta(days=(last.weekday() + 1) % 7)

"""Days of weather as a plain table: our own form, read and written.

``date,tmax_c,tmin_c,rain_mm,sun_h,wind_m_s``, one line a day, dates as 2026-05-01. Units stand in
the headings; wind may also be ``wind_km_h``, ``wind_mph`` or ``wind_kn``, temperatures ``tmax_f``
and ``tmin_f``, rain ``rain_in``. Sunshine and wind may be missing.
"""

import csv
import io
import math
from collections.abc import Iterator
from datetime import date, timedelta

from combwright.sources.days import Day, Read, gather
from combwright.sources.problems import WeatherProblem
from combwright.sources.units import ours
from combwright.terms.errors import SourceError
from combwright.terms.weather import DailyWeather

HEADINGS = ("date", "tmax_c", "tmin_c", "rain_mm", "sun_h", "wind_m_s")
_FIELDS = {
    "tmax": "t_max_c",
    "tmin": "t_min_c",
    "rain": "rain_mm",
    "sun": "sun_h",
    "wind": "wind_m_s",
}
_UNITS = {
    "tmax": ("c", "f"),
    "tmin": ("c", "f"),
    "rain": ("mm", "in"),
    "sun": ("h",),
    "wind": ("m_s", "km_h", "mph", "kn"),
}


def read_table(text: str, name: str) -> Read:
    r"""Read the days of a table.

    Examples
    --------
    >>> read = read_table("date,tmax_c,tmin_c,rain_mm\n2026-05-01,15.2,6.1,0\n", "may.csv")
    >>> read.days[0].t_max_c
    15.2

    """
    rows = csv.reader(io.StringIO(text.removeprefix("\ufeff")))
    headings = [cell.strip().casefold() for cell in next(rows, [])]
    columns = _columns(headings, name)
    problems: list[WeatherProblem] = []
    days = list(_days(rows, headings, columns, problems, name))
    return gather(days, name, problems=problems)


def write_table(*stretches: DailyWeather) -> str:
    """Write the first scenario of each stretch as a table that :func:`read_table` reads."""
    out = io.StringIO()
    lines = csv.writer(out, lineterminator="\n")
    lines.writerow(HEADINGS)
    for one in stretches:
        series = (one.t_max_c, one.t_min_c, one.rain_mm, one.sun_h, one.wind_m_s)
        for at, values in enumerate(zip(*(each[0].tolist() for each in series), strict=True)):
            lines.writerow([(one.first + timedelta(days=at)).isoformat(), *values])
    return out.getvalue()


def _columns(headings: list[str], name: str) -> dict[str, tuple[str, str]]:
    """Say for each heading which quantity it is and in which unit."""
    found: dict[str, tuple[str, str]] = {}
    for heading in headings:
        kind, _, unit = heading.partition("_")
        if kind in _FIELDS and unit not in _UNITS[kind]:
            raise SourceError(
                f"The heading “{heading}” does not say its unit.",
                where=f"{name}, line 1",
                remedy=f"Write {' or '.join(f'{kind}_{unit}' for unit in _UNITS[kind])}.",
            )
        if kind in _FIELDS:
            found[heading] = (_FIELDS[kind], unit)
    read = {heading.partition("_")[0] for heading in found}
    lacking = [kind for kind in ("tmax", "tmin", "rain") if kind not in read]
    if lacking or "date" not in headings:
        raise SourceError(
            f"There is no column for {', '.join(lacking) or 'the date'}.",
            where=f"{name}, line 1",
            remedy=f"The headings are {','.join(HEADINGS)}; the last two may be missing.",
        )
    return found


def _days(
    rows: Iterator[list[str]],
    headings: list[str],
    columns: dict[str, tuple[str, str]],
    problems: list[WeatherProblem],
    name: str,
) -> Iterator[Day]:
    for line, row in enumerate(rows, start=2):
        if not any(cell.strip() for cell in row):
            continue
        try:
            yield _day(row, headings, columns, line, name)
        except ValueError as error:
            problems.append(WeatherProblem(f"{error}", "The day is left out.", line))


def _day(
    row: list[str], headings: list[str], columns: dict[str, tuple[str, str]], line: int, name: str
) -> Day:
    if len(row) != len(headings):
        raise ValueError(
            f"There are {len(row)} cells for {len(headings)} headings. A comma as decimal sign? "
            "Write 12.5."
        )
    cells = dict(zip(headings, (cell.strip() for cell in row), strict=True))
    values = {
        quantity: ours(_number(cells[heading], heading), unit, name)
        for heading, (quantity, unit) in columns.items()
    }
    return Day(_date(cells["date"]), **values, line=line)


def _date(cell: str) -> date:
    try:
        return date.fromisoformat(cell)
    except ValueError as error:
        raise ValueError(f"“{cell}” is no date such as 2026-05-01.") from error


def _number(cell: str, heading: str) -> float | None:
    if not cell:
        return None
    try:
        value = float(cell)
    except ValueError as error:
        raise ValueError(f"{heading} is no number: “{cell}”.") from error
    if not math.isfinite(value):
        raise ValueError(f"{heading} is no number: “{cell}”.")
    return value

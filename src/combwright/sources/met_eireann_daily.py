"""Daily station files of Met Éireann (``dlyNNNN.csv``)."""

import csv
import io
from collections.abc import Iterator
from datetime import date

from combwright.sources.days import Day, Read, gather
from combwright.sources.problems import WeatherProblem
from combwright.sources.units import KNOT_M_S
from combwright.terms.errors import SourceError

ATTRIBUTION = "Met Éireann data, © Met Éireann, Met Éireann Open Data Custom Licence"
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_CENTURY_TURNS = 30  # a year written 30 is 1930, one written 29 is 2029
_NOT_AVAILABLE = {"maxtp": "4", "mintp": "4", "rain": "8"}


def is_met_eireann_daily(text: str) -> bool:
    """Tell whether a text has the table of such a file."""
    return any(_starts_table(line) for line in text.splitlines()[:60])


def _starts_table(line: str) -> bool:
    cells = [cell.strip().casefold() for cell in line.split(",")]
    return cells[0] == "date" and ("ind" in cells or "maxtp" in cells)


def read_met_eireann_daily(text: str, name: str) -> Read:
    """Read the days of a station file.

    The head of the file differs between stations and copies, so the table is found by its first
    heading. Wind is in knots. A value marked as not available counts as missing.
    """
    lines = text.removeprefix("\ufeff").splitlines()
    start = next((at for at, line in enumerate(lines) if _starts_table(line)), None)
    if start is None:
        raise SourceError("There is no line that starts with “date”.", where=name)
    headings = [cell.strip().casefold() for cell in lines[start].split(",")]
    if "maxtp" not in headings or "mintp" not in headings or "rain" not in headings:
        raise SourceError(
            "This station has no temperatures or no rain.",
            where=name,
            remedy="Take a station that measures both.",
        )
    problems: list[WeatherProblem] = []
    rows = csv.reader(io.StringIO("\n".join(lines[start + 1 :])))
    days = list(_days(rows, headings, start + 2, problems))
    return gather(days, name, ATTRIBUTION, problems)


def _days(
    rows: Iterator[list[str]], headings: list[str], first: int, problems: list[WeatherProblem]
) -> Iterator[Day]:
    for line, row in enumerate(rows, start=first):
        cells = [cell.strip() for cell in row]
        if not any(cells):
            continue
        try:
            on = _date(cells[0])
            value = {
                key: _value(cells, headings, key)
                for key in ("maxtp", "mintp", "rain", "sun", "wdsp")
            }
        except ValueError as error:
            problems.append(WeatherProblem(f"{error}", "The day is left out.", line))
            continue
        wind = value["wdsp"]
        yield Day(
            on,
            value["maxtp"],
            value["mintp"],
            value["rain"],
            value["sun"],
            None if wind is None else wind * KNOT_M_S,
            line,
        )


def _value(cells: list[str], headings: list[str], key: str) -> float | None:
    """Give a value; the indicator stands in the column before it."""
    at = headings.index(key) if key in headings else len(cells)
    if at >= len(cells) or not cells[at]:
        return None
    marked = headings[at - 1] == "ind" and cells[at - 1] == _NOT_AVAILABLE.get(key)
    try:
        return None if marked else float(cells[at])
    except ValueError as error:
        raise ValueError(f"{key} is no number: “{cells[at]}”.") from error


def _date(cell: str) -> date:
    try:
        day, month, year = cell.split("-")
        number = int(year)
        if len(year) <= len("99"):
            number += 1900 if number >= _CENTURY_TURNS else 2000
        return date(number, _MONTHS.index(month.casefold()) + 1, int(day))
    except (ValueError, OverflowError) as error:
        raise ValueError(f"“{cell}” is no date such as 01-jan-2026.") from error

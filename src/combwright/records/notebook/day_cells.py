"""Reading a day: certain forms are taken, a form that could mean two days is refused."""

import re
from datetime import date, timedelta

from combwright.terms.errors import NotebookError

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
EARLIEST, LATEST = 1990, 2100
ISO = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ]00:00(?::00(?:\.0+)?)?)?")
NUMBERS = re.compile(r"(\d{1,2})[-/. ]+(\d{1,2})[-/. ]+(\d{4}|\d{2})")
NAMED = re.compile(r"(\d{1,2})[-/. ]*([A-Za-z]{3,9})[-/., ]*(\d{4}|\d{2})")
SERIAL = re.compile(r"\d{5}(?:\.0+)?")
# a spreadsheet counts days from one of two beginnings
SERIAL_BEGINNINGS = (date(1899, 12, 30), date(1904, 1, 1))
WRITE = "Write the day as year-month-day, such as 2026-04-03."


def day(text: str) -> date:
    """Read a day; one that could be more than one is refused.

    Examples
    --------
    >>> day("2026-04-03")
    datetime.date(2026, 4, 3)
    >>> day("3 April 2026") == day("2026/04/03")
    True
    >>> day("3/4/2026")
    Traceback (most recent call last):
    ...
    combwright.terms.errors.NotebookError: “3/4/2026” could be 3 April or 4 March 2026. Write 2026-04-03 or 2026-03-04.

    """  # noqa: E501  (the sentence is one line)
    if found := ISO.fullmatch(text):
        year, month, number = map(int, found.groups())
        return certain(text, year, month, number)
    if found := NAMED.fullmatch(text):
        return named(text, *found.groups())
    if found := NUMBERS.fullmatch(text):
        return numbers(text, *map(int, found.groups()))
    if SERIAL.fullmatch(text):
        raise serial(text)
    raise NotebookError(f"“{text}” is not a day.", remedy=WRITE)


def certain(text: str, year: int, month: int, number: int) -> date:
    """Make the day whose parts are known."""
    if not EARLIEST <= year <= LATEST:
        raise NotebookError(
            f"“{text}” lies in the year {year}.",
            remedy=f"Write a year from {EARLIEST} to {LATEST}, such as 2026-04-03.",
        )
    try:
        return date(year, month, number)
    except ValueError:
        raise NotebookError(f"“{text}” is not in the calendar.", remedy=WRITE) from None


def named(text: str, number: str, month: str, year: str) -> date:
    """Read a day whose month is a word."""
    known = month[:3].lower()
    if known not in MONTHS:
        raise NotebookError(f"“{month}” is not a month in English.", remedy=WRITE)
    at = MONTHS.index(known) + 1
    if len(year) == 2:  # noqa: PLR2004  (two digits)
        raise NotebookError(
            f"“{text}” has a year of two digits, so it could be {int(number)} {month} "
            f"{2000 + int(year)} or {int(year)} {month} {2000 + int(number)}.",
            remedy=f"If the first is right, write 20{year}-{at:02}-{int(number):02}.",
        )
    return certain(text, int(year), at, int(number))


def numbers(text: str, first: int, second: int, year: int) -> date:
    """Read a day of three numbers, where day and month may be either way round."""
    if year < 100:  # noqa: PLR2004  (two digits)
        raise NotebookError(
            f"“{text}” has a year of two digits, and leaves open which number is the month.",
            remedy=WRITE,
        )
    day_first = real(year, second, first)
    month_first = real(year, first, second)
    if day_first and month_first and day_first != month_first:
        raise NotebookError(
            f"“{text}” could be {spoken(day_first)} or {spoken(month_first)} {year}.",
            remedy=f"Write {day_first} or {month_first}.",
        )
    if found := day_first or month_first:
        return certain(text, found.year, found.month, found.day)
    raise NotebookError(f"“{text}” is not in the calendar.", remedy=WRITE)


def serial(text: str) -> NotebookError:
    """Explain a spreadsheet's own count of days."""
    count = timedelta(days=int(text.split(".", maxsplit=1)[0]))
    usual, other = (begin + count for begin in SERIAL_BEGINNINGS)
    return NotebookError(
        f"“{text}” is a spreadsheet's count of days: {usual} if it counts from 1900, "
        f"{other} if from 1904.",
        remedy=f"Give the column a date format with the year first, or write {usual}.",
    )


def real(year: int, month: int, number: int) -> date | None:
    """Give the day if the calendar has it."""
    try:
        return date(year, month, number)
    except ValueError:
        return None


def spoken(found: date) -> str:
    """Say a day without its year."""
    return f"{found.day} {found:%B}"

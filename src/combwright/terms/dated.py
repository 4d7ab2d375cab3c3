"""A day as a keeper writes it."""

import re
from datetime import date
from typing import Final

# Not a part of a name, such as that of a lot, nor a name that is quoted.
A_DAY: Final = re.compile(r"(?<![\w“-])(\d{4}-\d\d-\d\d)(?![\w”-])")


def dated(day: date) -> str:
    """Write a day with its year, the same on every machine.

    Examples
    --------
    >>> dated(date(2027, 3, 6))
    '6 March 2027'

    """
    return f"{day.day} {day:%B} {day.year}"


def in_days(text: str) -> str:
    """Write the days of a sentence, or of a cell, as a keeper does.

    Examples
    --------
    >>> in_days("The week of 2027-04-12 was over on 2027-04-24."), in_days("S-2027-04-12")
    ('The week of 12 April 2027 was over on 24 April 2027.', 'S-2027-04-12')

    """
    return A_DAY.sub(_dated, text)


def _dated(found: re.Match[str]) -> str:
    try:
        return dated(date.fromisoformat(found[0]))
    except ValueError:
        return found[0]

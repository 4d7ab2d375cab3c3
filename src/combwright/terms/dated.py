"""A day as a keeper writes it."""

from datetime import date


def dated(day: date) -> str:
    """Write a day with its year, the same on every machine.

    Examples
    --------
    >>> dated(date(2027, 3, 6))
    '6 March 2027'

    """
    return f"{day.day} {day:%B} {day.year}"

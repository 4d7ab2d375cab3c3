"""Lot codes, dates of minimum durability, and how long papers of a lot are kept."""

import calendar
from datetime import date
from typing import Final

from combwright.terms.data_files import contents
from combwright.terms.dates import years_later

LAST_MONTH, DAYS_OF_IT = 12, 31
KEPT: Final = contents("science/label_law")["kept"]


def lot_code(filled: date, run: int) -> str:
    """Give the code of a run of jars: L, year, day of the year, and which run of that day.

    “L” before a lot is what Directive 2011/91/EU, article 3, asks for (read); the rest is ours.

    Examples
    --------
    >>> lot_code(date(2026, 7, 14), 1)
    'L26195-1'

    """
    return f"L{filled:%y%j}-{run}"


def best_before_words(last: date, shows: str) -> str:
    """Write a date of minimum durability: with its day, or as the end of a month or year.

    References
    ----------
    .. [1] Regulation (EU) 1169/2011, annex X, as quoted; read second-hand.

    Examples
    --------
    >>> best_before_words(date(2028, 7, 14), "day"), best_before_words(date(2028, 7, 1), "year")
    ('Best before 14 July 2028', 'Best before end 2028')

    """
    if shows == "day":
        return f"Best before {last.day} {last:%B %Y}"
    return f"Best before end {last:%Y}" if shows == "year" else f"Best before end {last:%B %Y}"


def last_day(best_before: date, shows: str) -> date:
    """Give the last day that a label promises.

    Examples
    --------
    >>> str(last_day(date(2028, 2, 3), "month")), str(last_day(date(2028, 2, 3), "year"))
    ('2028-02-29', '2028-12-31')

    """
    if shows == "year":
        return best_before.replace(month=LAST_MONTH, day=DAYS_OF_IT)
    if shows == "month":
        return best_before.replace(day=calendar.monthrange(best_before.year, best_before.month)[1])
    return best_before


def papers_kept_until(sold: date, durable_until: date) -> date:
    """Give the first day on which the papers of a lot may go: a safe choice, not one law's.

    Examples
    --------
    >>> str(papers_kept_until(date(2026, 9, 1), date(2028, 12, 31)))
    '2031-09-01'

    """
    return max(
        years_later(sold, KEPT["years_after_sale"]),
        years_later(durable_until, KEPT["years_after_best_before"]),
    )

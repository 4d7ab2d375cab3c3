"""Days counted in years."""

from datetime import date


def years_later(day: date, years: int) -> date:
    """Give the same day some years later; 1 March for a 29 February that is not there.

    Examples
    --------
    >>> str(years_later(date(2024, 2, 29), 5))
    '2029-03-01'

    """
    try:
        return day.replace(year=day.year + years)
    except ValueError:
        return date(day.year + years, 3, 1)

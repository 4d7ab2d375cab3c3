"""When so many nucs can be promised from cells that were all given on one day."""

from combwright.science.queens.cells_needed import chance_of_at_least
from combwright.science.queens.first_egg import ready_by

LONGEST_DAYS = 120


def promise_day(wanted: int, cells: int, success: float, chance: float = 0.9) -> int | None:
    """Fewest days from the giving of the cells after which so many are ready with that chance.

    ``None`` where so few cells are never enough. Fit weather from the usual age on is taken for
    granted, and that the nucs do not share their luck.

    Examples
    --------
    >>> promise_day(10, 20, 0.70), promise_day(10, 24, 0.70), promise_day(10, 17, 0.70)
    (41, 38, None)

    """
    for days in range(LONGEST_DAYS):
        if chance_of_at_least(wanted, cells, float(ready_by(days, success))) >= chance:
            return days
    return None

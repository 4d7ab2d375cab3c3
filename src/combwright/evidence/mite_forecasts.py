"""What the calculator of mites to come says, as a publication would put it."""

from datetime import date
from math import log

from combwright.science.mites.intervals import Estimate
from combwright.science.mites.samples import mites_from_sample
from combwright.science.mites.season_ahead import expected
from combwright.terms.parameters import Parameter

ONE = Estimate(1.0, 1.0, 1.0)


def fold(first: date, days: int) -> float:
    """Mites after some days for each on the first, the middle of what is expected.

    Examples
    --------
    >>> round(fold(date(2026, 6, 1), 30), 2)
    1.91

    """
    return expected(ONE, first, days).mid


def months_to_fold(first: date, times: float) -> float:
    """Months until there are so many times as many mites.

    Examples
    --------
    >>> round(months_to_fold(date(2026, 5, 1), 2.0), 1)
    1.1

    """
    return next(days for days in range(366) if log(fold(first, days)) >= log(times)) / 30.4


def in_colony(mites: int, bees: int, bees_in_colony: float) -> float:
    """Mites in a colony with brood from a washed sample, the middle of the estimate.

    Examples
    --------
    >>> round(in_colony(9, 300, 30_000.0))
    1800

    """
    known = Parameter(bees_in_colony, "bees", bees_in_colony, bees_in_colony, "counted", "read")
    return mites_from_sample(mites, bees, known, brood=True).mid

"""From the mites fallen on a tray to the mites in the colony."""

from math import exp, hypot, log
from typing import Literal

from combwright.science.mites.intervals import Estimate, poisson_interval
from combwright.science.mites.natural_fall import mites_per_fallen
from combwright.science.mites.usual_colony import usual_bees, usual_brood, usual_drone_share
from combwright.terms.data_files import parameter
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

BroodState = Literal["brood", "no brood", "not known"]

WITH_BROOD = parameter("science/mites", "range_with_brood")
WITHOUT_BROOD = parameter("science/mites", "range_without_brood")
WINTER_PATCH = parameter("science/mites", "winter_patch")
SURE_OF_BROOD = parameter("science/mites", "sure_of_brood")
_EVEN_CHANCE_OF_NOTHING = log(2)  # the mean count at which nothing is as likely as something
SUMMER_MONTHS = (5, 6, 7, 8)
WINTER_MONTHS = (11, 12, 1, 2)


def fall_multiplier(month: int, brood: BroodState = "not known") -> Parameter:
    """Mites in the colony for each mite that falls in a day. [mites per mite fallen a day].

    What falls follows the bees that emerge: the middle is that of a usual colony's bees and brood
    in the middle of the month, by ``mites_per_fallen``, as the simulated colonies have it.

    ``brood``: whether the colony has brood; if not known, the month stands for it, and in months of
    little brood the range reaches from colonies with it to colonies without.

    References
    ----------
    .. [1] S. J. Martin, Ecol. Modelling 109:267-281, 1998 (the ranges; from memory).
    .. [2] UK National Bee Unit, "Managing Varroa": 30, 100 or 400 by season (from memory).

    Examples
    --------
    >>> [round(fall_multiplier(month).value) for month in (4, 8, 10, 12)]
    [24, 30, 149, 400]

    """
    usual = usual_brood(month)
    cells = {"no brood": 0.0, "brood": max(usual, WINTER_PATCH.value), "not known": usual}[brood]
    middle = mites_per_fallen(cells, usual_bees(month).value, usual_drone_share(month))
    low, high = (middle * end / WITH_BROOD.value for end in (WITH_BROOD.low, WITH_BROOD.high))
    if brood == "no brood" or (brood == "not known" and usual < SURE_OF_BROOD.value):
        low, high = min(low, WITHOUT_BROOD.low), WITHOUT_BROOD.high
    source = f"a colony in balance with {cells:.0f} cells of brood; range: {WITH_BROOD.source}"
    return Parameter(middle, WITH_BROOD.unit, low, high, source, "computed")


def mites_from_fall(
    fallen: int, days: float, month: int, brood: BroodState = "not known"
) -> Estimate:
    r"""Mites in the colony from the natural fall on a tray.

    .. math:: M = k\, n / t

    Its range joins that of the multiplier :math:`k` and the 95 % interval of the count, taken as
    independent, on a logarithmic scale.

    ``fallen``: mites on the tray :math:`n` [mites]. ``days``: days the tray was in :math:`t`
    [days].

    References
    ----------
    .. [1] See ``fall_multiplier``. Measured for comparison: 27 in K. S. Delaplane and
       W. M. Hood, J. Apic. Res. 36:125-132, 1997 (abstract read, the ratio computed).

    Examples
    --------
    >>> round(mites_from_fall(33, 1, month=8).mid, -1)
    990.0

    """
    time = float(
        within(days, 0.25, 60, "Days of the tray", "days", remedy="Count over 1 to 7 days.")
    )
    multiplier = fall_multiplier(month, brood)
    counted = poisson_interval(int(within(fallen, 0, 50_000, "Mites fallen", "mites")))
    return joined_range(counted, multiplier.value / time, [multiplier])


def joined_range(counted: Estimate, scale: float, factors: list[Parameter]) -> Estimate:
    """Join the range of a count with those of the factors it is multiplied by.

    The ranges are taken as independent: their logarithms add as squares.

    It starts at 0 if nothing was counted.

    References
    ----------
    .. [1] Propagation of errors (computed); that the ranges are independent is a judgement.

    Examples
    --------
    >>> joined_range(poisson_interval(0), 30.0, []).low
    0.0

    """
    top = [log(factor.high / factor.value) for factor in factors]
    likely = counted.mid or _EVEN_CHANCE_OF_NOTHING
    high = likely * scale * exp(hypot(*top, log(counted.high / likely)))
    if counted.mid == 0:
        return Estimate(0.0, 0.0, high)
    bottom = [log(factor.value / factor.low) for factor in factors]
    mid = counted.mid * scale
    return Estimate(mid * exp(-hypot(*bottom, log(counted.mid / counted.low))), mid, high)

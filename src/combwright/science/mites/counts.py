"""From the mites fallen on a tray to the mites in the colony."""

from math import exp, hypot, log
from typing import Literal

from combwright.science.mites.intervals import Estimate, poisson_interval
from combwright.terms.data_files import parameter
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

BroodState = Literal["brood", "no brood", "not known"]

_NBU = "UK National Bee Unit, Managing Varroa: 30 / 100 / 400 by season"
_MARTIN = "Martin 1998, Ecol. Modelling 109:267-281: 20-40 with brood, 100-500 without"
WITH_BROOD = parameter("science/mites", "with_brood")
WITHOUT_BROOD = parameter("science/mites", "without_brood")
SPRING_AND_AUTUMN = parameter("science/mites", "spring_and_autumn")
WINTER = parameter("science/mites", "winter")
_EVEN_CHANCE_OF_NOTHING = log(2)  # the mean count at which nothing is as likely as something
SUMMER_MONTHS = (5, 6, 7, 8)
WINTER_MONTHS = (11, 12, 1, 2)


def fall_multiplier(month: int, brood: BroodState = "not known") -> Parameter:
    """Mites in the colony for each mite that falls in a day. [mites per mite fallen a day].

    ``brood``: whether the colony has brood; if not known, the season stands for it.

    Notes
    -----
    With brood outside May to August the range is stretched to the value that the UK leaflet gives
    for the season, and for a winter patch of brood the middle is the leaflet's spring value.

    References
    ----------
    .. [1] S. J. Martin, Ecol. Modelling 109:267-281, 1998 (from memory).
    .. [2] UK National Bee Unit, "Managing Varroa" (from memory).

    Examples
    --------
    >>> [fall_multiplier(month).value for month in (8, 9, 12)]
    [30.0, 100.0, 400.0]

    """
    number = int(within(month, 1, 12, "The month", remedy="1 is January and 12 December."))
    if number in SUMMER_MONTHS:
        return WITHOUT_BROOD if brood == "no brood" else WITH_BROOD
    season = WINTER if number in WINTER_MONTHS else SPRING_AND_AUTUMN
    if brood == "no brood":
        source = season if season is WINTER else WITHOUT_BROOD
        return Parameter(source.value, source.unit, 100.0, 500.0, source.source, "from memory")
    if brood == "not known":
        return season
    middle = SPRING_AND_AUTUMN.value if season is WINTER else WITH_BROOD.value
    both = f"{_MARTIN}; {_NBU}"
    return Parameter(middle, season.unit, WITH_BROOD.low, season.value, both, "from memory")


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
    >>> round(mites_from_fall(33, 1, month=8).mid)
    990

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

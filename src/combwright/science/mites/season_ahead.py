"""Mites to expect on later days when nothing is done, month by month."""

from collections.abc import Mapping
from datetime import date, timedelta

import numpy as np

from combwright.science.mites.counts import SUMMER_MONTHS, WINTER_MONTHS, BroodState
from combwright.science.mites.intervals import Estimate
from combwright.terms.data_files import parameter
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

GROWTH_WITH_BROOD = parameter("science/mites", "growth_with_brood")
DEATH_BROODLESS = parameter("science/mites", "death_broodless")
GROWTH_IN_SHORT_SEASON = parameter("science/mites", "growth_in_short_season")
NO_GROWTH_AFTER_BROODLESS_DAYS = 21
ARRIVING_FROM_FEW = parameter("science/mites", "arriving_from_few")
ARRIVING_FROM_MANY = parameter("science/mites", "arriving_from_many")
# Mites that may come in from other colonies, in the upper bound only.
ARRIVALS: Mapping[int, float] = {
    **dict.fromkeys((6, 7), ARRIVING_FROM_FEW.high),
    **dict.fromkeys((8, 9, 10), ARRIVING_FROM_MANY.high),
}


def growth_in(month: int) -> Parameter:
    """Growth of mites in a month, per day.

    Negative in winter.

    References
    ----------
    .. [1] See ``GROWTH_WITH_BROOD`` and ``DEATH_BROODLESS``; that March and October
       have half the growth is a judgement.

    Examples
    --------
    >>> growth_in(6).value, growth_in(12).value
    (0.0215, -0.002)

    """
    number = int(within(month, 1, 12, "The month"))
    if number in WINTER_MONTHS:
        death = DEATH_BROODLESS
        return Parameter(
            -death.value, death.unit, -death.high, -death.low, death.source, death.verified
        )
    long_season = (4, *SUMMER_MONTHS, 9)
    return GROWTH_WITH_BROOD if number in long_season else GROWTH_IN_SHORT_SEASON


def expected(now: Estimate, first: date, days: int, brood: BroodState = "not known") -> Estimate:
    r"""Mites after some days without treatment.

    .. math:: M_{t+1} = M_t e^{r(t)} + i(t)

    The middle has no mites coming from other colonies; the upper end has what was measured where
    many colonies stand.

    ``brood``: whether the colony has brood; without it mites do not grow for three weeks.

    References
    ----------
    .. [1] See ``growth_in``; arrivals: Frey and Rosenkranz 2014 (abstract read).

    Examples
    --------
    >>> round(expected(Estimate(50, 100, 200), date(2026, 6, 1), 30).mid)
    191

    """
    within(days, 0, 366, "The days ahead", "days")
    mites = np.array([now.low, now.mid, now.high])
    for day in range(days):
        month = (first + timedelta(days=day)).month
        rate = growth_in(month)
        rates = np.array([rate.low, rate.value, rate.high])
        if brood == "no brood" and day < NO_GROWTH_AFTER_BROODLESS_DAYS:
            rates = np.minimum(rates, -DEATH_BROODLESS.value)
        mites = mites * np.exp(rates)
        mites[2] += ARRIVALS.get(month, 0.0)
    return Estimate(*(float(each) for each in mites))

"""How mite numbers change over weeks: growth, winter loss, return after a kill."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Floats = NDArray[np.float64]

GROWTH_WITH_BROOD = Parameter(
    0.0215,
    "per day",
    0.017,
    0.027,
    "UK leaflet 2005 (second-hand), Finland 1992, Martin 1998 (0.021-0.025, from memory)",
    "computed",
)
DEATH_BROODLESS = Parameter(
    0.002, "per day", 0.002, 0.0034, "Fries 1994; Korpela 1992 gives 0.0024-0.0034", "from memory"
)

LEVEL = 1e-12
"""Growth so small that the arrivals sum to their time, to a part in 10^12. [1]"""


def grown(
    mites: ArrayLike, rate: ArrayLike, days: ArrayLike, arriving_per_day: ArrayLike = 0.0
) -> Floats:
    r"""Mites after some days of growth and re-invasion.

    .. math:: M(t) = M_0 e^{rt} + i\,\frac{e^{rt} - 1}{r}

    Parameters
    ----------
    mites
        Mites now :math:`M_0`. [mites]
    rate
        Growth :math:`r`, negative in a broodless colony. [per day]
    days
        Time. [days]
    arriving_per_day
        Mites :math:`i` that come in from other colonies. [mites/day]

    Returns
    -------
    Floats
        Mites then. [mites]

    References
    ----------
    .. [1] Exponential growth in brood season: Martin, Ecol. Modelling 109:267-281, 1998 (from
       memory); the sum with arrivals is computed.

    Examples
    --------
    >>> float(grown(100, 0.0215, 90).round(-1))
    690.0

    """
    start = within(mites, 0, 1e7, "The number of mites", "mites")
    r = within(rate, -1, 1, "The growth rate", "per day", remedy="Give 2 % a day as 0.02.")
    t = within(days, 0, 400, "The time", "days")
    coming = within(arriving_per_day, 0, 1000, "Mites arriving", "a day")
    level = np.abs(r * t) < LEVEL
    summed = np.where(level, t, np.expm1(r * t) / np.where(level, 1.0, r))
    return np.asarray(start * np.exp(r * t) + coming * summed)


def days_to(start: float, target: float, rate: float) -> float:
    r"""Days until a number of mites is reached.

    .. math:: t = \ln(M / M_0) / r

    Parameters
    ----------
    start, target
        Mites now and then, or both per 100 bees. [mites]
    rate
        Growth. [per day]

    Returns
    -------
    float
        Time; 0 if the number is reached already. [days]

    References
    ----------
    .. [1] Exponential growth, see ``grown`` (computed).

    Examples
    --------
    >>> round(days_to(1, 2, 0.021)), round(days_to(1, 12, 0.021))
    (33, 118)

    """
    now = float(within(start, 1e-6, 1e7, "Mites now", "mites"))
    then = float(within(target, 1e-6, 1e7, "Mites then", "mites"))
    r = float(within(rate, 1e-5, 1, "The growth rate", "per day"))
    return max(0.0, float(np.log(then / now)) / r)


def doubling_days(rate: float) -> float:
    """Days in which mites double.

    Parameters
    ----------
    rate
        Growth. [per day]

    Returns
    -------
    float
        Time. [days]

    References
    ----------
    .. [1] Exponential growth, see ``grown`` (computed).

    Examples
    --------
    >>> round(doubling_days(0.021))
    33

    """
    return days_to(1, 2, rate)


def days_back(kill_share: float, rate: float = GROWTH_WITH_BROOD.value) -> float:
    r"""Days until mites are back at the number before a treatment, without re-invasion.

    .. math:: t = -\ln(1 - k) / r

    Parameters
    ----------
    kill_share
        Share killed :math:`k`, below 1. [-]
    rate
        Growth. [per day]

    Returns
    -------
    float
        Time. [days]

    References
    ----------
    .. [1] Exponential growth, see ``grown``; a UK government leaflet of 2005 says that an 80 %
       kill is back in 2.5 months (read second-hand).

    Examples
    --------
    >>> round(days_back(0.80))
    75

    """
    killed = float(within(kill_share, 0, 0.99999, "The share killed", remedy="Give 80 % as 0.8."))
    return days_to(1 - killed, 1, rate)


def rate_from_fold(fold: float, days: float) -> float:
    r"""Growth rate from how many times the mites became more.

    .. math:: r = \ln(fold) / t

    Parameters
    ----------
    fold
        Mites then over mites now. [-]
    days
        Time between. [days]

    Returns
    -------
    float
        Growth. [per day]

    References
    ----------
    .. [1] Exponential growth, see ``grown`` (computed).

    Examples
    --------
    >>> round(rate_from_fold(5, 75), 4)
    0.0215

    """
    times = within(fold, 1e-6, 1e6, "The fold")
    return float(np.log(times) / within(days, 0.5, 1000, "The time", "days"))


def year_fold(
    brood_days: float,
    broodless_days: float,
    rate: float = GROWTH_WITH_BROOD.value,
    death: float = DEATH_BROODLESS.value,
) -> float:
    r"""Mites in a year's time for each one now.

    .. math:: e^{r T_{brood} - d\, T_{broodless}}

    Parameters
    ----------
    brood_days, broodless_days
        Lengths of the two seasons. [days]
    rate
        Growth with brood. [per day]
    death
        Death without brood. [per day]

    Returns
    -------
    float
        Growth in a year. [-]

    References
    ----------
    .. [1] Compare S. Korpela et al., J. Apic. Res. 31:157-164, 1992 (abstract read): 8.2 to 24.6
       times a year in Finland, with a brood season under 5 months.

    Examples
    --------
    >>> round(year_fold(140, 225))
    13

    """
    with_brood = within(brood_days, 0, 366, "Days with brood", "days")
    without = within(broodless_days, 0, 366, "Days without brood", "days")
    return float(np.exp(rate * with_brood - death * without))


def winter_loss(broodless_days: float, death: float = DEATH_BROODLESS.value) -> float:
    r"""Share of the mites lost while there is no brood.

    .. math:: 1 - e^{-d T}

    Parameters
    ----------
    broodless_days
        Length of the broodless time :math:`T`. [days]
    death
        Death :math:`d` of mites on bees. [per day]

    Returns
    -------
    float
        Share, 0 to 1.

    References
    ----------
    .. [1] Compare Korpela et al. 1992 (abstract read): 39.8 % in a winter of 150 to 210 days.

    Examples
    --------
    >>> round(winter_loss(210), 2)
    0.34

    """
    return 1 - year_fold(0, broodless_days, death=death)

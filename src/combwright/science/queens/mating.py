"""Weather for mating flights, and the chance that a virgin gets enough of it."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

NO_FLIGHT_BELOW_C = Parameter(
    16.0, "°C", 15.0, 18.0, "ramp of our own: a hard 20 °C is too strict for Ireland", "judgement"
)
FULL_FLIGHT_ABOVE_C = Parameter(
    20.0, "°C", 18.0, 20.0, "COLOSS BEEBOOK behaviour chapter 13.2: above 20 °C", "read"
)
DRY_BELOW_MM = Parameter(1.0, "mm/day", 0.2, 1.0, "weather sheet, section 9", "judgement")
FIRST_FLIGHT_AGE = Parameter(
    6.0, "days since emergence", 5.0, 7.0, "popular pages agree on 5-6 days", "from memory"
)
LAST_FLIGHT_AGE = Parameter(
    24.0, "days since emergence", 20.0, 28.0, "limit near 21-28 days", "from memory"
)
FLIGHT_DAYS_NEEDED = Parameter(
    1.0, "days", 1.0, 2.0, "weather sheet, section 9: one or two", "judgement"
)
LOST_WHATEVER_THE_WEATHER = Parameter(
    0.12, "share of virgins", 0.10, 0.15, "birds, drift: weather sheet, section 9", "judgement"
)


def flight_chance(
    temperature_c: ArrayLike,
    rain_mm: ArrayLike = 0.0,
    sun: ArrayLike = 1.0,
    calm: ArrayLike = 1.0,
) -> NDArray[np.float64]:
    r"""Chance that a virgin can make a mating flight on a day.

    .. math:: p = \mathrm{clip}\bigl((T - 16)/4,\, 0,\, 1\bigr)\; s_{sun}\, s_{wind}\, [rain < 1]

    Parameters
    ----------
    temperature_c
        Air temperature in the early afternoon, about 14 h. [°C]
    rain_mm
        Rain of the day. [mm]
    sun, calm
        Factors for sunshine and for lack of wind, 0 to 1.

    Returns
    -------
    NDArray[np.float64]
        Chance, 0 to 1.

    Notes
    -----
    No mating curve has been published. The ramp is an assumption of ours, between the trade's
    16-18 °C for local strains and the 20 °C of [1]_.

    References
    ----------
    .. [1] COLOSS BEEBOOK, behaviour chapter, section 13.2 (read): above 20 °C, some blue sky,
       little wind.

    Examples
    --------
    >>> flight_chance([15, 18, 22], rain_mm=0).tolist()
    [0.0, 0.5, 1.0]

    """
    t = within(temperature_c, -60, 55, "The temperature", "°C", remedy="Is it in Fahrenheit?")
    width = FULL_FLIGHT_ABOVE_C.value - NO_FLIGHT_BELOW_C.value
    warm = np.clip((t - NO_FLIGHT_BELOW_C.value) / width, 0, 1)
    dry = within(rain_mm, 0, 1000, "The rain", "mm") < DRY_BELOW_MM.value
    factors = within(sun, 0, 1, "The sun factor") * within(calm, 0, 1, "The calm factor")
    return np.asarray(warm * dry * factors)


def mated_chance(
    daily_chances: ArrayLike,
    days_needed: int = int(FLIGHT_DAYS_NEEDED.value),
    lost: float = LOST_WHATEVER_THE_WEATHER.value,
) -> float:
    r"""Chance that a virgin finds enough flight days in a window, and comes home.

    The number of flight days is a sum of unlike independent chances (Poisson binomial); its
    distribution is built up day by day.

    Parameters
    ----------
    daily_chances
        Chance of a flight on each day of the window, normally her days 6 to 24. [-]
    days_needed
        Flight days needed. [days]
    lost
        Share lost whatever the weather. [-]

    Returns
    -------
    float
        Chance, 0 to 1.

    Notes
    -----
    Fine days come in spells. With chances from forecasts or from simulated weather that is
    already in the numbers; with a climate's mean chance it is not, and the result is too
    hopeful (see the evidence, topic queens).

    References
    ----------
    .. [1] Weather sheet, section 9: a proposal, not a published model (judgement).

    Examples
    --------
    >>> round(mated_chance([0.5, 0.5], days_needed=1, lost=0.0), 2)
    0.75

    """
    chances = within(daily_chances, 0, 1, "A daily chance", remedy="Give 40 % as 0.4.").ravel()
    needed = int(within(days_needed, 1, 30, "Flight days needed", "days"))
    away = float(within(lost, 0, 1, "The share lost"))
    flights = np.zeros(needed + 1)
    flights[0] = 1.0
    for chance in chances:
        moved = flights * chance
        flights -= moved
        flights[1:] += moved[:-1]
        flights[-1] += moved[-1]
    return float(flights[-1]) * (1 - away)


def no_flight_chance(flight_days_in_month: float, days_in_month: int, window_days: int) -> float:
    """Chance that a window holds no fit day, if every day's luck were its own.

    Parameters
    ----------
    flight_days_in_month
        Mean number of fit days in the month. [days]
    days_in_month
        Days in the month. [days]
    window_days
        Length of the window. [days]

    Returns
    -------
    float
        Chance, 0 to 1; too low, because fine days come in spells.

    References
    ----------
    .. [1] Independent days; compared with counts of station weather 1991-2020 in the evidence
       (computed).

    Examples
    --------
    >>> round(no_flight_chance(1.40, 31, 14), 2)
    0.52

    """
    days = float(within(days_in_month, 28, 31, "Days in the month", "days"))
    share = float(within(flight_days_in_month, 0, days, "Fit days in the month", "days")) / days
    return 1 - mated_chance(np.full(window_days, share), days_needed=1, lost=0.0)

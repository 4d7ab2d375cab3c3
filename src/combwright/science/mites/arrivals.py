"""Mites that come in from other colonies, with robbing and drifting bees."""

from collections.abc import Mapping
from typing import Literal

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Pressure = Literal["low", "moderate", "heavy"]

REINVASION: Mapping[Pressure, Parameter] = {
    "low": Parameter(
        1.5, "mites/day", 0.7, 2.4, "Frey & Rosenkranz 2014, low density of colonies", "read"
    ),
    "moderate": Parameter(6.8, "mites/day", 2.5, 11.2, "Frey & Rosenkranz 2014, high", "read"),
    "heavy": Parameter(
        30.0, "mites/day", 11.2, 75.6, "Greatti et al. 1992, Sep-Oct, up to 75.6", "read"
    ),
}


def arriving_per_day(mites: float, days: float) -> float:
    """Mites that came in from other colonies, per day.

    Parameters
    ----------
    mites
        Mites that arrived. [mites]
    days
        In so many days. [days]

    Returns
    -------
    float
        Mites a day. [mites/day]

    References
    ----------
    .. [1] Compare E. Frey and P. Rosenkranz, J. Econ. Entomol. 107:508-515, 2014,
       doi:10.1603/EC13381 (abstract read): 266-1171 mites in 3.5 months.

    Examples
    --------
    >>> round(arriving_per_day(1171, 105), 1)
    11.2

    """
    return float(
        within(mites, 0, 1e6, "Mites that arrived", "mites") / within(days, 1, 366, "Days", "days")
    )

"""The published laying season of a Central-European colony."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

PEAK_EGGS = Parameter(
    1600.0,
    "eggs/day",
    1500.0,
    2000.0,
    "Schmickl & Crailsheim 2007, as in the program of Torres; FAO gives 1500-2000",
    "read",
)


def resting(day_of_year: ArrayLike) -> NDArray[np.float64]:
    r"""Share of the laying rate that the season takes away.

    .. math::
       s(t) = \max\Bigl(1 - \frac{1}{1 + 385 e^{-2t/30}},\;
                        \frac{1}{1 + 36 e^{-2(t-155)/30}}\Bigr)

    Parameters
    ----------
    day_of_year
        Day :math:`t`, 1 on 1 January. [day]

    Returns
    -------
    NDArray[np.float64]
        0 when nothing holds the queen back, 1 when she rests.

    References
    ----------
    .. [1] T. Schmickl and K. Crailsheim, Ecol. Modelling 204:219-245, 2007,
       doi:10.1016/j.ecolmodel.2007.01.001 (constants read second-hand in the program of
       R. Torres; that laying is one less this share is from memory).

    Examples
    --------
    >>> float(resting(149).round(3))
    0.018

    """
    t = within(day_of_year, 0, 366, "The day of the year")
    spring = 1 - 1 / (1 + 385 * np.exp(-2 * t / 30))
    autumn = 1 / (1 + 36 * np.exp(-2 * (t - 155) / 30))
    return np.asarray(np.maximum(spring, autumn))


def eggs_per_day(day_of_year: ArrayLike, peak: float = PEAK_EGGS.value) -> NDArray[np.float64]:
    """Eggs laid on a day of the year when room and food are no limit.

    Parameters
    ----------
    day_of_year
        1 on 1 January. [day]
    peak
        Laying rate without any limit of season. [eggs/day]

    Returns
    -------
    NDArray[np.float64]
        Laying rate. [eggs/day]

    References
    ----------
    .. [1] Schmickl and Crailsheim 2007; see ``resting``.

    Examples
    --------
    >>> int(eggs_per_day(149).round())
    1571

    """
    return within(peak, 0, 4000, "The peak laying rate", "eggs a day") * (1 - resting(day_of_year))


def eggs_in_year(peak: float = PEAK_EGGS.value) -> float:
    """Eggs laid in a year of 365 days.

    Parameters
    ----------
    peak
        Laying rate without any limit of season. [eggs/day]

    Returns
    -------
    float
        Sum over the days of the year. [eggs]

    References
    ----------
    .. [1] Schmickl and Crailsheim 2007; see ``resting``. The sum is computed.

    Examples
    --------
    >>> round(eggs_in_year(), -2)
    191900.0

    """
    return float(eggs_per_day(np.arange(1, 366), peak).sum())


def peak_day() -> int:
    """Day of the year on which most eggs are laid.

    Returns
    -------
    int
        1 on 1 January.

    References
    ----------
    .. [1] Schmickl and Crailsheim 2007; see ``resting``. The maximum is computed.

    Examples
    --------
    >>> peak_day()
    149

    """
    return int(np.argmin(resting(np.arange(1, 366)))) + 1

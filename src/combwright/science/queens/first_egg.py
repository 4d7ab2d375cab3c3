"""How long a young queen takes from her first flight to her first egg, and to a sale."""

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import ndtr

from combwright.science.queens.queen_clock import CLOCK
from combwright.terms.data_files import parameter
from combwright.terms.ranges import within

FIRST_EGG_MEAN = parameter("science/queens", "first_egg_mean")
FIRST_EGG_MODE = parameter("science/queens", "first_egg_mode")
LAYS_BEFORE_SALE = parameter("science/queens", "lays_before_sale")
RIPE_BEFORE = parameter("science/queens", "ripe_before")
LEAST_DAYS = 1e-9  # so that day 0 has a logarithm

# The mean of a lognormal is exp(mu + s²/2), its mode exp(mu - s²).
SPREAD = float(np.sqrt(np.log(FIRST_EGG_MEAN.value / FIRST_EGG_MODE.value) / 1.5))
LOG_MIDDLE = float(np.log(FIRST_EGG_MEAN.value) - SPREAD**2 / 2)
FLIES_AT = CLOCK["flies to mate"].value - CLOCK["emerges"].value


def lays_by(days_since_first_flight: ArrayLike) -> NDArray[np.float64]:
    r"""Share of the queens that will lay which do so by then.

    .. math:: F(d) = \Phi\bigl((\ln d - \mu)/\sigma\bigr), \quad
              \sigma^2 = \ln(\bar d / \hat d)/1.5, \quad \mu = \ln \bar d - \sigma^2/2

    with the mean and the mode of the days from the first flight to the first egg.

    References
    ----------
    .. [1] J. Woyke et al., J. Apic. Res. 47(1), 1-9, 2008, doi:10.3896/IBRA.1.47.1.01: mean 6.8,
       mode 4, range 2 to 23 days, lognormal (read).

    Examples
    --------
    >>> lays_by([5.70, 12.21]).round(2).tolist()
    [0.5, 0.9]

    """
    days = within(days_since_first_flight, -1000, 1000, "The days since the first flight")
    return np.asarray(ndtr((np.log(np.maximum(days, LEAST_DAYS)) - LOG_MIDDLE) / SPREAD))


def mean_first_egg(flies_at: float = FLIES_AT) -> float:
    """Mean age of a queen at her first egg, by the age at which she first flies. [days].

    Examples
    --------
    >>> [round(mean_first_egg(flies_at), 1) for flies_at in (5, 7)]
    [11.8, 13.8]

    """
    return flies_at + FIRST_EGG_MEAN.value


def ready_by(days: ArrayLike, success: ArrayLike, waits: ArrayLike = 0.0) -> NDArray[np.float64]:
    """Share of nucs given a ripe cell on day 0 whose queen has laid long enough for a sale.

    ``success``: share that will lay at all. ``waits``: days of shut-in weather added to the age at
    which she flies.

    Examples
    --------
    >>> ready_by([33, 40, 49], 0.70).round(4).tolist()
    [0.1646, 0.5989, 0.6871]

    """
    before = RIPE_BEFORE.value + FLIES_AT + LAYS_BEFORE_SALE.value
    flown = np.asarray(days, np.float64) - before - np.asarray(waits, np.float64)
    return np.asarray(within(success, 0, 1, "The share that lays") * lays_by(flown))

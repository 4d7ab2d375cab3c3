"""How many ripe cells become laying queens, by the date and by the weather they get."""

from datetime import date

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.data_files import parameter, parameters
from combwright.terms.ranges import within

LAYS_IN_NUCS = parameter("science/queens", "lays_in_nucs")
LOST_IN_MATING = parameter("science/queens", "lost_in_mating")
PER_FIT_DAY = parameter("science/queens", "per_fit_day")
NO_DRONE_LAYER = parameter("science/queens", "no_drone_layer")
ACCEPTED = parameter("science/queens", "accepted")
SEALED_WELL = parameter("science/queens", "sealed_well")
PRIOR_WEIGHT = parameter("science/queens", "prior_weight")
SHOCK = parameter("science/queens", "batch_shock")
BY_DATE = parameters("science/queens", "lays_from_cell")
NUMBERS_OF = {name: tuple(map(int, name.split("-"))) for name in BY_DATE}


def before_and_in_mating(lays: float, lost_in_mating: float) -> tuple[float, float]:
    r"""Split the share of ripe cells that come to lay at the first flight.

    .. math:: a = 1 - (1 - s)(1 - m), \quad b = s / a

    ``lays``: share of ripe cells that become laying queens, s. ``lost_in_mating``: share of the
    losses that falls in mating, m. Gives the share alive to fly and, of those, the share that lays.

    References
    ----------
    .. [1] J. Pérez-Sato, F. Ratnieks, Apidologie 37, 571-576, 2006, doi:10.1051/apido:2006036:
       70 % of cells, one third of the losses in mating (read).

    Examples
    --------
    >>> [round(share, 6) for share in before_and_in_mating(0.70, 1 / 3)]
    [0.8, 0.875]

    """
    lost = 1.0 - float(within(lays, 0, 1, "The share that lays"))
    alive = 1.0 - lost * (1.0 - float(within(lost_in_mating, 0, 1, "The share lost in mating")))
    return alive, (1.0 - lost) / alive if alive else 0.0


ALIVE, _ = before_and_in_mating(LAYS_IN_NUCS.value, LOST_IN_MATING.value)  # 0.80 alive to fly


def laying_share(fit_days: ArrayLike) -> NDArray[np.float64]:
    r"""Share of ripe cells that become laying queens, by the fit days that the virgins get.

    .. math:: P = 0.80\,\bigl(1 - e^{-0.9 D}\bigr)\,0.95

    ``fit_days``: sum of the chances of a flight from age 5 to 21 days. The first factor is what is
    lost before she flies, the last what turns out a drone layer.

    References
    ----------
    .. [1] J. Pérez-Sato, F. Ratnieks, Apidologie 37, 571-576, 2006, doi:10.1051/apido:2006036:
       70 % of cells, two thirds of the losses before mating (read). 0.9 a day is judgement.

    Examples
    --------
    >>> laying_share([0, 1, 3]).round(2).tolist()
    [0.0, 0.45, 0.71]

    """
    days = within(fit_days, 0, 60, "The fit days")
    mates = 1.0 - np.exp(-PER_FIT_DAY.value * days)
    return np.asarray(ALIVE * mates * NO_DRONE_LAYER.value)


def usual_share(given: date) -> float:
    """Share of ripe cells given on a day that become laying queens, as a rule.

    Between the dates of the table in a straight line (judgement from the counts of several
    keepers).

    Examples
    --------
    >>> usual_share(date(2027, 6, 15)), usual_share(date(2027, 7, 15))
    (0.65, 0.7)

    """
    at = [date(given.year, *NUMBERS_OF[name]).toordinal() for name in BY_DATE]
    shares = [each.value for each in BY_DATE.values()]
    return round(float(np.interp(given.toordinal(), at, shares)), 6)


def own_factor(cells: ArrayLike, laying: ArrayLike, expected: ArrayLike) -> float:
    r"""How the keeper's own batches move the usual share.

    .. math:: r = \frac{w \bar e + \sum k'}{w \bar e + \sum n' e}, \quad
              n' = \frac{n}{1 + (n-1)\rho}

    ``cells``: cells given in each batch, ``laying``: how many became laying queens, ``expected``:
    the share that the date and the weather let expect. Cells of one batch share their luck, so
    many of them count for fewer; the usual share weighs as much as ten independent cells. With one
    expected share this is the mean of the beta distribution after the counts.

    Examples
    --------
    >>> own_factor([], [], []), round(own_factor([1], [1], [0.5]), 4)
    (1.0, 1.0909)

    """
    n, k = np.asarray(cells, np.float64), np.asarray(laying, np.float64)
    e = within(expected, 0, 1, "The expected share")
    if not n.size:
        return 1.0
    counts = 1.0 / (1.0 + (n - 1.0) * SHOCK.value)
    prior = PRIOR_WEIGHT.value * float(e.mean())
    return float((prior + (k * counts).sum()) / (prior + (n * counts * e).sum()))

"""Mites and brood: how fast they enter cells, what drone comb traps, how fast they multiply."""

from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy.special import wrightomega

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Floats = NDArray[np.float64]

_CALIS = "Calis, Fries & Ryrie 1999, Apidologie 30:111-124; implied by Boot et al. 1995 (read)"
WORKER_INVASION = Parameter(0.56, "g bees per cell", 0.55, 0.81, _CALIS, "from memory")
DRONE_INVASION = Parameter(6.49, "g bees per cell", 4.5, 6.6, _CALIS, "from memory")
# How many times as often a drone cell is entered as a worker cell.
DRONE_PREFERENCES = {
    "Boot 1995": Parameter(
        11.6, "ratio", 11.6, 11.6, "Apidologie 26:109-118, doi:10.1051/apido:19950204", "read"
    ),
    "Schulz": Parameter(8.6, "ratio", 8.6, 8.6, "in Charrière et al. 2003, Bee World 84", "read"),
    "Fuchs 1990": Parameter(8.3, "ratio", 8.3, 8.3, "in Charrière et al. 2003", "read"),
    "Rosenkranz": Parameter(6.0, "ratio", 6.0, 6.0, "in Charrière et al. 2003", "read"),
}
BEE_G = Parameter(0.125, "g", 0.11, 0.14, "about 8000 bees to the kilogram", "from memory")
SEALED_DAYS = Parameter(12.0, "days", 11.5, 12.5, "Rosenkranz et al. 2010", "from memory")
DEATH_ON_BEES = Parameter(
    0.006, "per day", 0.002, 0.010, "Fries 1994 and Martin 1998, with brood", "from memory"
)
LEAVING_PER_ENTERING = Parameter(
    1.5,
    "mites leaving a cell per mite that entered",
    1.3,
    1.7,
    "0.9 daughters (Martin & Kryger 2002, read) and 0.5-0.6 of the mothers",
    "computed",
)


def invasion_rate(worker_cells: ArrayLike, drone_cells: ArrayLike, bees_g: ArrayLike) -> Floats:
    r"""Rate at which mites on bees enter brood.

    .. math:: a = (0.56\, W + 6.49\, D) / G

    Parameters
    ----------
    worker_cells, drone_cells
        Cells sealed in a day :math:`W`, :math:`D`. [cells/day]
    bees_g
        Mass of the adult bees :math:`G`. [g]

    Returns
    -------
    Floats
        Rate per mite on bees. [per day]

    References
    ----------
    .. [1] J. N. M. Calis, I. Fries and S. C. Ryrie, Apidologie 30:111-124, 1999,
       doi:10.1051/apido:19990203 (constants from memory).
    .. [2] W. J. Boot et al., Apidologie 26:109-118, 1995, doi:10.1051/apido:19950204 (abstract
       read): 462 drone cells trap 95 % in 1 kg of bees, drone cells 11.6 times as often. Both
       constants follow from these two.

    Examples
    --------
    >>> invasion_rate([1000, 1500], [0, 50], [2500, 3000]).round(3).tolist()
    [0.224, 0.388]

    """
    workers = within(worker_cells, 0, 1e5, "Worker cells sealed", "cells")
    drones = within(drone_cells, 0, 1e5, "Drone cells sealed", "cells")
    mass = within(bees_g, 10, 20_000, "The mass of bees", "g", remedy="Give grams, not kilograms.")
    return np.asarray((WORKER_INVASION.value * workers + DRONE_INVASION.value * drones) / mass)


def drone_preference() -> float:
    """How many times as often a drone cell is entered as a worker cell.

    Returns
    -------
    float
        Ratio of the two constants of invasion; other sources give 6 to 8.6. [-]

    References
    ----------
    .. [1] Boot et al. 1995, see ``invasion_rate``; ``DRONE_PREFERENCES`` holds the others.

    Examples
    --------
    >>> round(drone_preference(), 1)
    11.6

    """
    return DRONE_INVASION.value / WORKER_INVASION.value


def drone_share(worker_cells: float, drone_cells: float) -> float:
    """Share of the entering mites that choose drone cells.

    Parameters
    ----------
    worker_cells, drone_cells
        Cells sealed in a day; not both 0. [cells/day]

    Returns
    -------
    float
        Share, 0 to 1.

    References
    ----------
    .. [1] Calis et al. 1999, see ``invasion_rate``.

    Examples
    --------
    >>> round(drone_share(1500, 50), 2)
    0.28

    """
    all_cells = float(invasion_rate(worker_cells, drone_cells, 1000))
    within(all_cells, 1e-9, np.inf, "The brood sealed")
    return float(invasion_rate(0, drone_cells, 1000)) / all_cells


def trapped_share(worker_cells: ArrayLike, drone_cells: ArrayLike, bees_g: ArrayLike) -> Floats:
    r"""Share of the mites on bees that a batch of brood takes in when it is sealed.

    .. math:: 1 - e^{-a}

    Parameters
    ----------
    worker_cells, drone_cells
        Cells of the batch. [cells]
    bees_g
        Mass of the adult bees. [g]

    Returns
    -------
    Floats
        Share, 0 to 1.

    References
    ----------
    .. [1] Boot et al. 1995, see ``invasion_rate``.

    Examples
    --------
    >>> float(trapped_share(0, 462, 1000).round(2))
    0.95

    """
    return np.asarray(-np.expm1(-invasion_rate(worker_cells, drone_cells, bees_g)))


def cells_to_trap(share: float, bees_g: float, comb: Literal["worker", "drone"] = "drone") -> float:
    """Cells that trap a share of the mites when the colony has no other brood.

    Parameters
    ----------
    share
        Share to trap, below 1. [-]
    bees_g
        Mass of the adult bees. [g]
    comb
        Worker or drone cells.

    Returns
    -------
    float
        Cells. [cells]

    References
    ----------
    .. [1] Boot et al. 1995, see ``invasion_rate``.

    Examples
    --------
    >>> round(cells_to_trap(0.95, 1000)), round(cells_to_trap(0.95, 1000, "worker"), -1)
    (462, 5350.0)

    """
    wanted = float(within(share, 0, 0.9999, "The share to trap", remedy="Give 95 % as 0.95."))
    mass = float(within(bees_g, 10, 20_000, "The mass of bees", "g"))
    rate = DRONE_INVASION.value if comb == "drone" else WORKER_INVASION.value
    return -float(np.log1p(-wanted)) * mass / rate


def growth_rate(
    invasion: ArrayLike,
    leaving_per_entering: ArrayLike = LEAVING_PER_ENTERING.value,
    sealed_days: float = SEALED_DAYS.value,
    death_on_bees: float = DEATH_ON_BEES.value,
) -> Floats:
    r"""Steady growth of mites under constant conditions.

    The rate :math:`r` solves :math:`a R e^{-r S} = a + m + r`. With
    :math:`\omega` of :math:`z = \ln(S a R) + S (a + m)`, for which
    :math:`\omega + \ln \omega = z`, that is :math:`r = \omega / S - a - m`.

    Parameters
    ----------
    invasion
        Rate :math:`a` at which mites on bees enter brood. [per day]
    leaving_per_entering
        Live mites :math:`R` that leave a cell for each that entered it. [-]
    sealed_days
        Days :math:`S` under the cap. [days]
    death_on_bees
        Death :math:`m` of mites on bees. [per day]

    Returns
    -------
    Floats
        Growth of the number of mites. [per day]

    References
    ----------
    .. [1] Derived for this program from the cycle above (computed); :math:`\omega` is the Wright
       function of SciPy.

    Examples
    --------
    >>> float(growth_rate(0.2, 1.5).round(4))
    0.0226

    """
    a = within(invasion, 1e-6, 20, "The invasion rate", "per day")
    leaving = within(leaving_per_entering, 0.01, 5, "Mites leaving per mite entering")
    s = float(within(sealed_days, 8, 18, "Sealed days", "days"))
    m = float(within(death_on_bees, 0, 1, "The death of mites on bees", "per day"))
    omega = wrightomega(np.log(s * a * leaving) + s * (a + m))
    return np.asarray(np.real(omega) / s - a - m)


def share_on_bees(
    invasion: ArrayLike,
    leaving_per_entering: ArrayLike = LEAVING_PER_ENTERING.value,
    sealed_days: float = SEALED_DAYS.value,
    death_on_bees: float = DEATH_ON_BEES.value,
) -> Floats:
    r"""Share of all mites that sit on adult bees, in steady growth.

    .. math:: 1 / \bigl(1 + a (1 - e^{-rS}) / r\bigr)

    Parameters
    ----------
    invasion, leaving_per_entering, sealed_days, death_on_bees
        As for ``growth_rate``.

    Returns
    -------
    Floats
        Share, 0 to 1.

    References
    ----------
    .. [1] Derived with ``growth_rate`` (computed).

    Examples
    --------
    >>> float(share_on_bees(0.2, 1.5).round(2))
    0.32

    """
    r = growth_rate(invasion, leaving_per_entering, sealed_days, death_on_bees)
    steady = r == 0
    safe = np.where(steady, 1.0, r)
    days = np.where(steady, sealed_days, -np.expm1(-safe * sealed_days) / safe)
    return np.asarray(1 / (1 + np.asarray(invasion) * days))

"""Bees and brood of a usual colony by month, for a count at one that nobody described."""

from combwright.science.colony.laying import season_share
from combwright.terms.data_files import parameter
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

BEES_BY_MONTH = (11e3, 10e3, 9e3, 11e3, 20e3, 32e3, 35e3, 28e3, 20e3, 15e3, 13e3, 12e3)
BEES_RANGE = 0.4
DAYS_A_MONTH, BROOD_DAYS, DRONE_MONTHS = 30.4, 21, (5, 6, 7)
MOST_EGGS = parameter("science/mites", "most_eggs")
MOST_BROOD = parameter("science/mites", "most_brood")
DRONE_SHARE = parameter("science/mites", "drone_share")


def usual_bees(month: int) -> Parameter:
    """Adult bees of a usual colony in a month, when they were not counted. [bees].

    References
    ----------
    .. [1] Composite for temperate northern Europe (from memory, orientation only).

    Examples
    --------
    >>> usual_bees(8).value
    28000.0

    """
    bees = BEES_BY_MONTH[_number(month) - 1]
    return Parameter(
        bees,
        "bees",
        bees * (1 - BEES_RANGE),
        bees * (1 + BEES_RANGE),
        "usual colony of the month in northern Europe",
        "from memory",
    )


def usual_brood(month: int) -> float:
    """Brood of all ages of a usual colony in the middle of a month. [cells].

    References
    ----------
    .. [1] Schmickl and Crailsheim 2007, see ``season_share``; as much as the bees can rear.

    Examples
    --------
    >>> [round(usual_brood(month), -2) for month in (1, 4, 6, 10)]
    [100.0, 9900.0, 28800.0, 300.0]

    """
    middle = 15.0 + DAYS_A_MONTH * (_number(month) - 1)
    laid = sum(MOST_EGGS.value * season_share((middle - ago) % 365.0) for ago in range(BROOD_DAYS))
    return min(laid, MOST_BROOD.value * usual_bees(month).value)


def usual_drone_share(month: int) -> float:
    """Share of drone cells among the brood of a usual colony. [-].

    References
    ----------
    .. [1] See ``DRONE_SHARE``; that drones are reared from May to July is common practice.

    Examples
    --------
    >>> usual_drone_share(6), usual_drone_share(9)
    (0.035, 0.0)

    """
    return DRONE_SHARE.value if _number(month) in DRONE_MONTHS else 0.0


def _number(month: int) -> int:
    return int(within(month, 1, 12, "The month", remedy="1 is January and 12 December."))

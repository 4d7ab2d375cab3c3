"""Swarms: what share leaves and when. There is no validated numeric trigger of swarming."""

from dataclasses import dataclass

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

SWARM_FRACTION = Parameter(
    0.75,
    "share of workers",
    0.65,
    0.85,
    "Rangel & Seeley 2012, Insectes Soc. 59:453-462, doi:10.1007/s00040-012-0239-5",
    "read",
)
SWARM_FRACTION_TEXTBOOK = Parameter(
    0.5, "share of workers", 0.4, 0.6, "older textbooks: about half", "read"
)
# Days since the first egg was laid in a queen cup.
PRIME_SWARM_DAY = Parameter(
    8.5, "days", 8.0, 9.0, "about when the first queen cell is sealed; weather delays", "computed"
)
FIRST_CAST_DAY = Parameter(
    17.0, "days", 16.0, 20.0, "after the first virgin emerges, 8 days later", "computed"
)
NO_TRIGGER = (
    "No validated numeric trigger of swarming has been published: these signs raise the chance, "
    "and none of them is a law."
)


@dataclass(frozen=True, slots=True)
class Sign:
    """Something that reviews name as leading to swarming."""

    sign: str
    parameter: Parameter | None
    source: str


SIGNS = (
    Sign(
        "The brood nest is back-filled with nectar: the queen finds no open cells",
        Parameter(
            0.90, "share of worker comb taken", 0.85, 1.0, "Winston 1980, Kansas", "from memory"
        ),
        "reviews, read second-hand; the 90 % from memory",
    ),
    Sign(
        "Young bees crowd the combs",
        None,
        "reviews, read second-hand; Simpson & Riedel 1963, from memory",
    ),
    Sign(
        "The queen is old: first-year queens swarm several times less often than second-year ones",
        None,
        "reviews, read second-hand; the ratio is not verified",
    ),
    Sign(
        "The hive is small: one deep box swarms more than two with supers",
        None,
        "Loftus et al. 2016, read second-hand",
    ),
    Sign("Forage is plentiful and days lengthen", None, "reviews, read second-hand"),
)


@dataclass(frozen=True, slots=True)
class Parting:
    """How a colony divides when a prime swarm leaves, in bees."""

    swarm: float
    stay: float


def prime_swarm(bees: float, fraction: float = SWARM_FRACTION.value) -> Parting:
    """Divide a colony's workers between the prime swarm and the parent colony.

    Parameters
    ----------
    bees
        Workers before the swarm. [bees]
    fraction
        Share that leaves. Older textbooks say about half.

    Returns
    -------
    Parting
        Workers that leave and that stay. [bees]

    References
    ----------
    .. [1] J. Rangel and T. D. Seeley, Insectes Soc. 59:453-462, 2012,
       doi:10.1007/s00040-012-0239-5 (abstract read).

    Examples
    --------
    >>> prime_swarm(30_000)
    Parting(swarm=22500.0, stay=7500.0)

    """
    workers = float(within(bees, 0, 120_000, "The number of bees", "bees"))
    share = float(within(fraction, 0, 1, "The share that leaves", remedy="Give 75 % as 0.75."))
    return Parting(workers * share, workers * (1 - share))


def wild_colonies_next_year(
    swarms_per_colony: float = 0.87,
    founders_survive: float = 0.23,
    established_survive: float = 0.84,
    summer_survival: float = 0.97,
) -> float:
    r"""Wild colonies in a year's time for each one now.

    .. math:: \lambda = s_{summer} (s_{established} + n\, s_{founders})

    Parameters
    ----------
    swarms_per_colony
        Prime swarms :math:`n` per established colony and summer, taken from the turnover of
        queens.
    founders_survive, established_survive
        Chance to live through the winter, for swarms in their first year and for others.
    summer_survival
        Chance to live through the summer.

    Returns
    -------
    float
        Growth of the population in a year; 1 keeps it level.

    References
    ----------
    .. [1] T. D. Seeley, Apidologie 48:743-754, 2017, doi:10.1007/s13592-017-0519-1
       (abstract read; the balance is computed here).

    Examples
    --------
    >>> round(wild_colonies_next_year(), 2)
    1.01

    """
    chances = (founders_survive, established_survive, summer_survival)
    founders, established, summer = within(chances, 0, 1, "The chance to survive")
    swarms = within(swarms_per_colony, 0, 10, "Swarms per colony")
    return float(summer * (established + swarms * founders))

"""Recruitment to foraging and the death of foragers: the model of Khoury and others, 2011.

A toy model, printed here as published: it shows the principle, it does not forecast a colony.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Floats = NDArray[np.float64]

_PAPER = "Khoury, Myerscough & Barron 2011, PLoS ONE 6:e18491, read second-hand"
LAYING = Parameter(2000.0, "eggs/day", 1000.0, 3000.0, _PAPER, "read")
HALF_ECLOSION_BEES = Parameter(27_000.0, "bees", 1.0, 60_000.0, _PAPER, "read")
RECRUITMENT = Parameter(0.25, "per day", 0.05, 1.0, _PAPER, "read")
INHIBITION = Parameter(0.75, "per day", 0.1, 3.0, _PAPER, "read")
FORAGER_DEATH = Parameter(
    0.154, "per day", 0.045, 0.36, "Khoury 2013 as read in a 2026 thesis; sources disagree", "read"
)
# What sources call the daily death of foragers; they mean different days.
FORAGER_DEATHS = {
    "Torres 2015": Parameter(
        0.045, "per day", 0.045, 0.045, "and none lives beyond 14 days; read second-hand", "read"
    ),
    "Visscher & Dukas 1997": Parameter(
        0.13, "per day", 0.12, 0.14, "Insectes Soc. 44:1-5, mean life 7.7 days", "from memory"
    ),
    "Khoury 2013": FORAGER_DEATH,
    "Prado 2020": Parameter(
        0.36, "per day spent foraging", 0.3, 0.4, "R. Soc. Open Sci. 7:200998, abstract", "read"
    ),
}


@dataclass(frozen=True, slots=True)
class Recruitment:
    """The constants of the model, as published unless said otherwise."""

    laying: float = LAYING.value
    half_eclosion_bees: float = HALF_ECLOSION_BEES.value
    recruitment: float = RECRUITMENT.value
    inhibition: float = INHIBITION.value

    def __post_init__(self) -> None:
        within(self.laying, 1, 6000, "The laying rate", "eggs a day")
        within(self.half_eclosion_bees, 0.001, 1e6, "Bees for half the eclosion", "bees")
        within(self.recruitment, 0.001, 10, "Recruitment", "per day")
        within(self.inhibition, 0.001, 10, "Inhibition", "per day")


PUBLISHED = Recruitment()


def rates(
    hive_bees: ArrayLike,
    foragers: ArrayLike,
    death_rate: ArrayLike,
    model: Recruitment = PUBLISHED,
) -> tuple[Floats, Floats]:
    r"""Change of hive bees and foragers.

    .. math::
       \dot H = L \frac{N}{w + N} - H R, \quad \dot F = H R - m F, \quad
       R = \alpha - \sigma \frac{F}{N}, \quad N = H + F

    Parameters
    ----------
    hive_bees, foragers
        Numbers :math:`H`, :math:`F`. [bees]
    death_rate
        Death of foragers :math:`m`. [per day]
    model
        The constants.

    Returns
    -------
    tuple[Floats, Floats]
        Change of hive bees and of foragers. [bees/day]

    References
    ----------
    .. [1] D. S. Khoury, M. R. Myerscough and A. B. Barron, PLoS ONE 6:e18491, 2011,
       doi:10.1371/journal.pone.0018491 (abstract read; equations and constants read
       second-hand).

    Examples
    --------
    >>> [float(change.round()) for change in rates(6470, 1988, 0.24)]
    [0.0, -0.0]

    """
    hive, out = np.asarray(hive_bees, float), np.asarray(foragers, float)
    bees = hive + out
    share = out / np.where(bees == 0, 1.0, bees)
    started = hive * (model.recruitment - model.inhibition * share)
    eclosion = model.laying * bees / (model.half_eclosion_bees + bees)
    return np.asarray(eclosion - started), np.asarray(started - np.asarray(death_rate) * out)


def foragers_per_hive_bee(
    death_rate: ArrayLike, recruitment: ArrayLike = PUBLISHED.recruitment, inhibition: float = 0.75
) -> Floats:
    r"""Ratio of foragers to hive bees in balance.

    .. math:: J = \frac{-(m+\sigma-\alpha) + \sqrt{(m+\sigma-\alpha)^2 + 4 m \alpha}}{2m}

    Parameters
    ----------
    death_rate
        Death of foragers :math:`m`. [per day]
    recruitment, inhibition
        :math:`\alpha` and :math:`\sigma`. [per day]

    Returns
    -------
    Floats
        The ratio :math:`J`. [-]

    References
    ----------
    .. [1] Steady state of Khoury et al. 2011, worked out here (computed).

    Examples
    --------
    >>> float(foragers_per_hive_bee(0.24).round(4))
    0.3072

    """
    m = within(death_rate, 0.001, 10, "The death of foragers", "per day")
    a = within(recruitment, 0.001, 10, "Recruitment", "per day")
    p = m + inhibition - a
    return np.asarray(2 * a / (p + np.sqrt(p**2 + 4 * m * a)))


@dataclass(frozen=True, slots=True)
class Balance:
    """A colony in balance; no bees when foragers die faster than the critical rate."""

    hive_bees: float
    foragers: float
    forager_share: float
    first_foraging_days: float
    forager_life_days: float

    @property
    def adult_life_days(self) -> float:
        """Mean life of an adult, in days."""
        return self.first_foraging_days + self.forager_life_days


def balance(death_rate: float, model: Recruitment = PUBLISHED) -> Balance:
    r"""Steady state of the model in closed form.

    .. math:: F^* = \frac{L}{m} - w \frac{J}{1+J}, \qquad H^* = F^* / J

    Parameters
    ----------
    death_rate
        Death of foragers :math:`m`. [per day]
    model
        The constants.

    Returns
    -------
    Balance
        Bees, share of foragers, mean age at first foraging, mean life of a forager.

    References
    ----------
    .. [1] Khoury et al. 2011; the closed form is worked out here (computed).

    Examples
    --------
    >>> round(balance(0.24).foragers), round(balance(0.40).foragers)
    (1988, 0)

    """
    j = float(foragers_per_hive_bee(death_rate, model.recruitment, model.inhibition))
    foragers = max(0.0, model.laying / death_rate - model.half_eclosion_bees * j / (1 + j))
    return Balance(foragers / j, foragers, j / (1 + j), 1 / (death_rate * j), 1 / death_rate)


def critical_death_rate(model: Recruitment = PUBLISHED) -> float:
    r"""Death rate of foragers above which no colony lasts.

    .. math::
       m_c = e\,\frac{\alpha + \sigma + \sqrt{(\alpha-\sigma)^2 + 4 \sigma e}}{2(\alpha - e)},
       \qquad e = L / w

    Parameters
    ----------
    model
        The constants; recruitment must exceed :math:`e`.

    Returns
    -------
    float
        Critical rate. [per day]

    References
    ----------
    .. [1] Khoury et al. 2011 state about 0.355 (from memory); the closed form is computed.

    Examples
    --------
    >>> round(critical_death_rate(), 4)
    0.3552

    """
    a, s = model.recruitment, model.inhibition
    e = model.laying / model.half_eclosion_bees
    within(e, 0, a * (1 - 1e-9), "Laying over bees for half the eclosion", "per day")
    return float(e * (a + s + np.sqrt((a - s) ** 2 + 4 * s * e)) / (2 * (a - e)))

"""What falls by itself in a steady colony: the rates of the simulated one, in closed form."""

from collections.abc import Mapping
from math import exp, expm1
from typing import Final

from combwright.science.colony.brood import stage_days
from combwright.science.mites.invasion import invasion_rate
from combwright.terms.data_files import parameters
from combwright.terms.parameters import Parameter

MITE: Final[Mapping[str, Parameter]] = parameters("science/mites", "colony")
WORKER_SEALED: Final = stage_days("worker").sealed.value
DRONE_SEALED: Final = stage_days("drone").sealed.value
BROOD_DAYS: Final = stage_days("worker").emerges_on
SLOWEST, FASTEST, HALVINGS = -0.5, 0.5, 50  # growth a day, and how often its range is halved


def daily_deaths(brood: float, winter: float, summer: float, half: float) -> float:
    r"""Deaths of mites on bees, by how much brood there is. [per day].

    .. math:: m = m_w + (m_s - m_w) \frac{B}{B + B_{1/2}}

    Parameters
    ----------
    brood
        Brood of all ages :math:`B`. [cells]
    winter, summer
        Deaths without brood and with much of it :math:`m_w`, :math:`m_s`. [per day]
    half
        Brood at which they are half-way :math:`B_{1/2}`. [cells]

    References
    ----------
    .. [1] Korpela et al. 1992 for winter, Fries 1994 for summer (from memory); the form is a
       judgement.

    Examples
    --------
    >>> round(daily_deaths(1000.0, 0.0024, 0.006, 1000.0), 4)
    0.0042

    """
    return winter + (summer - winter) * brood / (brood + half)


def mites_per_fallen(brood: float, bees: float, drone_share: float = 0.0) -> float:
    r"""Mites in a colony for each that falls in a day. [mites per mite fallen a day].

    Mites on bees die at a rate :math:`m`, and enter cells of each kind at a rate :math:`a`; of each
    that entered, :math:`R` leave alive after :math:`S` days under the cap and :math:`L` fall with
    the bee that emerges. In a colony whose mites grow steadily at :math:`r` a day, with

    .. math::
       \sum a R e^{-r S} = \sum a + m + r, \qquad
       \frac{M}{f} = \frac{1 + \sum a (1 - e^{-r S}) / r}{1 - e^{-m} + \sum a L e^{-r S}}

    Parameters
    ----------
    brood
        Worker and drone brood of all ages. [cells]
    bees
        Adult bees. [bees]
    drone_share
        Share of drone cells among them. [-]

    References
    ----------
    .. [1] J. N. M. Calis et al. 1999 (see ``invasion_rate``); the sum for steady growth is
       computed. That most fall with the bees that emerge: Lobb and Martin, Apidologie 28:367-374,
       1997 (abstract read).

    Examples
    --------
    >>> [round(mites_per_fallen(cells, 18_000.0)) for cells in (0.0, 1000.0, 15_000.0)]
    [417, 86, 25]

    """
    sealed, grams = brood / BROOD_DAYS, bees * MITE["bee_g"].value
    kinds = [
        (
            invasion_rate(cells, grams, MITE[f"invade_{kind}"].value),
            MITE[f"leave_{kind}"].value,
            lost,
            days,
        )
        for kind, cells, lost, days in (
            ("worker", sealed * (1.0 - drone_share), _lost_with_workers(), WORKER_SEALED),
            ("drone", sealed * drone_share, MITE["mite_gross_drone"].value, DRONE_SEALED),
        )
    ]
    deaths = daily_deaths(
        brood,
        MITE["mite_death_winter"].value,
        MITE["mite_death"].value,
        MITE["mite_death_half"].value,
    )
    growth = _steady_growth([kind[:2] + kind[3:] for kind in kinds], deaths)
    in_cells = sum(-rate * expm1(-growth * days) / growth for rate, _, _, days in kinds)
    falls = sum(rate * lost * exp(-growth * days) for rate, _, lost, days in kinds)
    return (1.0 + in_cells) / (1.0 - exp(-deaths) + falls)


def _lost_with_workers() -> float:
    """Mites of a worker cell that fall with the bee, for each that entered."""
    return MITE["mite_gross"].value - MITE["leave_worker"].value


def _steady_growth(kinds: list[tuple[float, ...]], deaths: float) -> float:
    """Growth a day at which as many mites come as go, by halving."""
    low, high = SLOWEST, FASTEST
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        gain = sum(rate * (live * exp(-middle * days) - 1.0) for rate, live, days in kinds)
        low, high = (middle, high) if gain > deaths + middle else (low, middle)
    return middle

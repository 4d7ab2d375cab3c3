"""Brood: how long each stage lasts, how much of it lives, how many frames it fills."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Caste = Literal["worker", "queen", "drone"]
Stage = Literal["egg", "open larva", "sealed", "emerged"]

_TEXTBOOK = "textbook reference pages; worker 3/6/12 d also FAO, read second-hand"
_FUKUDA = "Fukuda & Sakagami 1968, Res. Popul. Ecol. 10:31-39, doi:10.1007/BF02514731"
_TORRES = "Torres et al. 2015, PLoS ONE 10:e0130966, as in the first author's 2020 program"


@dataclass(frozen=True, slots=True)
class StageDays:
    """How long the stages of one caste last, in days."""

    egg: Parameter
    open_larva: Parameter
    sealed: Parameter

    @property
    def sealed_on(self) -> float:
        """Age at which the cell is sealed, in days since the egg was laid."""
        return self.egg.value + self.open_larva.value

    @property
    def emerges_on(self) -> float:
        """Age at which the adult emerges, in days since the egg was laid."""
        return self.sealed_on + self.sealed.value


STAGE_DAYS: Mapping[Caste, StageDays] = {
    "worker": StageDays(
        Parameter(3.0, "days", 2.8, 3.2, _TEXTBOOK, "read"),
        Parameter(6.0, "days", 5.0, 6.0, _TEXTBOOK + "; models use 5", "read"),
        Parameter(12.0, "days", 11.5, 13.0, _TEXTBOOK, "read"),
    ),
    "queen": StageDays(
        Parameter(3.0, "days", 2.8, 3.2, _TEXTBOOK, "read"),
        Parameter(5.25, "days", 5.0, 5.5, _TEXTBOOK + "; sealed on about day 8", "read"),
        Parameter(7.75, "days", 7.0, 8.0, _TEXTBOOK, "read"),
    ),
    "drone": StageDays(
        Parameter(3.0, "days", 2.8, 3.2, _TEXTBOOK, "read"),
        Parameter(6.5, "days", 6.0, 7.0, _TEXTBOOK + "; sealed on about day 10", "read"),
        Parameter(14.5, "days", 14.0, 15.0, _TEXTBOOK, "read"),
    ),
}
# Measured: 87.1 % of workers emerge after 20 days and 8.3 % after 21; textbooks say 21.
WORKER_DAYS_MEASURED = Parameter(20.0, "days", 20.0, 21.0, _FUKUDA, "read")
WORKER_CELLS_PER_FRAME = Parameter(
    3750.0, "usable worker cells", 3000.0, 5000.0, "trade sheet, National deep frame", "judgement"
)


def stage(caste: Caste, days_since_laid: float) -> Stage:
    """Tell what is in the cell so many days after the egg was laid.

    Parameters
    ----------
    caste
        Worker, queen or drone.
    days_since_laid
        Age of the brood. [days]

    Returns
    -------
    Stage
        What the keeper would see.

    References
    ----------
    .. [1] Stage days of textbooks (read second-hand); see ``STAGE_DAYS``.

    Examples
    --------
    >>> stage("queen", 9)
    'sealed'

    """
    age = float(within(days_since_laid, 0, 60, "The age of brood", "days"))
    days = STAGE_DAYS[caste]
    if age < days.egg.value:
        return "egg"
    if age < days.sealed_on:
        return "open larva"
    return "sealed" if age < days.emerges_on else "emerged"


def stage_days(caste: Caste) -> StageDays:
    """Give the days of each stage.

    Parameters
    ----------
    caste
        Worker, queen or drone.

    Returns
    -------
    StageDays
        Egg, open larva and sealed brood, each with its range and source. [days]

    References
    ----------
    .. [1] Stage days of textbooks (read second-hand); see ``STAGE_DAYS``.

    Examples
    --------
    >>> stage_days("worker").sealed.value
    12.0

    """
    return STAGE_DAYS[caste]


def total_days(caste: Caste) -> float:
    """Give the days from egg to adult.

    Parameters
    ----------
    caste
        Worker, queen or drone.

    Returns
    -------
    float
        Sum of the three stages. [days]

    References
    ----------
    .. [1] Stage days of textbooks (read second-hand); see ``STAGE_DAYS``.

    Examples
    --------
    >>> [total_days(caste) for caste in ("worker", "queen", "drone")]
    [21.0, 16.0, 24.0]

    """
    return STAGE_DAYS[caste].emerges_on


def frames_of_brood(
    eggs_per_day: ArrayLike,
    cells_per_frame: float = WORKER_CELLS_PER_FRAME.value,
    brood_days: float = 21.0,
) -> NDArray[np.float64]:
    r"""Frames that brood fills when the queen lays at a steady rate.

    .. math:: n = L T / c

    Parameters
    ----------
    eggs_per_day
        Laying rate :math:`L`. [eggs/day]
    cells_per_frame
        Usable worker cells :math:`c` of a frame, both sides. [cells]
    brood_days
        Days :math:`T` that a cell is taken. [days]

    Returns
    -------
    NDArray[np.float64]
        Frames of brood, counting dead brood's cells as taken: an upper bound. [frames]

    References
    ----------
    .. [1] Arithmetic of the trade sheet (computed), National deep frame.

    Examples
    --------
    >>> float(frames_of_brood(1500).round(1))
    8.4

    """
    laid = within(eggs_per_day, 0, 4000, "The laying rate", "eggs a day")
    cells = within(cells_per_frame, 500, 12000, "Cells per frame", "cells")
    return laid * within(brood_days, 15, 25, "Brood days", "days") / cells


@dataclass(frozen=True, slots=True)
class StageChain:
    """A colony in balance with a steady laying rate. Counts of bees, and bees a day."""

    eggs: float
    larvae: float
    pupae: float
    hive_bees: float
    foragers: float
    emerging_per_day: float
    survival: float
    survivors_of_100: tuple[float, float, float]

    @property
    def adults(self) -> float:
        """Hive bees and foragers together."""
        return self.hive_bees + self.foragers

    @property
    def adult_life_days(self) -> float:
        """Mean life of an adult, in days."""
        return self.adults / self.emerging_per_day


# (days in the stage, share that dies in each of them)
TORRES_CHAIN = ((3, 0.03), (5, 0.01), (12, 0.001), (21, 0.015), (14, 0.045))


def stage_chain(
    eggs_per_day: float, chain: tuple[tuple[int, float], ...] = TORRES_CHAIN
) -> StageChain:
    r"""Balance of a colony whose queen lays the same number of eggs every day.

    Newcomers to a stage count at full strength; each day a share :math:`d` of them dies:

    .. math:: N_i = L_i \sum_{k=0}^{T_i-1} (1-d_i)^k, \qquad L_{i+1} = L_i (1-d_i)^{T_i}

    Parameters
    ----------
    eggs_per_day
        Laying rate :math:`L_1`. [eggs/day]
    chain
        Days :math:`T` and daily deaths :math:`d` of egg, larva, pupa, hive bee, forager.

    Returns
    -------
    StageChain
        Counts in balance, and the survival from egg to adult.

    References
    ----------
    .. [1] R. Torres et al., PLoS ONE 10:e0130966, 2015, doi:10.1371/journal.pone.0130966
       (abstract read; parameters read second-hand in the first author's program).

    Examples
    --------
    >>> balance = stage_chain(1600)
    >>> round(balance.hive_bees), round(balance.foragers), round(balance.survival, 4)
    (24877, 10548, 0.8576)

    """
    newcomers = float(within(eggs_per_day, 0.001, 4000, "The laying rate", "eggs a day"))
    counts, alive = [], [newcomers]
    for days, deaths in chain:
        survives = 1 - float(within(deaths, 0, 1, "The daily share of deaths"))
        counts.append(alive[-1] * sum(survives**day for day in range(days)))
        alive.append(alive[-1] * survives**days)
    larvae, pupae, adults = (100 * n / newcomers for n in alive[1:4])
    eggs, young, sealed, hive_bees, foragers = counts
    return StageChain(
        eggs=eggs,
        larvae=young,
        pupae=sealed,
        hive_bees=hive_bees,
        foragers=foragers,
        emerging_per_day=alive[3],
        survival=alive[3] / newcomers,
        survivors_of_100=(larvae, pupae, adults),
    )

"""Brood: how long each stage lasts, and how much of it lives through a day."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from combwright.terms.data_files import parameters
from combwright.terms.parameters import Parameter

Caste = Literal["worker", "queen", "drone"]


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
    caste: StageDays(**parameters("science/colony", "stage_days", caste))
    for caste in ("worker", "drone")
}


def stage_days(caste: Caste) -> StageDays:
    """Give the days of each stage.

    Egg, open larva and sealed brood, each with its range and source. [days]

    References
    ----------
    .. [1] Stage days of textbooks (read second-hand); see ``STAGE_DAYS``.

    Examples
    --------
    >>> stage_days("worker").emerges_on
    21.0

    """
    return STAGE_DAYS[caste]


def alive_next_day(daily_deaths: float, factor: float = 1.0) -> float:
    """Share of a stage's brood that lives through a day in the warm, fed nest.

    ``daily_deaths``: share that dies in a day: 0.03 of eggs, 0.01 of larvae, 0.001 of sealed brood
    [per day]. ``factor``: how much worse the colony does than the published one [-].

    References
    ----------
    .. [1] R. Torres et al., PLoS ONE 10:e0130966, 2015, doi:10.1371/journal.pone.0130966
       (abstract read; parameters read second-hand in the first author's program).

    Examples
    --------
    >>> round(alive_next_day(0.03) ** 3 * alive_next_day(0.01) ** 5, 2)
    0.87

    """
    return 1.0 - min(1.0, daily_deaths * factor)

"""What the weather ahead lets virgins do: how many will lay, and how long they wait."""

from dataclasses import dataclass
from datetime import date
from math import floor
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.science.queens.first_egg import FLIES_AT, LAYS_BEFORE_SALE, RIPE_BEFORE, ready_by
from combwright.science.queens.mating_success import NO_DRONE_LAYER, laying_share, usual_share
from combwright.terms.data_files import parameter

Floats = NDArray[np.float64]
FIT_FROM: Final = parameter("science/queens", "fit_from_age").value
FIT_TO: Final = parameter("science/queens", "fit_to_age").value
IN_FIRST_EGG: Final = parameter("science/queens", "wait_in_first_egg").value
LONGEST_DAYS: Final = int(RIPE_BEFORE.value + FIT_TO) + 1  # from a cell to the end of its chances
SUREST: Final = NO_DRONE_LAYER.value


@dataclass(frozen=True)
class MatingWeather:
    """How fit each day is for a mating flight, 0 to 1, [scenario, day], from a first day on.

    ``usual`` is the same sampled from the climate alone, against which a year is good or bad.
    """

    first: date
    fit: Floats
    usual: Floats

    @property
    def scenarios(self) -> int:
        """How many versions of the weather there are."""
        return len(self.fit)

    def some(self, part: slice) -> "MatingWeather":
        """Keep some of the versions."""
        return MatingWeather(self.first, self.fit[part], self.usual)


@dataclass(frozen=True)
class Mating:
    """The virgins of ripe cells given on one day: all nucs of a batch see the same days.

    ``success`` is the share that will lay and ``waits`` the days of shut-in weather that come on
    top of the usual age at the first flight, [scenario].
    """

    given: date
    success: Floats
    waits: Floats
    fit_days: float

    def lays_by(self, on: date) -> float:
        """Chance that a virgin of that day lays by a date."""
        return float(self._by(on, with_sale=False).mean())

    def ready_by(self, on: date) -> Floats:
        """Share whose queen has laid three weeks by a date, [scenario]."""
        return self._by(on, with_sale=True)

    @property
    def lays(self) -> float:
        """Chance that she lays at all."""
        return float(self.success.mean())

    def _by(self, on: date, *, with_sale: bool) -> Floats:
        days = (on - self.given).days + (0.0 if with_sale else LAYS_BEFORE_SALE.value)
        return ready_by(days, self.success, self.waits)


def mating(weather: MatingWeather, given: date, own: float = 1.0) -> Mating:
    """Tell what becomes of ripe cells given on a day.

    ``own``: how the keeper's own batches move the usual share.
    """
    first = (given - weather.first).days + RIPE_BEFORE.value
    span = slice(max(0, floor(first + FIT_FROM)), max(0, floor(first + FIT_TO)))
    fit_days = weather.fit[:, span].sum(axis=1)
    usual = float(laying_share(weather.usual[:, span].sum(axis=1)).mean())
    law = laying_share(fit_days) / max(usual, 0.01)
    success = np.clip(usual_share(given) * own * law, 0.0, SUREST)
    waits = _waits(weather.fit[:, floor(first + FLIES_AT) : span.stop])
    return Mating(given, success, waits, float(fit_days.mean()))


def _waits(fit: Floats) -> Floats:
    """Count the days until one fit day has come together, beyond those that are usual."""
    gone = np.cumsum(fit, axis=1) >= 1.0
    first = np.where(gone.any(axis=1), gone.argmax(axis=1), fit.shape[1])
    return np.asarray(np.maximum(0.0, first - IN_FIRST_EGG))

"""The keeper's prices and aims: the one currency in which all that is advised is weighed."""

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.numbers import numbers

Floats = NDArray[np.float64]
USUAL: Final = numbers("prices")
PARAMETERS: Final = numbers("aims")


@dataclass(frozen=True, slots=True)
class Prices:
    """What each thing brings or costs, in the keeper's own money."""

    honey: float = USUAL["honey"].value
    nuc_in_april: float = USUAL["nuc_in_april"].value
    nuc_in_may: float = USUAL["nuc_in_may"].value
    nuc_in_june: float = USUAL["nuc_in_june"].value
    nuc_in_july: float = USUAL["nuc_in_july"].value
    nuc_in_august: float = USUAL["nuc_in_august"].value
    nuc_in_september: float = USUAL["nuc_in_september"].value
    mated_queen: float = USUAL["mated_queen"].value
    weak_colony_in_april: float = USUAL["weak_colony_in_april"].value
    strong_colony_in_april: float = USUAL["strong_colony_in_april"].value
    sugar: float = USUAL["sugar"].value
    frame_of_foundation: float = USUAL["frame_of_foundation"].value
    super: float = USUAL["super"].value
    treatment: float = USUAL["treatment"].value
    road_to_a_hive: float = USUAL["road_to_a_hive"].value
    minutes_at_a_hive: float = USUAL["minutes_at_a_hive"].value
    hour: float = USUAL["hour"].value

    @property
    def visit(self) -> float:
        """What a visit to one hive costs: its share of the road, and the usual minutes.

        Examples
        --------
        >>> Prices().visit
        3.3

        """
        return self.road_to_a_hive + self.work(self.minutes_at_a_hive)

    def work(self, minutes: float) -> float:
        """Give what some minutes of work cost."""
        return self.hour * minutes / MINUTES_AN_HOUR

    def nuc(self, on: date) -> float:
        """Give what a nuc brings that is sold on a day; nothing in the cold half of the year.

        Examples
        --------
        >>> Prices().nuc(date(2027, 5, 20)), Prices().nuc(date(2027, 12, 1))
        (210.0, 0.0)

        """
        asked: float = getattr(self, f"nuc_in_{on:%B}".lower(), 0.0)
        return asked

    def colony_in_april(self, frames_of_bees: Floats, queen_years: Floats | float = 0.0) -> Floats:
        """Give the worth of colonies with a laying queen on 1 April, by bees and the queen's age.

        Examples
        --------
        >>> Prices().colony_in_april(np.array([0.5, 3.0, 5.0, 12.0])).tolist()
        [0.0, 100.0, 175.0, 250.0]

        """
        at = [PARAMETERS[f"{which}_frames"].value for which in ("least", "weak", "strong")]
        worth = [0.0, self.weak_colony_in_april, self.strong_colony_in_april]
        return np.asarray(np.interp(frames_of_bees, at, worth) * left_of_worth(queen_years))

    def aimed(self, aim: str) -> "Prices":
        """Weigh these prices by an aim, so that what comes first counts for more.

        Examples
        --------
        >>> [Prices().aimed(aim).honey > 8.0 for aim in ("honey first", "nucs first")]
        [True, False]

        """
        times = AIMS[aim]
        return replace(self, **{name: by * getattr(self, name) for name, by in times.items()})


def left_of_worth(queen_years: Floats | float) -> Floats:
    """Give the share of its price that a colony or nuc keeps with a queen of that age.

    Examples
    --------
    >>> left_of_worth(np.array([0.5, 1.0, 2.0])).tolist()
    [1.0, 1.0, 0.88]

    """
    older = np.maximum(np.asarray(queen_years) - 1.0, 0.0)
    return np.asarray(np.maximum(1.0 - PARAMETERS["old_queen"].value * older, 0.0))


MINUTES_AN_HOUR: Final = timedelta(hours=1) / timedelta(minutes=1)
NAMES: Final = tuple(each.name for each in fields(Prices))
NUCS: Final = tuple(name for name in NAMES if name.startswith("nuc"))
FIRST, SECOND = PARAMETERS["first"].value, PARAMETERS["second"].value
AIMS: Final[Mapping[str, Mapping[str, float]]] = {
    "as priced": {},
    "honey first": {"honey": FIRST} | dict.fromkeys(NUCS, SECOND),
    "nucs first": {"honey": SECOND} | dict.fromkeys(NUCS, FIRST),
    "few visits": {"road_to_a_hive": PARAMETERS["far"].value},
}

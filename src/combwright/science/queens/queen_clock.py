"""The clock of a queen: from the egg to brood that a buyer can judge her by."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from combwright.terms.data_files import parameters
from combwright.terms.parameters import Parameter

Start = Literal[
    "egg", "egg in a cup", "graft", "walk-away", "charged cell", "sealed cell", "virgin"
]
Milestone = Literal[
    "charged", "sealed", "emerges", "flies to mate", "lays", "sealed brood", "fit to sell",
    "too late",
]  # fmt: skip

# Days since the queen's egg was laid.
CLOCK: Mapping[Milestone, Parameter] = parameters("science/queens", "clock")
# Her age on day 0. [days since the egg was laid]
AGE: Mapping[Start, Parameter] = parameters("science/queens", "age")


@dataclass(frozen=True, slots=True)
class Days:
    """When something is to be expected, in days from day 0."""

    low: float
    usual: float
    high: float


def queen_clock(start: Start) -> dict[Milestone, Days]:
    """Tell what follows from a cell, a graft or the loss of a queen on day 0.

    For each milestone still ahead its days from day 0; the band joins that of the clock with that
    of her age. Poor mating weather can add two weeks more.

    ``start``: what stands at the beginning: an egg laid, a larva grafted, a queen taken away
    (walk-away), or the furthest stage seen in a colony that swarms.

    Examples
    --------
    >>> queen_clock("graft")["emerges"]
    Days(low=11.0, usual=12.25, high=13.5)

    """
    age = AGE[start]
    return {
        milestone: Days(
            max(0.0, day.low - age.high), max(0.0, day.value - age.value), day.high - age.low
        )
        for milestone, day in CLOCK.items()
        if day.value > age.low
    }

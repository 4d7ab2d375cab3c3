"""The clock of a queen: from the egg to brood that a buyer can judge her by."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from combwright.terms.parameters import Parameter

Start = Literal[
    "egg", "egg in a cup", "graft", "walk-away", "charged cell", "sealed cell", "virgin"
]
Milestone = Literal[
    "charged", "sealed", "emerges", "flies to mate", "lays", "sealed brood", "fit to sell",
    "too late",
]  # fmt: skip

_GUIDES = "queen-cell clock of several guides"

# Days since the queen's egg was laid.
CLOCK: Mapping[Milestone, Parameter] = {
    "charged": Parameter(3.0, "days", 3.0, 3.0, _GUIDES, "read"),
    "sealed": Parameter(8.0, "days", 8.0, 9.0, _GUIDES, "read"),
    "emerges": Parameter(16.0, "days", 15.0, 17.0, _GUIDES, "read"),
    "flies to mate": Parameter(
        22.0, "days", 20.0, 26.0, "emergence and 6 days (5 to 9): two batches of dark bees", "read"
    ),
    "lays": Parameter(
        29.0, "days", 24.0, 37.0,
        "emergence and 12.9 days (Sheffield; means of four more studies 10.3 to 14); range: "
        + _GUIDES, "read",
    ),
    "sealed brood": Parameter(
        38.0, "days", 32.0, 46.0, "9 days after the first worker egg; earliest 8", "computed"
    ),
    "fit to sell": Parameter(
        50.0, "days", 38.0, 65.0, "three weeks of laying (two to four): trade rule", "computed"
    ),
    "too late": Parameter(44.0, "days", 37.0, 44.0, _GUIDES, "read"),
}  # fmt: skip
# Her age on day 0. [days since the egg was laid]
AGE: Mapping[Start, Parameter] = {
    "egg": Parameter(0.0, "days", 0.0, 0.0, "laid on day 0", "computed"),
    "egg in a cup": Parameter(1.5, "days", 0.0, 3.0, _GUIDES, "read"),
    "graft": Parameter(
        3.75, "days", 3.5, 4.0, "larva of 12 to 24 hours from an egg that hatches at 72", "read"
    ),
    "walk-away": Parameter(
        4.0, "days", 3.0, 4.5, "emergency cells are raised from larvae of up to 36 hours", "read"
    ),
    "charged cell": Parameter(5.5, "days", 3.0, 8.0, _GUIDES, "read"),
    "sealed cell": Parameter(12.0, "days", 8.0, 16.0, _GUIDES, "read"),
    "virgin": Parameter(20.0, "days", 16.0, 24.0, _GUIDES, "read"),
}


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

    Parameters
    ----------
    start
        What stands at the beginning: an egg laid, a larva grafted, a queen taken away (walk-away),
        or the furthest stage seen in a colony that swarms.

    References
    ----------
    .. [1] See ``CLOCK`` and ``AGE``.

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

"""Queens: the clock of a queen cell, and how long a nuc takes until it can be sold."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Found = Literal["egg", "charged", "sealed", "virgin"]
Milestone = Literal["charged", "sealed", "emerges", "ready to mate", "lays", "too late"]
Route = Literal["mated queen", "ripe cell", "virgin", "charged cell", "walk-away"]

_CLOCK = "trade sheet: queen-cell clock, several guides read"

# Days since the queen's egg was laid.
CLOCK: Mapping[Milestone, Parameter] = {
    "charged": Parameter(3.0, "days", 3.0, 3.0, _CLOCK, "read"),
    "sealed": Parameter(8.0, "days", 8.0, 9.0, _CLOCK, "read"),
    "emerges": Parameter(16.0, "days", 15.0, 17.0, _CLOCK, "read"),
    "ready to mate": Parameter(21.5, "days", 21.0, 22.0, _CLOCK, "read"),
    "lays": Parameter(33.0, "days", 24.0, 37.0, _CLOCK, "read"),
    "too late": Parameter(44.0, "days", 37.0, 44.0, _CLOCK, "read"),
}
# Days since the queen was lost or taken: the bees start from larvae up to about 36 hours old.
EMERGENCY: Mapping[Milestone, Parameter] = {
    "emerges": Parameter(12.0, "days", 11.0, 13.0, "36 h read; days computed", "computed"),
    "lays": Parameter(30.0, "days", 25.0, 35.0, "36 h read; days computed", "computed"),
}
# Age of the queen or her brood when the keeper finds it. [days since the egg was laid]
_AGE: Mapping[Found, tuple[float, float]] = {
    "egg": (0.0, 3.0),
    "charged": (3.0, 8.0),
    "sealed": (8.0, 16.0),
    "virgin": (16.0, 24.0),
}
EMERGENCE_TO_LAYING = Parameter(
    17.5, "days", 14.0, 21.0, "trade sheet C17, typical (8-28 seen), read", "read"
)
EGG_TO_SEALED_DAYS = 9
EGG_TO_ADULT_DAYS = 21
LAYING_BEFORE_SALE_DAYS = 21
# Days from making the nuc until the queen emerges.
_EMERGES: Mapping[Route, tuple[float, float]] = {
    "ripe cell": (2.0, 3.0),
    "virgin": (-3.0, -1.0),
    "charged cell": (8.0, 12.0),
    "walk-away": (12.0, 13.0),
}
MATED_QUEEN_LAYS = Parameter(
    5.0, "days", 3.0, 7.0, "trade sheet: mated queen in a cage", "common practice"
)


@dataclass(frozen=True, slots=True)
class Days:
    """From when until when something is to be expected, counted in days."""

    low: float
    high: float

    def later(self, days: float) -> "Days":
        """Move both ends by some days."""
        return Days(self.low + days, self.high + days)


def queen_clock(found: Found) -> dict[Milestone, Days]:
    """Tell what follows from a queen cell or virgin found today.

    Parameters
    ----------
    found
        The furthest stage seen: an egg in a cup, a charged cell, a sealed cell, a virgin.

    Returns
    -------
    dict[Milestone, Days]
        For each milestone still ahead: the days from today, as a range because her age within
        the stage is not known.

    References
    ----------
    .. [1] Queen-cell clock of several guides (read); see ``CLOCK``.

    Examples
    --------
    >>> queen_clock("charged")["emerges"]
    Days(low=7.0, high=14.0)

    """
    youngest, oldest = _AGE[found]
    return {
        milestone: Days(max(0.0, day.low - oldest), max(0.0, day.high - youngest))
        for milestone, day in CLOCK.items()
        if day.value > youngest
    }


def emergency_clock() -> dict[Milestone, Days]:
    """Tell what follows from the loss of a queen today, when the bees raise another.

    Returns
    -------
    dict[Milestone, Days]
        Days since the loss.

    References
    ----------
    .. [1] Larvae up to about 36 hours are used (read); the days are computed.

    Examples
    --------
    >>> emergency_clock()["emerges"]
    Days(low=11.0, high=13.0)

    """
    return {milestone: Days(day.low, day.high) for milestone, day in EMERGENCY.items()}


@dataclass(frozen=True, slots=True)
class NucTimeline:
    """When a nuc reaches each stage, in days since it was made; weather can add two weeks."""

    laying: Days
    sealed_brood: Days
    own_bees: Days
    saleable: Days


def nuc_timeline(route: Route) -> NucTimeline:
    """Tell when a nuc made today can be sold.

    A typical queen lays 14 to 21 days after she emerges; the buyer should see three weeks of
    her brood. Poor mating weather adds up to two weeks more.

    Parameters
    ----------
    route
        What the nuc is given: a mated queen, a ripe cell (graft and 10 days), a virgin of 1 to 3
        days, a charged cell, or eggs only (walk-away).

    Returns
    -------
    NucTimeline
        Ranges in good weather. [days since the nuc was made]

    References
    ----------
    .. [1] Trade sheet C16 to C18 (stage days read, the sums computed).

    Examples
    --------
    >>> nuc_timeline("ripe cell").saleable
    Days(low=37.0, high=45.0)

    """
    if route == "mated queen":
        laying = Days(MATED_QUEEN_LAYS.low, MATED_QUEEN_LAYS.high)
    else:
        low, high = _EMERGES[route]
        laying = Days(low + EMERGENCE_TO_LAYING.low, high + EMERGENCE_TO_LAYING.high)
    return NucTimeline(
        laying=laying,
        sealed_brood=laying.later(EGG_TO_SEALED_DAYS),
        own_bees=laying.later(EGG_TO_ADULT_DAYS),
        saleable=laying.later(LAYING_BEFORE_SALE_DAYS),
    )


ACCEPTANCE = Parameter(0.7, "share of grafts", 0.55, 0.95, "trade sheet 5.6", "common practice")
EMERGENCE = Parameter(0.9, "share of sealed cells", 0.8, 0.98, "trade sheet 5.6", "from memory")
MATING = Parameter(
    0.7, "share of virgins", 0.3, 0.95, "US training note, 70 % return; 30-95 % seen", "read"
)
ESTABLISHMENT = Parameter(0.9, "share of nucs", 0.8, 1.0, "trade sheet 5.6", "from memory")


def grafts_per_nuc(acceptance: float = ACCEPTANCE.value, mating: float = MATING.value) -> float:
    """Grafts to make for each nuc wanted.

    Parameters
    ----------
    acceptance
        Share of grafts that become sealed cells; 1 counts from sealed cells.
    mating
        Share of virgins that come to lay.

    Returns
    -------
    float
        Grafts (or sealed cells) for one nuc.

    References
    ----------
    .. [1] Trade sheet 5.6: about 2.5 grafts, 1.8 sealed cells (computed from read and
       remembered rates).

    Examples
    --------
    >>> round(grafts_per_nuc(), 1), round(grafts_per_nuc(acceptance=1), 1)
    (2.5, 1.8)

    """
    remedy = "Give 70 % as 0.7."
    taken = within(acceptance, 0.01, 1, "The share accepted", remedy=remedy)
    mated = within(mating, 0.01, 1, "The share that mates", remedy=remedy)
    return float(1 / (taken * EMERGENCE.value * mated * ESTABLISHMENT.value))

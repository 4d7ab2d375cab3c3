"""What was forecast for a visit beside what was seen at it, and how good that was."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtri

from combwright.belief.numbers import number
from combwright.belief.weighing.filter import Belief
from combwright.belief.weighing.observation import EYE, looked_at
from combwright.terms.entries import Visit
from combwright.terms.ranked import quantile
from combwright.terms.streams import stream

Floats = NDArray[np.float64]
Notes = Mapping[str, Sequence[tuple[date, float]]]
SCORED: Final = (
    "frames_of_bees",
    "seams_of_bees",
    "frames_of_brood",
    "combs_with_brood",
    "stores_kg",
)
RUNGS: Final = 100
LADDER: Final = (np.arange(RUNGS) + 0.5) / RUNGS
LATELY: Final = int(number("surprise_notes"))
AS_FORESEEN: Final = number("surprise_as_foreseen")
STEADY: Final = number("surprise_steady")
LEAST_RANK: Final = number("surprise_least")
WIDEST: Final = number("surprise_widest")
LONGEST_TREND_DAYS: Final = int(number("longest_trend"))


@dataclass(frozen=True, slots=True)
class Scored:
    """One quantity of one visit beside what was forecast for it.

    ``ladder`` holds evenly spaced quantiles of what the keeper was expected to note; ``last_time``
    and ``trend`` the two rules of thumb, where there were notes enough for them.
    """

    colony: str
    on: date
    quantity: str
    seen: float
    ladder: Floats
    last_time: float | None
    trend: float | None = None

    @property
    def crps(self) -> float:
        """How far off the forecast was, in the unit of the quantity."""
        return crps(self.ladder, self.seen, fair=False)

    def within(self, share: float) -> bool:
        """Tell whether what was seen lay in the middle band that holds a share of the members."""
        low, high = quantile(self.ladder, 0.5 - share / 2.0, 0.5 + share / 2.0)
        return bool(low <= self.seen <= high)


def surprise(scored: Sequence[Scored]) -> float:
    """Tell how many times further off than foreseen the last notes lay, from 1 on.

    The larger of two: the root mean square of their normal scores, after some values that lay as
    foreseen; and what lies steadily on one side, the most of any quantity.

    """
    last = sorted({each.on for each in scored})[-LATELY:]
    scores: dict[str, list[float]] = {}
    for each in scored:
        if each.on in last:
            scores.setdefault(each.quantity, []).append(_normal_score(each))
    every = np.array([score for some in scores.values() for score in some])
    spread = ((np.square(every).sum() + AS_FORESEEN) / (len(every) + AS_FORESEEN)) ** 0.5
    steady = [abs(sum(some)) / (len(some) + STEADY) ** 0.5 for some in scores.values()]
    return float(np.clip(max([spread, *steady]), 1.0, WIDEST))


def _normal_score(scored: Scored) -> float:
    rank = np.searchsorted(scored.ladder, scored.seen) / RUNGS
    return float(ndtri(np.clip(rank, LEAST_RANK, 1.0 - LEAST_RANK)))


def crps(members: Floats, seen: float, *, fair: bool = True) -> float:
    r"""Continuous ranked probability score of an ensemble against one value.

    .. math:: \frac{1}{M}\sum|x_i - y| - \frac{1}{2M(M-1)}\sum\sum|x_i - x_j|

    with :math:`M^2` in place of :math:`M(M-1)` unless fair.

    In the unit of the forecast; 0 is perfect, and a single number scores as its distance. Members
    drawn at random are scored fair; quantiles were not.

    References
    ----------
    .. [1] T. Gneiting and A. Raftery, J. Am. Stat. Assoc. 102, 359-378, 2007,
       doi:10.1198/016214506000001437 (from memory; agrees with the package scoringrules).

    Examples
    --------
    >>> round(crps(np.array([1.0, 2.0, 4.0]), 3.0), 6)
    0.333333

    """
    ordered = np.sort(members)
    count = len(ordered)
    apart = np.abs(ordered - seen).mean()
    if count < 2:
        return float(apart)
    places = 2.0 * np.arange(count) - count + 1.0
    pairs = count * (count - 1.0) if fair else count * float(count)
    return float(apart - (places * ordered).sum() / pairs)


def noted(visit: Visit, frame_of_stores_kg: float) -> dict[str, float]:
    """Give the quantities that a visit noted, in the forecast's terms."""
    seen = {name: getattr(visit, name) for name in SCORED}
    if visit.stores_kg is None and visit.frames_of_stores is not None:
        seen["stores_kg"] = visit.frames_of_stores * frame_of_stores_kg
    return {name: value for name, value in seen.items() if value is not None}


def straight_trend(notes: Sequence[tuple[date, float]], on: date) -> float | None:
    """Draw the line through the last two notes out to a day; never below zero.

    Examples
    --------
    >>> straight_trend([(date(2026, 4, 1), 3.0), (date(2026, 4, 8), 4.0)], date(2026, 4, 15))
    5.0

    """
    if len(notes) < 2 or (on - notes[-2][0]).days > LONGEST_TREND_DAYS:
        return None
    (first, before), (last, now) = notes[-2], notes[-1]
    days = (last - first).days
    if days <= 0:
        return None
    return max(0.0, now + (now - before) / days * (on - last).days)


def ladder_of(values: Floats) -> Floats:
    """Give the ladder of an ensemble: as NumPy's quantiles, but sorted once, ten times as fast."""
    ordered = np.sort(values)
    at = (len(ordered) - 1) * LADDER
    below = np.floor(at).astype(np.intp)
    low, high = ordered[below], ordered[np.minimum(below + 1, len(ordered) - 1)]
    share = at - below
    apart = high - low  # from the nearer end, as NumPy does
    return np.where(share < 0.5, low + apart * share, high - apart * (1.0 - share))


def score(
    belief: Belief, visits: Sequence[Visit], notes: Notes, frame_of_stores_kg: float, seed: int
) -> list[Scored]:
    """Set what was seen at visits beside what was forecast for them."""
    scored = []
    expected = looked_at(belief.colonies, belief.shared, empty_kg=0.0)
    for visit in visits:
        for quantity, value in noted(visit, frame_of_stores_kg).items():
            earlier = notes.get(quantity, ())
            rng = stream(seed, belief.colony, "forecast", quantity, visit.on.toordinal())
            ladder = ladder_of(EYE[quantity].draw(expected[quantity], rng))
            last = earlier[-1][1] if earlier else None
            trend = straight_trend(earlier, visit.on)
            scored.append(Scored(belief.colony, visit.on, quantity, value, ladder, last, trend))
    return scored

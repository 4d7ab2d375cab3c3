"""Simulation-based calibration: where the truth ranks among the members that stand for it.

References
----------
S. Talts, M. Betancourt, D. Simpson, A. Vehtari and A. Gelman, "Validating Bayesian Inference
Algorithms with Simulation-Based Calibration", 2018, arXiv:1804.06788 (read via secondary sources).
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import numpy as np
from scipy.stats import chi2
from tests.validation.belief.keeper import Floats, Habits, State, ahead, believed, live

from combwright.belief.weighing.filter import QUANTITIES
from combwright.terms.streams import stream

WATCHED: Final = ("frames_of_bees", "frames_of_brood", "stores_kg", "mites")
LEADS: Final = (1, 7, 21)
BINS: Final = 10
Show = Callable[[State], Floats]


@dataclass(frozen=True)
class Rank:
    """Share of members below the truth, ties broken at random, and which notes led there."""

    quantity: str
    lead: int
    every_days: int
    missing: float
    share: float


def ranks_of(number: int, habits: Habits, *, members: int = 200, narrow: float = 1.0) -> list[Rank]:
    """Follow one simulated colony to a visit of its season, and rank the truth there.

    ``narrow`` shrinks the members about their mean: a control that must fail when below one.
    """
    truth = live(f"colony {number}", 700_000 + number, habits)
    rng = stream(number, "which visit")
    on, state = truth.states[int(rng.integers(3, len(truth.states)))]
    after = on + timedelta(days=1)
    replay, years = believed(truth, after, members=members)
    today = truth.onward(state, on, 1)
    found = []
    for lead in LEADS:
        true = today if lead == 1 else truth.onward(today, after, lead)
        days = 0 if lead == 1 else lead
        drawn = ahead(replay, years, truth.name, after, days=days)
        for quantity in WATCHED:
            value = float(QUANTITIES[quantity](true)[0])
            values = QUANTITIES[quantity](drawn)
            values = values.mean() + narrow * (values - values.mean())
            below = (values < value).sum() + rng.random() * ((values == value).sum() + 1)
            share = float(below) / (len(values) + 1)
            found.append(Rank(quantity, lead, habits.every_days, habits.missing, share))
    return found


def coverage(shares: Floats, band: float) -> float:
    """Share of truths within the middle band."""
    return float((np.abs(shares - 0.5) <= band / 2.0).mean())


def misfit(shares: Floats, bins: int = BINS) -> tuple[float, float]:
    """Chi-square of the rank histogram against a flat one, and its chance if all is well."""
    counts, _ = np.histogram(shares, bins, (0.0, 1.0))
    expected = len(shares) / bins
    found = float(((counts - expected) ** 2 / expected).sum())
    return found, float(chi2.sf(found, bins - 1))


def by_quantity(ranks: list[Rank]) -> Mapping[tuple[str, int], Floats]:
    """Gather shares by quantity and lead."""
    keys = [(quantity, lead) for lead in LEADS for quantity in WATCHED]
    return {key: np.array([r.share for r in ranks if (r.quantity, r.lead) == key]) for key in keys}


def schedule(number: int) -> Habits:
    """Notes every 7, 14, 21 or 10 days, with and without gaps, from early spring to high summer."""
    every = (7, 14, 21, 10)[number % 4]
    rng = stream(number, "schedule")
    return Habits(
        every_days=every,
        missing=0.3 if number % 8 >= 4 else 0.0,
        visits=max(6, 110 // every),
        first_day=int(rng.integers(75, 150)),
    )

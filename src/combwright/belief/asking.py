"""What the keeper is asked when notes clash with what was expected."""

from collections.abc import Sequence
from typing import Final

import numpy as np

from combwright.belief.causes import CAUSES, MISCOUNTED
from combwright.belief.filter import Belief
from combwright.belief.scoring import Scored
from combwright.belief.weights import quantiles

SUSPECTED: Final = 0.5  # chance of an unseen cause from which the keeper is asked
SURPRISED: Final = 0.01  # tail of the forecast beyond which the keeper is asked


def questions(scored: Sequence[Scored], after: Belief) -> tuple[str, ...]:
    """Ask the keeper, in plain words, about notes that what was expected does not explain."""
    causes = {cause.name: cause.in_words for cause in CAUSES}
    likely = [
        f"{causes[name]} ({chance:.0%})"
        for name, chance in sorted(after.chances.items(), key=lambda item: -item[1])
        if name in causes and chance >= 0.1
    ]
    suspected = sum(chance for name, chance in after.chances.items() if name != MISCOUNTED)
    asked = [_asked(score, likely) for score in scored if _is_surprise(score)]
    if not asked and suspected >= SUSPECTED:
        asked = [f"From what you saw, {' or '.join(likely)}. Is that so?"]
    return tuple(asked)


def _is_surprise(score: Scored) -> bool:
    sd = {"frames_of_bees": 0.8, "frames_of_brood": 0.8, "stores_kg": 1.5}[score.quantity]
    low, high = np.quantile(score.members, (SURPRISED / 2.0, 1.0 - SURPRISED / 2.0))
    return bool(score.seen < low - sd or score.seen > high + sd)


def _asked(score: Scored, likely: Sequence[str]) -> str:
    even = np.full(len(score.members), 1.0 / len(score.members))
    low, high = quantiles(score.members, even, (0.05, 0.95))
    what, unit = {
        "frames_of_bees": ("frames of bees", ""),
        "frames_of_brood": ("frames of brood", ""),
        "stores_kg": ("of stores", " kg"),
    }[score.quantity]
    said = f"The book expected {low:.0f} to {high:.0f}{unit} {what}, you saw {score.seen:g}{unit}"
    return f"{said}: {', '.join([*likely, 'or miscounted'])}?"

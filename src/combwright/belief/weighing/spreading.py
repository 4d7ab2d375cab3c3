"""Moving members apart after resampling, all their quantities together.

Copies of one member would stay copies in what does not change by chance, and the belief would
grow surer than its notes allow. Members are therefore drawn a little towards their mean and
scattered by as much, with the covariances that they have: what goes with what is kept.
"""

from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.numbers import number
from combwright.belief.sharing.shared import EYES, OTHERWISE
from combwright.belief.weighing.weights import moved_apart
from combwright.simulation.columns import LAYING, TRAITS

Floats = NDArray[np.float64]

SHRINK: Final = number("shrink")
FEWEST: Final = number("kind_fewest")
# Picking anew loses about one part in the effective members, half of all at worst, of the variance,
# and moves the middle by as much again: so many parts in all members are given back.
LOST: Final = number("lost")
LEAST_SHARE: Final = number("least_share")
NEXT_TO_NOTHING: Final = 1e-6  # so that what nobody has still has a logarithm
MOST_LOG: Final = 1.0
# Groups of columns that move together, so that each colony stays in proportion.
SCALED: Final = (
    ("nest", "foragers", "winter"),
    ("eggs", "larvae"),
    ("sealed",),
    ("ripe", "super_ripe"),
    ("mites", "mites_worker", "mites_drone"),
    ("pollen",),
    ("invaders",),
)
GROUPS: Final = (*((trait,) for trait in (*TRAITS, "rearing")), *SCALED)


def spread_out(colonies: Any, shared: Any, shrink: float, rng: np.random.Generator) -> None:
    """Move members apart in place, each kind by its own spread.

    Kinds differ in whether a queen lays and in how the keeper is taken to count; what is too rare
    for a spread of its own goes with all the others.

    ``shrink`` is the share of each deviation that is kept. [-]
    """
    kinds = kinds_of(colonies, shared)
    before = _features(colonies, shared)
    after = before.copy()
    for kind in kinds:
        after[kind] = moved_apart(before[kind], shrink, rng, wider=LOST / max(kind.sum(), 1))
    factors = np.exp(np.clip(after - before, -MOST_LOG, MOST_LOG))
    for place, columns in enumerate(GROUPS):
        factor = factors[:, place]
        for column in columns:
            values = colonies[column]
            colonies[column] = values * (factor if values.ndim == 1 else factor[:, None])
    for place, eye in enumerate(EYES, len(GROUPS)):
        shared[eye] = after[:, place]


def kinds_of(colonies: Any, shared: Any) -> list[NDArray[np.bool_]]:
    """Tell kinds of members apart, [kind][member]; too few of one go with the most of another."""
    code = (colonies["queen"] == LAYING).astype(np.int64)
    for name in OTHERWISE:
        code = 2 * code + (shared[name] > 0.0)
    counts = np.bincount(code)
    code[counts[code] < FEWEST] = counts.argmax()
    return [code == one for one in np.flatnonzero(np.bincount(code))]


def _features(colonies: Any, shared: Any) -> Floats:
    """Logarithms of what is moved, [member, quantity]."""
    totals = np.stack([_total(colonies, columns) for columns in GROUPS], axis=1)
    logs = np.log(np.maximum(totals, LEAST_SHARE * totals.mean(axis=0) + NEXT_TO_NOTHING))
    return np.concatenate([logs, np.stack([shared[eye] for eye in EYES], axis=1)], axis=1)


def _total(colonies: Any, columns: tuple[str, ...]) -> Floats:
    parts = [colonies[column] for column in columns]
    return np.asarray(sum(part if part.ndim == 1 else part.sum(axis=1) for part in parts))

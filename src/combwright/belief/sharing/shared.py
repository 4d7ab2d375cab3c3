"""What a colony shares with its neighbours: the district's flow this year, the keeper's eye.

Each member of a belief lives in one version of the year, and takes for granted one way in which
its keeper counts. Both are learned from the notes along with the colony itself; ``pooling`` then
lets neighbours learn them from each other.
"""

from collections.abc import Mapping
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.numbers import PARAMETERS, number

EYES: Final = ("bees_eye", "brood_eye", "stores_eye")
SHARED: Final = np.dtype([("year", np.int64), *((eye, np.float64) for eye in EYES)])
EYE_SPREAD: Final = PARAMETERS["eye_spread"]
NEW_YEARS: Final = number("new_years")


def draw_shared(
    members: int,
    versions: int,
    rng: np.random.Generator,
    *,
    middle: Mapping[str, float] | None = None,
    spread: Mapping[str, float] | None = None,
) -> NDArray[np.void]:
    """Draw what members take for granted, [member].

    ``middle`` and ``spread`` are what neighbours have taught of the keeper's eye, as logarithms.
    """
    shared = np.zeros(members, dtype=SHARED)
    shared["year"] = rng.permutation(np.arange(members) % versions)
    for eye in EYES:
        at = (middle or {}).get(eye, 0.0)
        sd = (spread or {}).get(eye, EYE_SPREAD.value)
        shared[eye] = rng.normal(at, sd, members)
    return shared


def renew(shared: Any, versions: int, rng: np.random.Generator) -> None:
    """Let some members take up another version of the year, in place."""
    other = rng.random(len(shared)) < NEW_YEARS
    shared["year"] = np.where(other, rng.integers(0, versions, len(shared)), shared["year"])

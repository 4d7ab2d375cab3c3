"""What a colony shares with its neighbours: the district's flow this year, the keeper's eye.

Each member of a belief lives in one version of the year, and takes for granted one way in which
its keeper counts: by how much the eye is out, and whether what was counted is what the heading
says. All are learned from the notes along with the colony itself; ``pooling`` then lets neighbours
learn them from each other.
"""

from collections.abc import Mapping
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import expit, logit

from combwright.belief.numbers import PARAMETERS, number

EYE_SPREAD: Final = PARAMETERS["eye_spread"]
# Spreads of the keeper's eye; how seams or combs differ from their curves is a part of its own.
EYES: Final = {
    "bees_eye": EYE_SPREAD,
    "brood_eye": EYE_SPREAD,
    "stores_eye": EYE_SPREAD,
    "seams_eye": PARAMETERS["seams_spread"],
    "combs_eye": PARAMETERS["combs_spread"],
}
OTHERWISE: Final = ("bees_otherwise", "brood_otherwise")  # 1 where counted the other way
SHARED: Final = np.dtype(
    [("year", np.int64), *((name, np.float64) for name in (*EYES, *OTHERWISE))]
)
NEW_YEARS: Final = number("new_years")


def draw_shared(
    members: int,
    versions: int,
    rng: np.random.Generator,
    *,
    middle: Mapping[str, float] | None = None,
    spread: Mapping[str, float] | None = None,
    doubts: Mapping[str, float] | None = None,
) -> NDArray[np.void]:
    """Draw what members take for granted, [member].

    ``middle`` and ``spread`` are what neighbours have taught of the keeper's eye, as logarithms;
    ``doubts`` the chances that each is counted otherwise than its heading says.
    """
    shared = np.zeros(members, dtype=SHARED)
    shared["year"] = rng.permutation(np.arange(members) % versions)
    for eye, usual in EYES.items():
        at = (middle or {}).get(eye, 0.0)
        sd = (spread or {}).get(eye, usual.value)
        shared[eye] = rng.normal(at, sd, members)
    for name, chance in (doubts or {}).items():
        told = expit(logit(chance) + (middle or {}).get(name, 0.0))
        shared[name] = rng.random(members) < told
    return shared


def renew(shared: Any, versions: int, rng: np.random.Generator) -> None:
    """Let some members take up another version of the year, in place."""
    other = rng.random(len(shared)) < NEW_YEARS
    shared["year"] = np.where(other, rng.integers(0, versions, len(shared)), shared["year"])

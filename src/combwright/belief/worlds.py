"""The worlds that members of a belief live in: besides its traits, each has a set of numbers.

No one set of the model's numbers is right; ``simulation.worlds`` gives those that nothing
published rules out. The notes weigh worlds as they weigh members, a few members take up another
world at a note, and colonies of one keeper teach each other which worlds hold.
"""

from collections.abc import Mapping, Sequence
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.numbers import number
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.worlds import worlds

Floats = NDArray[np.float64]
WORLDS: Final[tuple[Biology, ...]] = (BIOLOGY, *worlds())
NAMES: Final = tuple(f"world {place}" for place in range(len(WORLDS)))
NEW_WORLDS: Final = number("new_worlds")
AS_EVEN: Final = number("world_as_even")
MOST: Final = number("world_most")


def draw_worlds(members: int, taught: Mapping[str, float], rng: np.random.Generator) -> Floats:
    """Draw the worlds of members, [member]: evenly, or as neighbours have taught. [log weight]."""
    weights = np.exp([taught.get(name, 0.0) for name in NAMES])
    ladder = np.cumsum(weights / weights.sum())
    points = (rng.random() + np.arange(members)) / members
    drawn = np.minimum(np.searchsorted(ladder, points), len(WORLDS) - 1)
    return np.asarray(rng.permutation(drawn), dtype=np.float64)


def renew_worlds(colonies: Any, rng: np.random.Generator) -> None:
    """Let some members take up another world, in place."""
    other = rng.random(len(colonies)) < NEW_WORLDS
    colonies["world"] = np.where(
        other, rng.integers(0, len(WORLDS), len(colonies)), colonies["world"]
    )


def shares(colonies: Any) -> dict[str, float]:
    """Give the share of members in each world."""
    counts = np.bincount(colonies["world"].astype(np.int64), minlength=len(WORLDS))
    return {name: float(count) / len(colonies) for name, count in zip(NAMES, counts, strict=True)}


def taught_by(told: Sequence[Mapping[str, float]]) -> dict[str, float]:
    """Add up what colonies say of each world, whole logarithms: coarse, so that it seldom changes.

    Shares are drawn to even ones, because they are those of few members.
    """
    even = 1.0 / len(WORLDS)
    part = np.array([[each.get(name, even) for name in NAMES] for each in told])
    drawn = (part + AS_EVEN * even) / (1.0 + AS_EVEN)
    weights = np.log(drawn / even).sum(axis=0)
    return dict(zip(NAMES, np.clip(np.round(weights), -MOST, MOST).tolist(), strict=True))

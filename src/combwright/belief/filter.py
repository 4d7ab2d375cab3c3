"""The particle filter: what is believed of one colony, and how a note changes it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.causes import CAUSES, ELSE_CHANCE, MISCOUNTED
from combwright.belief.weights import Weights, systematic
from combwright.simulation import observe
from combwright.simulation.columns import TRAITS
from combwright.simulation.luck import stream

Floats = NDArray[np.float64]
LogLikelihood = Callable[[Any], Floats]

SHRINK: Final = 0.985  # Liu & West 2001: keeps mean and variance of what is jittered
# Groups of columns that are jittered together, so that each colony stays in proportion.
SCALED: Final = (
    ("nest", "foragers", "winter"),
    ("eggs", "larvae"),
    ("sealed",),
    ("ripe", "super_ripe"),
    ("mites", "mites_worker", "mites_drone"),
    ("pollen",),
    ("invaders",),
)


@dataclass(frozen=True)
class Belief:
    """What is believed of a colony in the morning of a day: evenly weighted members.

    ``chances`` holds the chance of each unseen cause at the last note, ``questions`` what the
    keeper is asked because the notes clash.
    """

    colony: str
    on: date
    colonies: NDArray[np.void]
    last_note: date
    log_evidence: float = 0.0
    chances: Mapping[str, float] = field(default_factory=dict)
    questions: tuple[str, ...] = ()

    @property
    def members(self) -> int:
        """How many simulated colonies stand for the real one."""
        return len(self.colonies)


def update(
    belief: Belief,
    log_likelihood: LogLikelihood,
    fresh: NDArray[np.void],
    *,
    seed: int,
) -> Belief:
    """Weigh the members by a note, offer unseen causes, and resample.

    Parameters
    ----------
    belief
        The belief before the note.
    log_likelihood
        From records of the state to the log-likelihood of the note, [member].
    fresh
        Members begun from the note itself, for the case that something else happened.
    seed
        Seed of the run.

    Returns
    -------
    Belief
        The belief after the note, evenly weighted.

    """
    rng = stream(seed, belief.colony, "note", belief.on.toordinal())
    days = max(1.0, float((belief.on - belief.last_note).days))
    offered, log_prior, cause = _offer(belief, fresh, days, rng)
    weights = Weights(log_prior).times(log_likelihood(offered))
    chances = {
        name: float(weights.normal[cause == number].sum())
        for number, name in enumerate(_names())
        if number
    }
    ancestors = systematic(weights.normal, belief.members, float(rng.random()))
    colonies = offered[ancestors].copy()
    spread_out(colonies, rng)
    return replace(
        belief,
        colonies=colonies,
        last_note=belief.on,
        log_evidence=belief.log_evidence + max(weights.log_sum, -1e6),
        chances=chances,
    )


def _names() -> tuple[str, ...]:
    return ("none", *(cause.name for cause in CAUSES), MISCOUNTED)


def _offer(
    belief: Belief, fresh: NDArray[np.void], days: float, rng: np.random.Generator
) -> tuple[NDArray[np.void], Floats, NDArray[np.intp]]:
    """All versions of all members, their prior log-weights and the number of their cause."""
    day = belief.on.timetuple().tm_yday
    weeks = min(days / 7.0, 6.0)
    versions, chances = [belief.colonies], [0.0]
    for cause in CAUSES:
        chance = min(0.2, cause.weekly(day) * weeks)
        version = belief.colonies.copy()
        cause.happen(version, days, rng)
        versions.append(version)
        chances.append(chance)
    versions.append(fresh)
    chances.append(ELSE_CHANCE)
    chances[0] = 1.0 - sum(chances)
    sizes = [len(version) for version in versions]
    with np.errstate(divide="ignore"):
        each = np.log(np.array(chances)) - np.log(sizes)
    number = np.repeat(np.arange(len(versions)), sizes)
    return np.concatenate(versions), each[number], number


def spread_out(colonies: Any, rng: np.random.Generator) -> None:
    """Move members apart after resampling, in place, keeping means and variances.

    References
    ----------
    .. [1] J. Liu and M. West, in "Sequential Monte Carlo Methods in Practice", Springer, 2001
       (kernel shrinkage; from memory).

    """
    spread = np.sqrt(1.0 - SHRINK**2)
    for columns in (*((trait,) for trait in TRAITS), *SCALED):
        total = sum(_total(colonies, column) for column in columns)
        logs = np.log(np.maximum(np.asarray(total), 1e-6))
        sd = float(logs.std())
        if sd < 1e-9:
            continue
        moved = SHRINK * logs + (1.0 - SHRINK) * logs.mean()
        moved += spread * sd * rng.standard_normal(len(logs))
        factor = np.exp(np.clip(moved - logs, -1.0, 1.0))
        for column in columns:
            values = colonies[column]
            colonies[column] = values * (factor if values.ndim == 1 else factor[:, None])


def _total(colonies: Any, column: str) -> Floats:
    values = colonies[column]
    return np.asarray(values if values.ndim == 1 else values.sum(axis=1))


QUANTITIES: Final[Mapping[str, Callable[[Any], Floats]]] = {
    "frames_of_bees": observe.frames_of_bees,
    "frames_of_brood": observe.frames_of_brood,
    "stores_kg": observe.stores_kg,
    "room_cells": lambda colonies: np.asarray(colonies["room"]),
    "mites": observe.mites,
}

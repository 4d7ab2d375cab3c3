"""The particle filter: what is believed of one colony, and how a note changes it.

One note: every member is offered as it is and in the versions of what may have happened unseen,
all are weighed by the note, as many as before are picked, and those are moved a little apart.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.causes import CAUSES, ELSE_CHANCE, Since, chances_of
from combwright.belief.shared import renew
from combwright.belief.spreading import SHRINK, spread_out
from combwright.belief.weights import pick
from combwright.simulation import observe
from combwright.simulation.luck import stream

Floats = NDArray[np.float64]
LogLikelihood = Callable[[Any, Any, NDArray[np.bool_]], Floats]

LEAST_LOG: Final = -1e6  # so that a note which nothing explains leaves a finite evidence


@dataclass(frozen=True)
class Belief:
    """What is believed of a colony in the morning of a day: evenly weighted members.

    ``shared`` holds what each member takes for granted beyond the colony itself (the year's flow,
    the keeper's eye), ``since`` how each member stood at the last note, ``chances`` the chance of
    each trouble that nobody noted, ``questions`` what the keeper is asked because notes clash.
    """

    colony: str
    on: date
    colonies: NDArray[np.void]
    shared: NDArray[np.void]
    since: Since
    last_note: date
    log_evidence: float = 0.0
    chances: Mapping[str, float] = field(default_factory=dict)
    questions: tuple[str, ...] = ()

    @property
    def members(self) -> int:
        """How many simulated colonies stand for the real one."""
        return len(self.colonies)


@dataclass(frozen=True)
class Offered:
    """All versions of all members: their records, weights before the note, and where from."""

    colonies: NDArray[np.void]
    shared: NDArray[np.void]
    since: Since
    log_prior: Floats
    fresh: NDArray[np.bool_]


def update(
    belief: Belief,
    log_likelihood: LogLikelihood,
    fresh: NDArray[np.void],
    *,
    versions: int,
    seed: int,
) -> Belief:
    """Offer what may have happened, weigh it by a note, pick, and spread out.

    Parameters
    ----------
    belief
        The belief before the note.
    log_likelihood
        From records of the state, of what is shared, and whether each was begun from the note
        itself, to the log-likelihood of the note, [offered].
    fresh
        Members begun from the note itself, for the case that something else happened.
    versions
        How many versions of the year there are.
    seed
        Seed of the run.

    Returns
    -------
    Belief
        The belief after the note, evenly weighted.

    """
    rng = stream(seed, belief.colony, "note", belief.on.toordinal())
    offered = offer(belief, fresh, rng)
    likely = log_likelihood(offered.colonies, offered.shared, offered.fresh)
    picked = pick(offered.log_prior, likely, belief.members, float(rng.random()))
    colonies = offered.colonies[picked.ancestors].copy()
    shared = offered.shared[picked.ancestors].copy()
    chances = chances_of(colonies, offered.since.of(picked.ancestors))
    spread_out(colonies, shared, SHRINK, rng)
    renew(shared, versions, rng)
    return replace(
        belief,
        colonies=colonies,
        shared=shared,
        since=Since.now(colonies),
        last_note=belief.on,
        log_evidence=belief.log_evidence + max(picked.log_evidence, LEAST_LOG),
        chances=chances,
    )


def offer(belief: Belief, fresh: NDArray[np.void], rng: np.random.Generator) -> Offered:
    """Give all members as they are and in the version of each cause, and members begun afresh."""
    days = max(1.0, float((belief.on - belief.last_note).days))
    day = belief.on.timetuple().tm_yday
    versions, chances = [belief.colonies], [0.0]
    for cause in CAUSES:
        version = belief.colonies.copy()
        cause.happen(version, days, rng)
        versions.append(version)
        chances.append(cause.within(day, days))
    count = belief.members
    lanes = np.tile(np.arange(count), len(versions))
    if len(fresh):
        versions.append(fresh)
        chances.append(ELSE_CHANCE)
        lanes = np.concatenate([lanes, rng.integers(0, count, len(fresh))])
    chances[0] = 1.0 - sum(chances)
    sizes = [len(version) for version in versions]
    with np.errstate(divide="ignore"):  # a cause may be out of season
        each = np.log(np.array(chances) / np.array(sizes))
    return Offered(
        np.concatenate(versions),
        belief.shared[lanes],
        belief.since.of(lanes),
        np.repeat(each, sizes),
        np.repeat(np.arange(len(sizes)) > len(CAUSES), sizes),
    )


QUANTITIES: Final[Mapping[str, Callable[[Any], Floats]]] = {
    "frames_of_bees": observe.frames_of_bees,
    "frames_of_brood": observe.frames_of_brood,
    "stores_kg": observe.stores_kg,
    "room_cells": lambda colonies: np.asarray(colonies["room"]),
    "mites": observe.mites,
}

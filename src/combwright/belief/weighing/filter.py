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

from combwright.belief.following.causes import CAUSES, ELSE_CHANCE, Since, chances_of, of_lanes
from combwright.belief.numbers import number
from combwright.belief.sharing.shared import renew
from combwright.belief.weighing.spreading import SHRINK, spread_out
from combwright.belief.weighing.weights import Weights, gentle_share, pick
from combwright.belief.worlds import renew_worlds
from combwright.simulation import observe
from combwright.simulation.columns import joined
from combwright.terms.streams import stream

Floats = NDArray[np.float64]
LogLikelihood = Callable[[Any, Any, NDArray[np.bool_]], Floats]

GENTLE: Final = number("gentle")
TRIED: Final = 2  # each cause is tried on every second member, for speed
LEAST_LOG: Final = -1e6  # so that a note which nothing explains leaves a finite evidence


@dataclass(frozen=True)
class Belief:
    """What is believed of a colony in the morning of a day: evenly weighted members.

    ``shared`` holds what each member takes for granted beyond the colony itself (the year's flow,
    the keeper's eye), ``since`` how each member stood at the last two notes, ``chances`` the chance
    of each trouble since then that nobody noted, ``questions`` what the keeper is asked.
    """

    colony: str
    on: date
    colonies: NDArray[np.void]
    shared: NDArray[np.void]
    since: tuple[Since, Since]
    last_note: date
    log_evidence: float = 0.0
    chances: Mapping[str, float] = field(default_factory=dict)
    questions: tuple[str, ...] = ()

    @property
    def members(self) -> int:
        """How many simulated colonies stand for the real one."""
        return len(self.colonies)

    def every(self, step: int) -> "Belief":
        """Thin the members; neighbours among them have ancestors that are alike."""
        lanes = np.arange(0, self.members, step)
        return replace(
            self,
            colonies=self.colonies.take(lanes),
            shared=self.shared.take(lanes),
            since=of_lanes(self.since, lanes),
        )


@dataclass(frozen=True)
class Offered:
    """All versions of all members: their records, weights before the note, and where from."""

    colonies: NDArray[np.void]
    shared: NDArray[np.void]
    since: tuple[Since, Since]
    log_prior: Floats
    fresh: NDArray[np.bool_]

    def of(self, lanes: NDArray[np.intp]) -> "Offered":
        """Give those of some lanes, evenly weighted."""
        even = Weights.even(len(lanes)).log
        return Offered(
            self.colonies.take(lanes),
            self.shared.take(lanes),
            of_lanes(self.since, lanes),
            even,
            self.fresh[lanes],
        )


def update(
    belief: Belief,
    log_likelihood: LogLikelihood,
    fresh: NDArray[np.void],
    *,
    versions: int,
    seed: int,
) -> Belief:
    """Offer what may have happened, weigh it by a note, pick, and spread out.

    ``log_likelihood`` goes from records of the state, of what is shared, and whether each was begun
    from the note itself, to the log-likelihood of the note, [offered]; ``fresh`` are members begun
    from the note itself, for the case that something else happened.
    """
    rng = stream(seed, belief.colony, "note", belief.on.toordinal())
    now = offer(belief, fresh, rng)
    evidence, left = 0.0, 1.0
    while left > 0.0:
        likely = log_likelihood(now.colonies, now.shared, now.fresh)
        share = gentle_share(now.log_prior, left * likely, GENTLE * belief.members)
        picked = pick(now.log_prior, left * share * likely, belief.members, float(rng.random()))
        evidence += max(picked.log_evidence, LEAST_LOG)
        now = now.of(picked.ancestors)
        spread_out(now.colonies, now.shared, SHRINK, rng)
        left *= 1.0 - share
    renew(now.shared, versions, rng)
    renew_worlds(now.colonies, rng)
    return replace(
        belief,
        colonies=now.colonies,
        shared=now.shared,
        since=(now.since[1], Since.now(now.colonies)),
        last_note=belief.on,
        log_evidence=belief.log_evidence + evidence,
        chances=chances_of(now.colonies, now.since[0]),
    )


def offer(belief: Belief, fresh: NDArray[np.void], rng: np.random.Generator) -> Offered:
    """Give all members as they are and in the version of each cause, and members begun afresh."""
    days = max(1.0, float((belief.on - belief.last_note).days))
    day = belief.on.timetuple().tm_yday
    everyone = np.arange(belief.members)
    versions, chances, lanes = [belief.colonies], [0.0], [everyone]
    for cause in CAUSES:
        chance = cause.within(day, days)
        if chance > 0.0:
            lanes.append(everyone[::TRIED])
            versions.append(belief.colonies.take(lanes[-1]))
            cause.happen(versions[-1], days, rng)
            chances.append(chance)
    made_up = len(versions)
    if len(fresh):
        versions.append(fresh)
        chances.append(ELSE_CHANCE)
        lanes.append(rng.integers(0, belief.members, len(fresh)))
    chances[0] = 1.0 - sum(chances)
    sizes = [len(version) for version in versions]
    each = np.log(np.array(chances) / np.array(sizes))
    ancestors = np.concatenate(lanes)
    return Offered(
        joined(versions),
        belief.shared.take(ancestors),
        of_lanes(belief.since, ancestors),
        np.repeat(each, sizes),
        np.repeat(np.arange(len(sizes)) >= made_up, sizes),
    )


QUANTITIES: Final[Mapping[str, Callable[[Any], Floats]]] = {
    "frames_of_bees": observe.frames_of_bees,
    "frames_of_brood": observe.frames_of_brood,
    "stores_kg": observe.stores_kg,
    "room_cells": lambda colonies: np.asarray(colonies["room"]),
    "mites": observe.mites,
}

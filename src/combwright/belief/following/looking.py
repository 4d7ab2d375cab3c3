"""Taking in what was seen on a day."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from combwright.belief.following.asking import questions
from combwright.belief.following.entering import described, doubt_rearing
from combwright.belief.following.followed import Followed
from combwright.belief.numbers import number
from combwright.belief.scoring import score, surprise
from combwright.belief.weighing import observation
from combwright.belief.weighing.filter import Belief, update
from combwright.belief.weighing.otherwise import gone_otherwise
from combwright.simulation.begin import begin
from combwright.simulation.columns import STATE
from combwright.terms.entries import Noted, TrayCount, Visit, WashCount
from combwright.terms.streams import stream

Floats = NDArray[np.float64]
Seen = Visit | TrayCount | WashCount


def look(followed: Followed, entries: Iterable[Noted], *, versions: int, seed: int) -> Followed:
    """Take in what was seen on a day: score the forecast, weigh the members, ask the keeper."""
    entries = list(entries)
    seen = [entry for entry in entries if isinstance(entry, Visit | TrayCount | WashCount)]
    if all(isinstance(entry, Visit) and not observation.says(entry) for entry in seen):
        return followed.remember(entries)
    wider = surprise(followed.scored)
    followed = replace(followed, belief=_gone_otherwise(followed.belief, wider, seed))
    visits = [entry for entry in seen if isinstance(entry, Visit)]
    frame_kg = followed.standing.hive.frame.stores_full_kg
    scored = score(followed.belief, visits, followed.notes, frame_kg, seed)
    fresh = _afresh(followed, visits, seed)
    after = update(
        followed.belief,
        lambda *offered: likelihood(seen, *offered, empty_kg=followed.standing.empty_kg),
        fresh,
        versions=versions,
        seed=seed,
    )
    after = replace(after, questions=questions(scored, after))
    followed = replace(followed, belief=after, scored=(*followed.scored, *scored))
    return followed.remember(entries)


def _gone_otherwise(belief: Belief, wider: float, seed: int) -> Belief:
    """Allow for what the model has wrong in the days since the last note."""
    rng = stream(seed, belief.colony, "otherwise", belief.on.toordinal())
    days = float((belief.on - belief.last_note).days)
    return replace(belief, colonies=gone_otherwise(belief.colonies, days, rng, wider=wider))


def likelihood(
    seen: Iterable[Seen], colonies: Any, shared: Any, fresh: Any, *, empty_kg: float
) -> Floats:
    """Log-likelihood of all that was seen, [member]; independent notes, in any order."""
    total = np.zeros(len(colonies))
    for entry in seen:
        if isinstance(entry, Visit):
            by_eye = observation.of_visit(entry, colonies, shared, empty_kg=empty_kg)
            # members begun from the note itself must not be praised for agreeing with it
            total += np.where(fresh, observation.of_anything(entry), by_eye)
        elif isinstance(entry, TrayCount):
            total += observation.of_tray(entry, colonies)
        else:
            total += observation.of_wash(entry, colonies)
    return total


def _afresh(followed: Followed, visits: list[Visit], seed: int) -> NDArray[np.void]:
    """Begin members from the note itself, for the case that nothing else explains it."""
    before = followed.belief
    if not any(visit.frames_of_bees is not None for visit in visits):
        return np.zeros(0, dtype=STATE)
    known = described(visits, None, followed.standing.hive.frame.stores_full_kg)
    fresh = begin(
        followed.standing.hive,
        followed.standing.set_up,
        known,
        on=before.on,
        members=int(max(number("afresh_least"), before.members // number("afresh_one_in"))),
        seed=seed + before.on.toordinal(),
        colony=before.colony,
    )
    own = stream(seed, before.colony, "afresh", before.on.toordinal())
    doubt_rearing(fresh, own)
    fresh["world"] = own.choice(before.colonies["world"], len(fresh))
    return fresh

"""How a colony enters: as its first notes describe it, spread over what is not known."""

from collections.abc import Sequence
from typing import Any

import numpy as np

from combwright.belief.following.causes import Since
from combwright.belief.following.followed import Followed
from combwright.belief.sharing.pooling import Pooled
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.filter import Belief
from combwright.kit.catalogue import Catalogue
from combwright.kit.evening import arrived
from combwright.simulation.begin import Described, begin
from combwright.terms.entries import Colony, Noted, Visit
from combwright.terms.streams import stream


def described(visits: Sequence[Visit], queen_year: int | None, frame_kg: float) -> Described:
    """Read from a visit what is known of a colony."""
    if not visits:
        return Described(queen_year=queen_year)
    visit = visits[-1]
    stores = visit.stores_kg
    if stores is None and visit.frames_of_stores is not None:
        stores = frame_kg * visit.frames_of_stores
    has_queen = True if visit.eggs or visit.queen_seen else None
    return Described(
        frames_of_bees=visit.frames_of_bees,
        frames_of_brood=visit.frames_of_brood,
        stores_kg=stores,
        queen_year=queen_year,
        has_queen=has_queen,
    )


def enter(
    entry: Colony,
    entries: Sequence[Noted],
    catalogue: Catalogue,
    *,
    members: int,
    versions: int,
    seed: int,
    pooled: Pooled,
) -> Followed:
    """Begin a colony from the entries of its first day."""
    hive = catalogue.hive(entry.hive)
    standing = arrived(hive, entries, catalogue)
    visits = [each for each in entries if isinstance(each, Visit)]
    known = described(visits, entry.queen_year, hive.frame.stores_full_kg)
    colonies = begin(
        standing.hive,
        standing.set_up,
        known,
        on=entry.on,
        members=members,
        seed=seed,
        colony=entry.colony,
    )
    rng = stream(seed, entry.colony, "shared")
    shared = draw_shared(members, versions, rng, middle=pooled.middle, spread=pooled.spread)
    see_through(colonies, shared, known)
    pooled.teach(colonies)
    now = Since.now(colonies)
    belief = Belief(entry.colony, entry.on, colonies, shared, (now, now), entry.on)
    return Followed(belief, standing, entry.yard).remember(entries)


def see_through(colonies: Any, shared: Any, known: Described) -> None:
    """Allow in place for the eye of the keeper who described the colonies."""
    scales = (
        (known.frames_of_bees, "bees_eye", ("nest", "foragers", "winter")),
        (known.frames_of_brood, "brood_eye", ("eggs", "larvae", "sealed", "mites_worker")),
        (known.stores_kg, "stores_eye", ("ripe", "super_ripe")),
    )
    for value, eye, columns in scales:
        if value is None:
            continue
        factor = np.exp(-shared[eye])
        for column in columns:
            held = colonies[column]
            colonies[column] = held * (factor if held.ndim == 1 else factor[:, None])

"""How a colony enters: as its first notes describe it, spread over what is not known."""

from collections.abc import Collection, Mapping, Sequence
from typing import Any, Final

import numpy as np

from combwright.belief.following.causes import Since
from combwright.belief.following.followed import Followed
from combwright.belief.numbers import number
from combwright.belief.sharing.pooling import Pooled
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.counting import OTHER, counted, in_frames
from combwright.belief.weighing.filter import Belief
from combwright.belief.worlds import draw_worlds
from combwright.kit.catalogue import Catalogue
from combwright.kit.evening import arrived
from combwright.simulation.begin import Described, begin
from combwright.terms.entries import Colony, Noted, Visit
from combwright.terms.streams import stream

NEXT_TO_NOTHING: Final = 1e-6  # so that nothing does not divide by nothing


def described(visits: Sequence[Visit], queen_year: int | None, frame_kg: float) -> Described:
    """Read from a visit what is known of a colony."""
    if not visits:
        return Described(queen_year=queen_year)
    visit = visits[-1]
    others = counted_as_other(visits)
    bees, brood, stores = visit.frames_of_bees, visit.frames_of_brood, visit.stores_kg
    if "seams_of_bees" in others:
        bees = in_frames("seams_of_bees", visit.seams_of_bees or 0.0)
    if "combs_with_brood" in others:
        brood = in_frames("combs_with_brood", visit.combs_with_brood or 0.0)
    if stores is None and visit.frames_of_stores is not None:
        stores = frame_kg * visit.frames_of_stores
    has_queen = True if visit.eggs or visit.queen_seen else None
    return Described(
        frames_of_bees=bees,
        frames_of_brood=brood,
        stores_kg=stores,
        queen_year=queen_year,
        has_queen=has_queen,
        brood_sd=number("combs_described" if "combs_with_brood" in others else "brood_described"),
    )


def doubt_rearing(colonies: Any, rng: np.random.Generator) -> None:
    """Spread in place what a nurse rears, in which published colonies differ most."""
    sd = number("rearing_spread")
    colonies["rearing"] = np.exp(rng.normal(-0.5 * sd * sd, sd, len(colonies)))


def counted_as_other(visits: Sequence[Visit]) -> frozenset[str]:
    """Tell what the last visit gives in seams or combs only."""
    if not visits:
        return frozenset()
    seen = visits[-1]
    return frozenset(
        other
        for frames, other in OTHER.items()
        if getattr(seen, frames) is None and getattr(seen, other) is not None
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
    doubts: Mapping[str, float] | None = None,
) -> Followed:
    """Begin a colony from the entries of its first day.

    ``doubts`` are the chances that each is counted otherwise than its heading says.
    """
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
    doubt_rearing(colonies, stream(seed, entry.colony, "rearing"))
    own = stream(seed, entry.colony, "worlds")
    colonies["world"] = draw_worlds(len(colonies), pooled.middle, own)
    rng = stream(seed, entry.colony, "shared")
    shared = draw_shared(
        members, versions, rng, middle=pooled.middle, spread=pooled.spread, doubts=doubts
    )
    see_through(colonies, shared, known, counted_as_other(visits))
    pooled.teach(colonies)
    now = Since.now(colonies)
    belief = Belief(entry.colony, entry.on, colonies, shared, (now, now), entry.on)
    return Followed(belief, standing, entry.yard).remember(entries)


# What is seen, by whose eye, which way of counting it has, and what of a colony goes by it.
SEEN: Final = {
    "frames_of_bees": ("bees_eye", "bees_otherwise", ("nest", "foragers", "winter")),
    "frames_of_brood": (
        "brood_eye",
        "brood_otherwise",
        ("eggs", "larvae", "sealed", "mites_worker"),
    ),
    "stores_kg": ("stores_eye", "", ("ripe", "super_ripe")),
}
EYE_OF_OTHER: Final = {"seams_of_bees": "seams_eye", "combs_with_brood": "combs_eye"}


def see_through(
    colonies: Any, shared: Any, known: Described, others: Collection[str] = frozenset()
) -> None:
    """Allow in place for the eye of the keeper who described the colonies, and the way of counting.

    ``others`` holds what of it was counted as seams or combs.
    """
    for name, (eye, otherwise, columns) in SEEN.items():
        value = getattr(known, name)
        if value is None:
            continue
        factor = np.exp(-shared[eye])
        if otherwise:
            other = OTHER[name]
            if other in others:
                factor *= np.exp(-shared[EYE_OF_OTHER[other]])
            as_other = counted(other, value) if other in others else in_frames(other, value)
            factor *= np.where(shared[otherwise] > 0.0, as_other / max(value, NEXT_TO_NOTHING), 1.0)
        for column in columns:
            held = colonies[column]
            colonies[column] = held * (factor if held.ndim == 1 else factor[:, None])

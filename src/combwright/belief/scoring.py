"""What was forecast for a visit beside what was seen at it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np
from numpy.typing import NDArray

from combwright.belief.filter import QUANTITIES, Belief
from combwright.terms.entries import Visit

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Scored:
    """One quantity of one visit beside what was forecast for it."""

    colony: str
    on: date
    quantity: str
    seen: float
    members: Floats
    last_time: float | None


def noted(visit: Visit, frame_of_stores_kg: float) -> dict[str, float]:
    """Give the quantities that a visit noted, in the forecast's terms."""
    seen = {
        "frames_of_bees": visit.frames_of_bees,
        "frames_of_brood": visit.frames_of_brood,
        "stores_kg": visit.stores_kg,
    }
    if visit.stores_kg is None and visit.frames_of_stores is not None:
        seen["stores_kg"] = visit.frames_of_stores * frame_of_stores_kg
    return {name: value for name, value in seen.items() if value is not None}


def score(
    belief: Belief,
    visits: Sequence[Visit],
    notes: Mapping[str, Sequence[tuple[date, float]]],
    frame_of_stores_kg: float,
) -> list[Scored]:
    """Set what was seen at visits beside what was forecast for them."""
    scored = []
    for visit in visits:
        for quantity, value in noted(visit, frame_of_stores_kg).items():
            earlier = notes.get(quantity, ())
            last = earlier[-1][1] if earlier else None
            members = QUANTITIES[quantity](belief.colonies)
            scored.append(Scored(belief.colony, visit.on, quantity, value, members, last))
    return scored

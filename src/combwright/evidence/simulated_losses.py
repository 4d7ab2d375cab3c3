"""How many colonies are lost, and of what, by how they are kept."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.evidence.simulated_lives import SEED
from combwright.evidence.simulated_yards import SimulatedYard
from combwright.simulation.begin import Described
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.columns import CAUSES, LAYING
from combwright.simulation.hands.keeper import Keeping
from combwright.terms.set_up import SetUp

COLONIES: Final = 100
PLACES: Final = ("Dublin Airport", "Sheffield")
NOBODY: Final = Keeping(
    feeding="none",
    treating="usual",
    supers=False,
    adds_frames=False,
    swarm_control=False,
    requeens=False,
    young_queens=False,
)


@dataclass(frozen=True)
class Way:
    """A way of keeping colonies: how they begin, how they are kept, for how many winters."""

    first: date
    described: Described
    set_up: SetUp
    keeping: Keeping
    winters: int


IN_AUGUST: Final = Described(frames_of_bees=11.0, stores_kg=14.0, mites=200.0, queen_year=2026)
WAYS: Final[Mapping[str, Way]] = {
    "careful": Way(date(2026, 8, 1), IN_AUGUST, SetUp(frames=11), Keeping(), 4),
    "unfed": Way(
        date(2026, 3, 20),
        Described(frames_of_bees=6.5, stores_kg=10.0, mites=40.0, queen_year=2025),
        SetUp(frames=11, supers=1, excluder=False),
        NOBODY,
        4,
    ),
    "untreated": Way(date(2026, 8, 1), IN_AUGUST, SetUp(frames=11), Keeping(treating="none"), 3),
    "nuc": Way(
        date(2026, 8, 15),
        Described(frames_of_bees=5.0, stores_kg=9.0, mites=80.0, queen_year=2026),
        SetUp(frames=6),
        Keeping(supers=False),
        1,
    ),
    "small and late": Way(
        date(2026, 9, 1),
        Described(frames_of_bees=3.0, stores_kg=5.0, mites=50.0, queen_year=2026),
        SetUp(frames=5),
        Keeping(supers=False),
        1,
    ),
}


@dataclass(frozen=True)
class Losses:
    """Of the colonies that had a queen on 1 October, what was lost by 1 April, by winter."""

    lost: tuple[float, ...]
    queenless: tuple[float, ...]
    causes: Mapping[str, int]


@cache
def losses(way: str, worlds: tuple[Biology, ...] = (BIOLOGY,)) -> Losses:
    """Let colonies live as one way has it, in two climates, each in one of the worlds."""
    kept = WAYS[way]
    lost, queenless = np.zeros((2, kept.winters)), np.zeros((2, kept.winters))
    causes = dict.fromkeys(CAUSES.values(), 0)
    for place in PLACES:
        states = _by_season(place, kept, worlds)
        for winter in range(kept.winters):
            before, after = states[2 * winter], states[2 * winter + 1]
            sound = (before["lost_to"] == 0.0) & (before["queen"] == LAYING)
            died = sound & (after["lost_to"] > 0.0)
            no_queen = sound & ~died & (after["queen"] != LAYING)
            lost[:, winter] += (died.sum(), sound.sum())
            queenless[:, winter] += (no_queen.sum(), sound.sum())
            for code, name in CAUSES.items():
                causes[name] += int((died & (after["lost_to"] == code)).sum())
    shares = (lost[0] / lost[1], queenless[0] / queenless[1])
    return Losses(tuple(shares[0].tolist()), tuple(shares[1].tolist()), causes)


def _by_season(place: str, way: Way, worlds: tuple[Biology, ...]) -> list[NDArray[np.void]]:
    """Give the colonies as they stand on each 1 October and 1 April."""
    year = way.first.year
    stops = [
        day for n in range(way.winters) for day in (date(year + n, 10, 1), date(year + n + 1, 4, 1))
    ]
    days = (stops[-1] - way.first).days
    yard = SimulatedYard(place, place, way.first, days, COLONIES, SEED, way.set_up)
    colonies = yard.begin(way.described)
    colonies["world"] = np.arange(COLONIES) % len(worlds)
    found, begins = [], 0
    for stop in stops:
        part = slice(begins, (stop - way.first).days)
        yard.keep_part(colonies, way.keeping, part, SEED + part.start, worlds)
        found.append(colonies.copy())
        begins = part.stop
    return found


def lost_in_winter(way: str, winters: Sequence[int] = (1,)) -> float:
    """Share lost in some winters, dead or without a queen in spring, of those sound in autumn."""
    found = losses(way)
    return float(
        np.mean([found.lost[winter - 1] + found.queenless[winter - 1] for winter in winters])
    )

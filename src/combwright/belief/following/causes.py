"""What may have happened unseen between two visits, and how a colony would then look.

At each note every member is also offered in the version in which one of these happened; what the
note speaks against disappears. The chance of a trouble is then the share of members that are in
it and were not at the note before, whether the model or one of these causes brought them there.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from combwright.simulation import observe
from combwright.simulation.columns import CAGED, CELL, LAYING, QUEENLESS, VIRGIN

EMERGES_ON = 16.0
MATES_BY = 24.0
MOST_CHANCE: Final = 0.2
MOST_DAYS: Final = 42.0
# Swarm cells: with an egg in them they are overlooked for some days, and soon after they are sealed
# the swarm is gone; in weak colonies they seldom come to that. All judgement.
OVERLOOKED_DAYS: Final = 2.0
OLDEST_DAYS: Final = 9.0
TOO_WEAK: Final = 7.0  # frames of bees below which cells seldom mean a swarm


@dataclass(frozen=True, slots=True)
class Cause:
    """Something that nobody noted: its name, its chance in a week by season, and what it does.

    What began longer ago than ``most_days`` would stand otherwise by now.
    """

    name: str
    weekly: Callable[[int], float]
    happen: Callable[[Any, float, np.random.Generator], None]
    most_days: float = MOST_DAYS

    def within(self, day_of_year: int, days: float) -> float:
        """Give the chance that it happened within some days up to a day of the year."""
        return min(MOST_CHANCE, self.weekly(day_of_year) * min(days, self.most_days) / 7.0)


def _swarm_season(day_of_year: int) -> float:
    """Chance in a week of an unseen swarm, beyond those that the model makes; judgement."""
    return float(np.interp(day_of_year, (100, 125, 165, 200, 225), (0.0, 0.02, 0.03, 0.01, 0.0)))


def _cells_season(day_of_year: int) -> float:
    """Chance in a week of swarm cells beyond those that the model makes; judgement."""
    return float(np.interp(day_of_year, (100, 125, 165, 200, 225), (0.0, 0.04, 0.05, 0.02, 0.0)))


def _queen_risk(_: int) -> float:
    return 0.004


def _robbing_season(day_of_year: int) -> float:
    return float(
        np.interp(day_of_year, (60, 190, 220, 285, 310), (0.001, 0.002, 0.01, 0.01, 0.001))
    )


def swarm(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let a swarm have left at an unknown day since the last note, in place."""
    members = len(colonies)
    share = rng.uniform(0.5, 0.85, members)
    ago = rng.uniform(0.0, max(days, 1.0), members)
    for column in ("nest", "foragers", "winter", "mites"):
        colonies[column] *= 1.0 - share
    colonies["ripe"] = np.maximum(0.0, colonies["ripe"] - rng.uniform(200.0, 700.0, members))
    colonies["swarmed"] += 1.0
    _leave_queenless(colonies, ago, 8.5)


def begin_cells(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let bees with a laying queen have begun swarm cells at an unknown day, in place."""
    oldest = min(days + OVERLOOKED_DAYS, OLDEST_DAYS)
    age = np.ceil(rng.uniform(0.0, oldest, len(colonies)))
    may = (colonies["queen"] == LAYING) & (colonies["swarm_clock"] == 0.0)
    may &= observe.frames_of_bees(colonies) >= TOO_WEAK
    colonies["swarm_clock"] = np.where(may, age, colonies["swarm_clock"])


def lose_queen(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let the queen have been lost at an unknown day since the last note, in place."""
    ago = rng.uniform(0.0, max(days, 1.0), len(colonies))
    _leave_queenless(colonies, ago, 4.0)


def _leave_queenless(colonies: Any, ago: Any, cell_age: float) -> None:
    """Take back what the queen laid since she left, and set the clock of her successors."""
    for day in range(3):
        colonies["eggs"][:, day] *= ago < day + 0.5
    for day in range(6):
        colonies["larvae"][:, day] *= ago < day + 3.5
    for day in range(12):
        colonies["sealed"][:, day] *= ago < day + 9.5
    clock = ago + cell_age
    virgin = clock - EMERGES_ON
    laying = virgin > MATES_BY
    colonies["queen"] = np.where(virgin < 0.0, CELL, np.where(laying, LAYING, VIRGIN))
    colonies["queen_clock"] = np.where(virgin < 0.0, clock, virgin)
    colonies["queen_age"] = np.where(laying, virgin - MATES_BY, 0.0)
    colonies["mating_flights"] = 0.0
    colonies["swarm_clock"] = 0.0


def fail_queen(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let a virgin have failed to mate, or a queen have gone without a successor, in place."""
    ago = rng.uniform(0.0, max(days, 1.0), len(colonies))
    _leave_queenless(colonies, ago, 4.0)
    colonies["queen"] = QUEENLESS
    colonies["larvae"][:, :2] = 0.0
    colonies["eggs"] = 0.0


def robbers(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let robbers have taken most of the stores, in place."""
    left = rng.uniform(0.03, 0.5, len(colonies))
    for column in ("ripe", "unripe", "water", "super_ripe", "super_syrup"):
        colonies[column] *= left
    colonies["robbed"] += 1.0
    del days


CAUSES: Final = (
    Cause("swarmed", _swarm_season, swarm),
    Cause("cells begun", _cells_season, begin_cells, OLDEST_DAYS),
    Cause("queen lost", _queen_risk, lose_queen),
    Cause("queen failed", _queen_risk, fail_queen),
    Cause("robbed", _robbing_season, robbers),
)
ELSE_CHANCE: Final = 0.004  # a note that none of these explains: something else, or a slip
# Chance of each trouble from which the keeper is asked about it: judgement, set so that four of
# five are noticed within two visits while fewer than one quiet month in ten raises a question.
ASKED_FROM: Final = {"swarmed": 0.3, "queen lost": 0.15, "robbed": 0.15}
IN_WORDS: Final = {
    "swarmed": "it may have swarmed",
    "queen lost": "it may be without a laying queen",
    "robbed": "it may have been robbed",
}


@dataclass(frozen=True)
class Since:
    """How each member stood at the last note, so that what came since can be told, [member]."""

    swarms: Any
    robberies: Any
    laying: Any

    @classmethod
    def now(cls, colonies: Any) -> "Since":
        """Take how members stand now."""
        return cls(
            colonies["swarmed"].copy(), colonies["robbed"].copy(), colonies["queen"] == LAYING
        )

    def of(self, lanes: Any) -> "Since":
        """Give how the ancestors of some lanes stood."""
        return Since(self.swarms[lanes], self.robberies[lanes], self.laying[lanes])


def of_lanes(since: tuple[Since, Since], lanes: Any) -> tuple[Since, Since]:
    """Give how the ancestors of some lanes stood at the last two notes."""
    return since[0].of(lanes), since[1].of(lanes)


def chances_of(colonies: Any, since: Since) -> dict[str, float]:
    """Chance of each trouble that nobody noted: the share of members that came into it."""
    swarmed = colonies["swarmed"] > since.swarms
    queen_gone = (colonies["queen"] != LAYING) & (colonies["queen"] != CAGED) & ~swarmed
    robbed = colonies["robbed"] > since.robberies
    was_laying = float(since.laying.mean())
    return {
        "swarmed": float(swarmed.mean()),
        "queen lost": float((queen_gone & (since.laying | (was_laying > 0.5))).mean()),
        "robbed": float(robbed.mean()),
    }

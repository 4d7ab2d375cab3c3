"""What may have happened unseen between two visits, and how a colony would then look.

At each note every member is also offered in the version in which one of these happened; what the
note speaks against disappears. The chance of a trouble is then the share of members that are in
it and were not at the note before, whether the model or one of these causes brought them there.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any, Final

import numpy as np

from combwright.belief.numbers import WEEK_DAYS, number, on_day
from combwright.science.colony.brood import STAGE_DAYS
from combwright.simulation import observe
from combwright.simulation.columns import (
    CAGED,
    CELL,
    DRONE_LAYER,
    LAYING,
    LAYING_WORKERS,
    QUEENLESS,
    VIRGIN,
)

EMERGES_ON: Final = number("emerges_on")
MATES_BY: Final = number("mates_by")
OLDEST_DAYS: Final = number("oldest_days")
TOO_WEAK: Final = number("too_weak")
EGGS_STAND: Final = STAGE_DAYS["worker"].egg.value
DRONES: Final = ("drone_open", "drone_sealed")


@dataclass(frozen=True, slots=True)
class Cause:
    """Something that nobody noted: its name, its chance in a week by season, and what it does.

    What began longer ago than ``most_days`` would stand otherwise by now.
    """

    name: str
    weekly: Callable[[int], float]
    happen: Callable[[Any, float, np.random.Generator], None]
    most_days: float = number("most_days")

    def within(self, day_of_year: int, days: float) -> float:
        """Give the chance that it happened within some days up to a day of the year."""
        weeks = min(days, self.most_days) / WEEK_DAYS
        return min(number("most_chance"), self.weekly(day_of_year) * weeks)


def _queen_risk(_: int) -> float:
    return number("queen_lost_weekly")


def swarm(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let a swarm have left at an unknown day since the last note, in place."""
    members = len(colonies)
    share = rng.uniform(number("swarm_share_low"), number("swarm_share_high"), members)
    ago = rng.uniform(0.0, max(days, 1.0), members)
    for column in ("nest", "foragers", "winter", "mites"):
        colonies[column] *= 1.0 - share
    taken = rng.uniform(number("swarm_sugar_low"), number("swarm_sugar_high"), members)
    colonies["ripe"] = np.maximum(0.0, colonies["ripe"] - taken)
    colonies["swarmed"] += 1.0
    _leave_queenless(colonies, ago, number("swarm_cell_age"))


def begin_cells(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let bees with a laying queen have begun swarm cells at an unknown day, in place."""
    oldest = min(days + number("overlooked_days"), OLDEST_DAYS)
    age = np.ceil(rng.uniform(0.0, oldest, len(colonies)))
    may = (colonies["queen"] == LAYING) & (colonies["swarm_clock"] == 0.0)
    may &= observe.frames_of_bees(colonies) >= TOO_WEAK
    colonies["swarm_clock"] = np.where(may, age, colonies["swarm_clock"])


def lose_queen(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let the queen have been lost at an unknown day, in place.

    Since the last note, or so shortly before it that her eggs still stood then.
    """
    ago = rng.uniform(0.0, max(days, 1.0) + EGGS_STAND, len(colonies))
    _leave_queenless(colonies, ago, number("emergency_cell_age"))


def _leave_queenless(colonies: Any, ago: Any, cell_age: float) -> None:
    """Take back what the queen laid since she left, and set the clock of her successors."""
    younger = 0
    for column in ("eggs", "larvae", "sealed"):
        ages = colonies[column].shape[1]
        for day in range(ages):
            colonies[column][:, day] *= ago < younger + day + 0.5
        younger += ages
    clock = ago + cell_age
    virgin = clock - EMERGES_ON
    laying = virgin > MATES_BY
    colonies["queen"] = np.where(virgin < 0.0, CELL, np.where(laying, LAYING, VIRGIN))
    colonies["queen_clock"] = np.where(virgin < 0.0, clock, virgin)
    colonies["queen_age"] = np.where(laying, virgin - MATES_BY, 0.0)
    colonies["mating_flights"] = 0.0
    colonies["swarm_clock"] = 0.0


def fail_queen(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let a virgin have failed to mate, or a queen have gone without a successor, in place.

    Some lay drones instead, and where none lays workers may.
    """
    members = len(colonies)
    ago = rng.uniform(0.0, max(days, 1.0), members)
    _leave_queenless(colonies, ago, number("emergency_cell_age"))
    lays, brood = rng.random(members), rng.uniform(0.0, number("drone_brood_unseen"), members)
    drones, workers = number("fails_as_drone_layer"), number("fails_to_laying_workers")
    colonies["queen"] = np.select(
        [lays < drones, lays < drones + workers], [DRONE_LAYER, LAYING_WORKERS], QUEENLESS
    )
    spells = sum(colonies[column].shape[1] for column in DRONES)
    for column in DRONES:
        colonies[column] += (brood * (lays < drones + workers))[:, None] / spells
    colonies["larvae"][:, :2] = 0.0
    colonies["eggs"] = 0.0


def robbers(colonies: Any, days: float, rng: np.random.Generator) -> None:
    """Let robbers have taken most of the stores, in place, where there was something to take."""
    left = rng.uniform(number("robbed_left_low"), number("robbed_left_high"), len(colonies))
    worth = observe.stores_kg(colonies) > number("robbed_worth")
    for column in ("ripe", "unripe", "water", "super_ripe", "super_syrup"):
        colonies[column] *= np.where(worth, left, 1.0)
    colonies["robbed"] += worth
    del days


CAUSES: Final = (
    Cause("swarmed", partial(on_day, "swarmed_weekly"), swarm),
    Cause("cells begun", partial(on_day, "cells_weekly"), begin_cells, OLDEST_DAYS),
    Cause("queen lost", _queen_risk, lose_queen),
    Cause("queen failed", _queen_risk, fail_queen),
    Cause("robbed", partial(on_day, "robbed_weekly"), robbers),
)
ELSE_CHANCE: Final = number("else_chance")
# Chance of each trouble from which the keeper is asked about it.
ASKED_FROM: Final = {
    "swarmed": number("ask_swarmed"),
    "queen lost": number("ask_queen_lost"),
    "robbed": number("ask_robbed"),
}
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
        "queen lost": float(
            (queen_gone & (since.laying | (was_laying > number("laying_likely")))).mean()
        ),
        "robbed": float(robbed.mean()),
    }

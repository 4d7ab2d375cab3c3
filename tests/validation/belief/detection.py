"""Troubles that nobody noted: how often they are suspected, and how often wrongly.

The troubles are made by other rules than the belief's own: a swarm takes six in ten bees and
leaves sealed cells, a queen dies and leaves what she laid, robbers leave a tenth of the stores.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import numpy as np
from tests.validation.belief.keeper import Habits, State, believed, live

from combwright.belief.following.asking import suspected
from combwright.belief.following.causes import ASKED_FROM
from combwright.simulation.columns import CELL, LAYING
from combwright.terms.streams import stream

ENOUGH_G: Final = 3200.0  # 4 kg of honey: of less, robbers take less than the eye can tell
Trouble = Callable[[State, np.random.Generator], None]


def swarm(colonies: State, rng: np.random.Generator) -> None:
    del rng
    for column in ("nest", "foragers", "winter", "mites"):
        colonies[column] *= 0.4
    colonies["ripe"] = np.maximum(0.0, colonies["ripe"] - 400.0)
    colonies["swarmed"] += 1.0
    colonies["queen"], colonies["queen_clock"], colonies["swarm_clock"] = CELL, 12.0, 0.0
    colonies["eggs"] = 0.0


def queen_lost(colonies: State, rng: np.random.Generator) -> None:
    gone = int(rng.integers(1, 7))  # days ago; emergency cells are begun on larvae a day old
    colonies["queen"], colonies["queen_clock"] = CELL, 4.0 + gone
    colonies["swarm_clock"] = 0.0
    colonies["eggs"][:, : min(gone, 3)] = 0.0
    colonies["larvae"][:, : max(0, gone - 3)] = 0.0


def robbed(colonies: State, rng: np.random.Generator) -> None:
    del rng
    for column in ("ripe", "super_ripe", "unripe", "water"):
        colonies[column] *= 0.1
    colonies["robbed"] += 1.0


TROUBLES: Final[dict[str, tuple[Trouble, str, int]]] = {
    "swarm": (swarm, "swarmed", 118),
    "queen loss": (queen_lost, "queen lost", 95),
    "robbing": (robbed, "robbed", 180),
}


@dataclass(frozen=True)
class Case:
    """Whether a trouble was suspected at the first or second visit after it, by its own name."""

    trouble: str
    first: bool
    second: bool
    by_name: bool
    mattered: bool


def case(trouble: str, number: int, **more: float) -> Case:
    """Let one colony suffer one trouble that is not noted."""
    makes, name, first_day = TROUBLES[trouble]
    rng = stream(number, "case", trouble)
    at = int(rng.integers(3, 8))
    day = first_day + int(rng.integers(0, 25)) - 7 * 3
    habits = Habits(
        first_day=day,
        visits=at + 3,
        troubles=False,
        trouble_at={at: makes},
        rounds_to_halves=True,
        missing=more.get("missing", 0.0),
    )
    truth = live(f"{trouble} {number}", 760_000 + number, habits)
    book, _ = believed(truth, truth.states[-1][0] + timedelta(days=1))
    before = truth.states[at - 1][1]
    sound = bool(before["queen"][0] == LAYING)
    sound = sound and (trouble != "robbing" or float(before["ripe"][0]) > ENOUGH_G)
    hits, named = [], False
    for visit in (at, at + 1):
        followed = book.follow(truth.name, truth.states[visit][0] + timedelta(days=1))
        assert followed is not None
        chance = followed.belief.chances
        hits.append(suspected(followed.belief))
        named = named or chance.get(name, 0.0) >= ASKED_FROM[name]
    return Case(trouble, hits[0], hits[0] or hits[1], named, sound)


def quiet_months(number: int) -> list[tuple[bool, bool, bool]]:
    """Watch one colony; for each four weeks in which nothing happened: suspected, asked,
    and whether a value had slipped."""
    rng = stream(number, "quiet")
    habits = Habits(
        first_day=int(rng.integers(80, 200)),
        visits=13,
        troubles=False,
        rounds_to_halves=True,
    )
    truth = live(f"quiet {number}", 820_000 + number, habits)
    book, _ = believed(truth, truth.states[-1][0] + timedelta(days=1))
    months = []
    for start in (1, 5, 9):
        visits = range(start, start + 4)
        states = [truth.states[place][1] for place in range(start - 1, start + 4)]
        happened = states[-1]["swarmed"][0] > 0 or states[-1]["robbed"][0] > 0
        queenless = any(state["queen"][0] != LAYING for state in states)
        if happened or queenless:
            continue
        wrong, asked = False, False
        for visit in visits:
            followed = book.follow(truth.name, truth.states[visit][0] + timedelta(days=1))
            assert followed is not None
            wrong = wrong or suspected(followed.belief)
            asked = asked or bool(followed.belief.questions)
        months.append((wrong, asked, bool(truth.slipped.intersection(visits))))
    return months

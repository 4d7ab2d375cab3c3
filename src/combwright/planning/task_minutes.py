"""Minutes by task: the usual ones, moved by visits of which the keeper noted how long they took.

What a visit takes is its look and so much for each thing done. The usual minutes are what is
believed before; every noted visit moves those of the tasks it held (a linear regression with a
normal prior, its spread a quarter of the plausible range).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np

from combwright.advice.costs import MINUTES, minutes_of
from combwright.advice.kit_acts import Act
from combwright.advice.prices import USUAL
from combwright.terms.data_files import parameter
from combwright.terms.entries import Change, Feed, Noted, Queen, Stack, TrayCount, Treatment, Visit

SPREAD: Final = parameter("planning/planning", "minutes_spread").value
LOOK: Final = "look"
TASKS: Final = (LOOK, *MINUTES)
RANGES: Final = {LOOK: USUAL["minutes_at_a_hive"], **MINUTES}
OF_RANGE: Final = parameter("planning/planning", "spreads_in_range").value
MOVED: Final[Mapping[str, str]] = {
    **dict.fromkeys(("drawn frame", "foundation frame", "brood frame", "stores frame"), "frames"),
    "dummy board": "boards",
    "super": "super",
}
OF_QUEENS: Final[Mapping[str, str]] = {"introduced": "queen", "cells knocked down": "cells"}
DONE: Final[Mapping[type, str]] = {Feed: "feed", Treatment: "treatment", TrayCount: "count"}


@dataclass(frozen=True)
class TaskMinutes:
    """The keeper's own minutes: at a hive, and by task; ``visits`` is how many they rest on."""

    look: float
    tasks: Mapping[str, float]
    visits: int = 0

    def of(self, actions: Iterable[Act]) -> float:
        """Give the minutes at a hive, with what is done there."""
        return self.look + minutes_of(actions, self.tasks)


def usual_minutes(look: float) -> TaskMinutes:
    """Give the usual minutes, with the keeper's own for a look."""
    return TaskMinutes(look, {name: each.value for name, each in MINUTES.items()})


def learned_minutes(entries: Sequence[Noted], look: float) -> TaskMinutes:
    """Move the usual minutes by the visits that say how long they took.

    A visit after which the stack was described anew is left out: it does not say what was moved.
    """
    usual = usual_minutes(look)
    timed = {
        (each.colony, each.on): each.minutes
        for each in entries
        if isinstance(each, Visit) and each.minutes is not None
    }
    if not timed:
        return usual
    done: dict[tuple[str, date], dict[str, float]] = {key: {LOOK: 1.0} for key in timed}
    for each in entries:
        key = (getattr(each, "colony", ""), each.on)
        if key not in done:
            continue
        if isinstance(each, Stack):
            del done[key]
            continue
        task, times = _task(each)
        if task:
            done[key][task] = done[key].get(task, 0.0) + times
    if not done:
        return usual
    work = np.array([[each.get(task, 0.0) for task in TASKS] for each in done.values()])
    took = np.array([timed[key] for key in done], np.float64)
    before = np.array([look, *usual.tasks.values()])
    sure = np.array([OF_RANGE / (RANGES[task].high - RANGES[task].low) for task in TASKS]) ** 2
    weight = work.T @ work / SPREAD**2 + np.diag(sure)
    moved = np.linalg.solve(weight, work.T @ (took - work @ before) / SPREAD**2)
    now = np.maximum(before + moved, 0.0)
    return TaskMinutes(float(now[0]), dict(zip(MINUTES, now[1:].tolist(), strict=True)), len(done))


def _task(entry: Noted) -> tuple[str, float]:
    """Name the task that a note tells of, and how often it was done."""
    if isinstance(entry, Change):
        return MOVED.get(entry.part, ""), float(abs(entry.count))
    if isinstance(entry, Queen):
        return OF_QUEENS.get(entry.event, ""), 1.0
    return DONE.get(type(entry), ""), 1.0

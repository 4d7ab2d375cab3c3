"""One colony over time: what was forecast for each visit, what was seen, and what lies ahead."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any, Final

import numpy as np

from combwright.advice.plan import plan
from combwright.advice.situation import Situation, band
from combwright.advice.trial import Change, given
from combwright.belief.filter import QUANTITIES
from combwright.belief.scoring import SCORED, Scored
from combwright.figures.bands import Course, Seen
from combwright.services.gathering import LOOK_AHEAD_DAYS, Asked, gather
from combwright.simulation.run import run

TITLES: Final[Mapping[str, tuple[str, str]]] = {
    "frames_of_bees": ("Bees", "frames"),
    "frames_of_brood": ("Brood", "frames"),
    "stores_kg": ("Stores", "kg"),
    "mites": ("Mites", ""),
}
FORECAST, PLANNED, NOTHING = "past", "as planned", "nothing done"
MOST: Final = 0.9  # the share of forecasts that the band should hold


@dataclass(frozen=True)
class Quantity:
    """One quantity: its courses by name, and what was noted of it."""

    title: str
    unit: str
    courses: Mapping[str, Course]
    seen: tuple[Seen, ...]


@dataclass(frozen=True, slots=True)
class Score:
    """How good the forecasts of one quantity were, beside the rule “same as last time”."""

    title: str
    unit: str
    count: int
    within: float
    off: float
    last_time_off: float | None


@dataclass(frozen=True)
class Ahead:
    """A colony's past forecasts and the weeks ahead."""

    colony: str
    on: date
    quantities: tuple[Quantity, ...]
    scores: tuple[Score, ...]


def colony_ahead(book: Path, colony: str, on: date, *, members: int = 200, seed: int = 1) -> Ahead:
    """Set past forecasts beside what was seen, and run the colony on under the plan and without.

    Parameters
    ----------
    book
        The book's file.
    colony
        The colony.
    on
        The day from which it is run on; notes before it count.
    members, seed
        As for the round.

    """
    gathered = gather(book, Asked(on, None, members=members, seed=seed))
    followed = gathered.follow(colony)
    situation = gathered.situation(followed)
    advised = plan(situation).advised
    share = advised.sugar_fraction or situation.syrup_fraction
    ways = {
        PLANNED: given(situation, advised.set_up, advised.grams, share),
        NOTHING: given(situation, situation.standing.set_up, 0, share),
    }
    onward = {name: _onward(situation, change) for name, change in ways.items()}
    shown = []
    for name, (title, unit) in TITLES.items():
        mine = [each for each in followed.scored if each.quantity == name]
        past = {FORECAST: _past(mine)} if mine else {}
        seen = tuple(Seen(day, value) for day, value in followed.notes.get(name, ()))
        courses = {**past, **{way: found[name] for way, found in onward.items()}}
        shown.append(Quantity(title, unit, courses, seen))
    scores = tuple(_score(name, followed.scored) for name in SCORED if _of(name, followed.scored))
    return Ahead(colony, on, tuple(shown), scores)


def _onward(situation: Situation, change: Change) -> dict[str, Course]:
    """Let the ensemble live day by day after a change."""
    colonies = situation.colonies.copy()
    change(colonies)
    bands: dict[str, list[tuple[float, float, float]]] = {name: [] for name in TITLES}
    days = []
    for day in range(LOOK_AHEAD_DAYS):
        for name, found in bands.items():
            found.append(_ordered(QUANTITIES[name](colonies)))
        days.append(situation.on + timedelta(days=day))
        now = slice(day, day + 1)
        run(colonies, situation.conditions[:, now], situation.luck[:, now])
    return {name: _course(days, found) for name, found in bands.items()}


def _past(scored: Sequence[Scored]) -> Course:
    by_day = {each.on: _ordered(each.members) for each in scored}
    return _course(list(by_day), list(by_day.values()))


def _ordered(values: Any) -> tuple[float, float, float]:  # noqa: ANN401  (an array of members)
    low, mid, high = band(np.asarray(values, dtype=np.float64))
    return min(low, mid), mid, max(mid, high)


def _course(days: Sequence[date], bands: Sequence[tuple[float, float, float]]) -> Course:
    low, mid, high = zip(*bands, strict=True)
    return Course(days, low, mid, high)


def _of(name: str, scored: Sequence[Scored]) -> list[Scored]:
    return [each for each in scored if each.quantity == name]


def _score(name: str, scored: Sequence[Scored]) -> Score:
    mine = _of(name, scored)
    last = [abs(each.last_time - each.seen) for each in mine if each.last_time is not None]
    return Score(
        *TITLES[name],
        count=len(mine),
        within=sum(each.within(MOST) for each in mine) / len(mine),
        off=sum(each.crps for each in mine) / len(mine),
        last_time_off=sum(last) / len(last) if last else None,
    )

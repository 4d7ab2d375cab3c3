"""Forecasts for colonies that have lived for years before their notes begin.

A colony lives two or three years under the careful keeper, in a world of other rules or in one of
the model's own, then its notes of one season are given to the belief, which is asked 7 and 21 days
ahead. The forage of the true year may run early or late, brood may be counted as combs, a trouble
may come that nobody notes: the belief is told none of it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray
from tests.validation.belief.detection import ENOUGH_G, TROUBLES
from tests.validation.belief.grown import EVERY, VISITS, Untold, grown
from tests.validation.belief.keeper import (
    HIVE,
    Habits,
    State,
    Truth,
    Write,
    Years,
    ahead,
    believed,
)

from combwright.belief.following.acting import act
from combwright.belief.following.asking import suspected
from combwright.belief.following.replay import Replay
from combwright.belief.scoring import crps
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.filter import QUANTITIES, Belief
from combwright.belief.weighing.observation import (
    CELLS_SEEN,
    EYE,
    cells_state,
    chance_of_eggs_found,
    looked_at,
)
from combwright.kit.catalogue import catalogue
from combwright.kit.standing import Standing
from combwright.simulation import observe
from combwright.simulation.columns import LAYING
from combwright.terms.entries import (
    Change,
    Colony,
    Feed,
    Harvest,
    HowCounted,
    Noted,
    Stack,
    Treatment,
    Visit,
)
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream

Floats = NDArray[np.float64]
COUNTED: Final = ("frames_of_bees", "frames_of_brood", "stores_kg")
LEADS: Final = (7, 21)
LEAST_BEES, STRONG, MONTH = 3000.0, 7.0, 4  # bees, frames of bees, visits


@dataclass(frozen=True)
class Forecast:
    """One forecast against the truth: its score, that of the last note, and the truth's rank."""

    quantity: str
    lead: int
    crps: float
    last_time: float
    share: float


@dataclass(frozen=True)
class Outcome:
    """What came of one colony: forecasts, whether its trouble was suspected, its quiet months."""

    forecasts: tuple[Forecast, ...] = ()
    suspected: bool | None = None
    quiet: tuple[bool, ...] = ()  # whether a trouble was wrongly suspected in it


def noted(colonies: State, shared: State, rng: np.random.Generator) -> dict[str, Any]:
    """Look at the colony as the keeper does."""
    expected = looked_at(colonies, shared, empty_kg=0.0)
    seen: dict[str, Any] = {
        name: min(36.0, max(0.0, round(2.0 * float(EYE[name].draw(expected[name], rng)[0])) / 2.0))
        for name in COUNTED
    }
    seen["eggs"] = bool(rng.random() < chance_of_eggs_found(colonies)[0])
    return seen


def cells_noted(colonies: State, rng: np.random.Generator) -> dict[str, str]:
    """Look for queen cells as the keeper does: cups mislead, and young cells are overlooked."""
    table = CELLS_SEEN[cells_state(colonies)[0]]
    return {"queen_cells": str(rng.choice(list(table), p=list(table.values())))}


def work(
    seen: dict[str, Any], colonies: State, standing: Standing, day: int
) -> list[dict[str, Any]]:
    """Give what the keeper does at a visit, by rules of thumb."""
    frames, supers = standing.set_up.frames, standing.set_up.supers
    above = float(observe.honey_above_kg(colonies)[0])
    if day < 215 and seen["frames_of_bees"] > frames - 0.5 and frames < 11:
        return [{"kind": Change, "part": "drawn frame", "count": 1}]
    if day < 205 and seen["frames_of_bees"] > 9.0 and above > 7.0 * supers and supers < 4:
        return [{"kind": Change, "part": "super", "count": 1}]
    if 222 <= day < 222 + EVERY:
        honey = {"kind": Harvest, "honey_kg": round(0.95 * above, 1), "supers": supers}
        return [*([honey] if supers else []), {"kind": Treatment, "substance": "formic acid"}]
    if day > 235 and seen["stores_kg"] < 16.0:
        return [{"kind": Feed, "grams": 4000.0, "sugar_fraction": 0.6}]
    if seen["stores_kg"] < 3.0:
        return [{"kind": Feed, "grams": 1500.0, "sugar_fraction": 0.6}]
    return []


@dataclass(frozen=True)
class Season:
    """A season as it was, and what was written of it: a state, a note, whether work, by visit."""

    truth: Truth
    past: list[State]
    notes: list[dict[str, Any]]
    done: list[bool]
    troubled: int


def season_of(number: int, untold: Untold) -> Season | None:
    """Let a colony live through a season and its keeper write; none where it died or is weak."""
    there = grown(number, untold)
    made, first = there.colonies, there.weather.first
    if observe.adults(made)[0] < LEAST_BEES or made["queen"][0] != LAYING:
        return None
    name, rng = f"elsewhere {number}", stream(number, "eye")
    truth = Truth(name, 990_000 + number, Habits(EVERY, visits=VISITS), there.weather, there.table)
    shared = draw_shared(1, 1, rng)
    shared["brood_otherwise"] = untold.as_combs
    set_up = SetUp(
        frames=int(made["frames"][0]), dummy_boards=int(made["boards"][0]),
        supers=int(made["supers"][0]), excluder=bool(made["supers"][0] > 0),
    )  # fmt: skip
    standing, on = Standing(catalogue().hive(HIVE), set_up), first

    def write(kind: Write, **fields: object) -> Noted:
        key = stream(truth.seed, "id", len(truth.entries)).bytes(16).hex()
        truth.entries.append(kind(id=key, on=on, colony=name, **fields))
        return truth.entries[-1]

    if not untold.as_combs:
        key = stream(truth.seed, "counting").bytes(16).hex()
        said = {"brood": "frames filled", "bees": "frames covered"}
        truth.entries.append(HowCounted.model_validate({"id": key, "on": on, **said}))
    write(Colony, yard="Home", hive=HIVE, queen_year=first.year - 1)
    write(Stack, **set_up.model_dump(include={"frames", "dummy_boards", "supers", "excluder"}))
    past, notes, done = [made.copy()], [noted(made, shared, rng) | {"eggs": True}], [False]
    write(Visit, **notes[0])
    troubled = 0
    for visit in range(1, VISITS):
        there.onward((visit - 1) * EVERY, EVERY)
        on = first + timedelta(days=visit * EVERY)
        if (
            untold.trouble
            and not troubled
            and visit >= 5 + number % 8
            and _may(past[-1], made, untold)
        ):
            TROUBLES[untold.trouble][0](made, rng)
            troubled = visit
        past.append(made.copy())
        notes.append(noted(made, shared, stream(number, "look", visit)))
        if untold.cells:
            notes[-1] |= cells_noted(made, stream(number, "cells", visit))
        write(Visit, **notes[-1])
        tasks = work(notes[-1], made, standing, on.timetuple().tm_yday)
        entries = [write(task.pop("kind"), **task) for task in tasks]
        honey = any(isinstance(entry, Harvest) for entry in entries)
        for entry in entries:
            standing = act(entry, made, standing, catalogue(), rng, harvested=honey)
        done.append(bool(entries))
    return Season(truth, past, notes, done, troubled)


def outcome_of(number: int, untold: Untold) -> Outcome:
    """Follow one colony through a season; score what was foreseen and what was suspected."""
    season = season_of(number, untold)
    if season is None:
        return Outcome()
    name, until = season.truth.name, season.truth.first + timedelta(days=EVERY * VISITS)
    book, _ = believed(season.truth, until)
    after = [found.belief for _, found in book.course(name, until)]
    if untold.trouble:
        at = season.troubled
        seen = any(suspected(belief) for belief in after[at : at + 2])
        return Outcome(suspected=seen if at else None)
    foreseen = tuple(_foreseen(season, book, number % 3))
    return Outcome(foreseen, None, _quiet(after, season.past))


def _may(before: State, colonies: State, untold: Untold) -> bool:
    """Tell whether a trouble would matter: a laying queen, stores worth robbing, bees to swarm.

    The stores must have stood there at the last note already: what came and went between two
    notes nobody can tell.
    """
    laying = bool(colonies["queen"][0] == LAYING)
    strong = untold.trouble != "swarm" or bool(observe.frames_of_bees(colonies)[0] > STRONG)
    rich = (
        untold.trouble != "robbing"
        or min(float(each["ripe"][0]) for each in (before, colonies)) > ENOUGH_G
    )
    return laying and strong and rich


def _quiet(after: Sequence[Belief], past: Sequence[State]) -> tuple[bool, ...]:
    """Tell of each four weeks in which nothing happened whether a trouble was suspected."""
    found = []
    for start in range(1, VISITS - MONTH + 1, MONTH):
        states = past[start - 1 : start + MONTH]
        same = all(states[-1][name][0] == states[0][name][0] for name in ("swarmed", "robbed"))
        if same and all(state["queen"][0] == LAYING for state in states):
            found.append(any(suspected(belief) for belief in after[start : start + MONTH]))
    return tuple(found)


def _foreseen(season: Season, book: Replay, turn: int) -> Iterator[Forecast]:
    """Ask for forecasts at every third visit and hold them against what came."""
    truth, past, notes, done = season.truth, season.past, season.notes, season.done
    for visit in range(4 + turn, VISITS - 1, 3):
        morning = truth.first + timedelta(days=visit * EVERY + 1)
        years = Years(truth, morning, 200, 77)
        for lead in LEADS:
            then = visit + lead // EVERY
            if then >= VISITS or any(done[visit + 1 : then]):
                continue  # what is done meanwhile is not foreseen
            members = ahead(book, years, truth.name, morning, days=lead - 1)
            for quantity in COUNTED:
                values, true = QUANTITIES[quantity](members), QUANTITIES[quantity](past[then])[0]
                last, score = abs(notes[visit][quantity] - true), crps(values, float(true))
                yield Forecast(quantity, lead, score, float(last), place_of(true, values))


def place_of(true: float, values: Floats) -> float:
    """Give the share of members below the truth, half of those that are shown as the same.

    Frames and kilograms are shown to a tenth: brood that is gone and twenty cells are one thing.
    """
    shown, there = np.round(values, 1), round(float(true), 1)
    return float((shown < there).mean() + 0.5 * (shown == there).mean())


HELD, SAVED = 0.85, 0.30  # aims


def missed(found: Sequence[Forecast]) -> list[str]:
    """Name the aims that some forecasts miss."""
    wrong = []
    for lead in LEADS:
        for quantity in COUNTED:
            some = [one for one in found if (one.quantity, one.lead) == (quantity, lead)]
            name = f"{quantity.replace('_', ' ')} at {lead} days"
            held = float(np.mean([abs(one.share - 0.5) <= 0.45 for one in some]))
            if held < HELD:
                wrong.append(f"{name} are held in {held:.0%}")
            saved = 1.0 - sum(one.crps for one in some) / sum(one.last_time for one in some)
            if saved < SAVED:
                wrong.append(f"of {name} {saved:.0%} is saved")
    return wrong


def table(found: Sequence[Forecast]) -> str:
    """Write how often the bands held and what was saved."""
    rows = ["| quantity | days ahead | forecasts | in 90 % | in 50 % | CRPS | saved of last time |"]
    rows.append("|---|---|---|---|---|---|---|")
    for lead in LEADS:
        for quantity in COUNTED:
            some = [one for one in found if (one.quantity, one.lead) == (quantity, lead)]
            off = np.abs(np.array([one.share for one in some]) - 0.5)
            ours, last = (np.mean([getattr(o, n) for o in some]) for n in ("crps", "last_time"))
            name, held = quantity.replace("_", " "), f"{(off <= 0.45).mean():.0%}"
            half = f"{(off <= 0.25).mean():.0%}"
            saved = f"{ours:.2f} | {1.0 - ours / last:.0%}"
            rows.append(f"| {name} | {lead} | {len(some)} | {held} | {half} | {saved} |")
    return "\n".join(rows)

"""The belief in another world: forecasts for colonies that live by rules unlike the model's own.

A colony lives two or three years in ``OtherWorld`` under the careful keeper, then its notes of one
season are given to the belief, which is asked 7 and 21 days ahead. With ``shift`` the forage of the
true year runs early or late, which the belief is not told.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any, Final

import numpy as np
import pytest
from tests.validation.belief.keeper import (
    HIVE,
    PLACE,
    Habits,
    State,
    Truth,
    Write,
    Years,
    ahead,
    believed,
)
from tests.validation.worlds.other_world import OtherWorld

from combwright.belief.following.acting import act
from combwright.belief.scoring import crps
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.filter import QUANTITIES
from combwright.belief.weighing.observation import EYE, chance_of_eggs_found, looked_at
from combwright.kit.catalogue import catalogue
from combwright.kit.standing import Standing
from combwright.services.weather.surroundings import DISTRICT
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.columns import LAYING
from combwright.simulation.hands import keeper
from combwright.simulation.luck import luck
from combwright.simulation.run import Trace
from combwright.simulation.step.remembered import TRACED
from combwright.terms.entries import Change, Colony, Feed, Harvest, Noted, Stack, Treatment, Visit
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.terms.weather import DailyWeather
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

EVERY, VISITS, START = 7, 24, date(2022, 8, 1)
COUNTED: Final = ("frames_of_bees", "frames_of_brood", "stores_kg")
LEADS: Final = (7, 21)
SERIES: Final = ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")


@dataclass(frozen=True)
class Forecast:
    """One forecast against the truth: its score, that of the last note, and the truth's rank."""

    quantity: str
    lead: int
    crps: float
    last_time: float
    share: float


@dataclass
class Elsewhere:
    """A colony of the other world with the days before it."""

    colonies: State
    world: OtherWorld
    table: Any
    luck: Any
    weather: DailyWeather

    def onward(self, first: int, days: int) -> None:
        part = slice(first, first + days)
        self.world.run(self.colonies, self.table[:, part], self.luck[:, part])


def grown(number: int, shift: int) -> Elsewhere:
    """Let a colony live two or three years in the other world under the careful keeper."""
    seed, rng = 990_000 + number, stream(number, "elsewhere")
    first = date(2024 + number % 2, 3, 18) + timedelta(days=int(rng.integers(0, 30)))
    before = (first - START).days
    days = before + EVERY * VISITS + 40
    weather = generate(PLACE, START, days, 1, seed + 1)
    nectar, pollen = forage_index(calendar(DISTRICT), weather, PLACE, seed=seed + 2)
    nectar, pollen = np.roll(nectar, shift, axis=1), np.roll(pollen, shift, axis=1)
    table = conditions(weather, nectar, pollen, latitude_deg=PLACE.latitude_deg)
    hive, set_up = catalogue().hive(HIVE), SetUp(frames=11)
    known = Described(frames_of_bees=9.0, stores_kg=12.0, queen_year=2022)
    made = begin(hive, set_up, known, on=START, members=1, seed=seed, colony="elsewhere")
    world, chance = OtherWorld(made, 213), luck(seed, "elsewhere", START, days, 1)

    def run(colonies: State, some: State, drawn: State, **_: object) -> Trace:
        world.run(colonies, some, drawn)
        return Trace(np.zeros((some.shape[1], 1, len(TRACED))))

    with pytest.MonkeyPatch.context() as patch:  # the same keeper, in a world of other rules
        patch.setattr(keeper, "run", run)
        keeper.keep(
            made, hive, set_up, table[:, :before], chance[:, :before],
            first=START, keeping=keeper.Keeping(), seed=seed,
        )  # fmt: skip
    later = DailyWeather(first, *(getattr(weather, name)[:, before:] for name in SERIES))
    return Elsewhere(made, world, table[:, before:], chance[:, before:], later)


def noted(colonies: State, shared: State, rng: np.random.Generator) -> dict[str, Any]:
    """Look at the colony as the keeper does."""
    expected = looked_at(colonies, shared, empty_kg=0.0)
    seen: dict[str, Any] = {
        name: min(36.0, max(0.0, round(2.0 * float(EYE[name].draw(expected[name], rng)[0])) / 2.0))
        for name in COUNTED
    }
    seen["eggs"] = bool(rng.random() < chance_of_eggs_found(colonies)[0])
    return seen


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


def forecasts_of(number: int, shift: int = 0) -> list[Forecast]:
    """Follow one colony through a season, and score what was foreseen."""
    there = grown(number, shift)
    made, first = there.colonies, there.weather.first
    if observe.adults(made)[0] < 3000.0 or made["queen"][0] != LAYING:
        return []
    name, rng = f"elsewhere {number}", stream(number, "eye")
    truth = Truth(name, 990_000 + number, Habits(EVERY, visits=VISITS), there.weather, there.table)
    shared = draw_shared(1, 1, rng)
    set_up = SetUp(
        frames=int(made["frames"][0]), dummy_boards=int(made["boards"][0]),
        supers=int(made["supers"][0]), excluder=bool(made["supers"][0] > 0),
    )  # fmt: skip
    standing, on = Standing(catalogue().hive(HIVE), set_up), first

    def write(kind: Write, **fields: object) -> Noted:
        key = stream(truth.seed, "id", len(truth.entries)).bytes(16).hex()
        truth.entries.append(kind(id=key, on=on, colony=name, **fields))
        return truth.entries[-1]

    write(Colony, yard="Home", hive=HIVE, queen_year=first.year - 1)
    write(Stack, **set_up.model_dump(include={"frames", "dummy_boards", "supers", "excluder"}))
    past, notes, done = [made.copy()], [noted(made, shared, rng) | {"eggs": True}], [False]
    write(Visit, **notes[0])
    for visit in range(1, VISITS):
        there.onward((visit - 1) * EVERY, EVERY)
        on = first + timedelta(days=visit * EVERY)
        past.append(made.copy())
        notes.append(noted(made, shared, stream(number, "look", visit)))
        write(Visit, **notes[-1])
        tasks = work(notes[-1], made, standing, on.timetuple().tm_yday)
        entries = [write(task.pop("kind"), **task) for task in tasks]
        honey = any(isinstance(entry, Harvest) for entry in entries)
        for entry in entries:
            standing = act(entry, made, standing, catalogue(), rng, harvested=honey)
        done.append(bool(entries))
    book, _ = believed(truth, on + timedelta(days=1))
    found = []
    for visit in range(4 + number % 3, VISITS - 1, 3):
        morning = first + timedelta(days=visit * EVERY + 1)
        years = Years(truth, morning, 200, 77)
        for lead in LEADS:
            then = visit + lead // EVERY
            if then >= VISITS or any(done[visit + 1 : then]):
                continue  # what is done meanwhile is not foreseen
            members = ahead(book, years, name, morning, days=lead - 1)
            for quantity in COUNTED:
                values, true = QUANTITIES[quantity](members), QUANTITIES[quantity](past[then])[0]
                last, share = abs(notes[visit][quantity] - true), float((values < true).mean())
                score = crps(values, float(true))
                found.append(Forecast(quantity, lead, score, float(last), share))
    return found


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

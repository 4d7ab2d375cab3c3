"""Colonies on dates, as the advice sees them: by description, or drawn at random."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import cache
from uuid import UUID

import numpy as np
from numpy.typing import NDArray

from combwright.advice.bee_acts import Divide, Give
from combwright.advice.plan import Plan
from combwright.advice.prices import Prices
from combwright.advice.season_ahead import SeasonDays, season_ends
from combwright.advice.situation import Limits, Situation
from combwright.kit.catalogue import catalogue
from combwright.kit.fits import frames_that_fit
from combwright.kit.standing import Standing
from combwright.simulation.begin import Described, begin
from combwright.simulation.columns import DRONE_LAYER, LAYING_WORKERS
from combwright.simulation.hands.actions import arrange, change_queen, feed
from combwright.simulation.luck import luck
from combwright.terms.entries import Noted, Treatment, Visit
from combwright.terms.set_up import SetUp
from combwright.weather.climates import climate
from combwright.weather.conditions import MAX_C, MEAN_C, NECTAR, NIGHT_C, conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
MEMBERS = 60
AHEAD = 32
VERSIONS = 20
HIVES = ("national timber", "national polystyrene", "langstroth", "wbc")
NUCS = ("nuc 6 polystyrene", "nuc 5 timber")
ONLY_DRONES = {"drone layer": DRONE_LAYER, "laying workers": LAYING_WORKERS}
SEASON_DAYS = {1: 28, 2: 21, 3: 14, 8: 14, 9: 21, 10: 28, 11: 28, 12: 28}


@dataclass(frozen=True)
class Case:
    """A colony on a day, in the words of a keeper."""

    on: date
    frames_of_bees: float
    frames_of_brood: float
    stores_kg: float
    frames: int
    hive: str = "national timber"
    supers: int = 0
    queen: str = "laying"
    feeder_g: float = 0.0
    honey_above_kg: float = 0.0
    mites: float | None = None
    disease_signs: str | None = None
    signs_at: str | None = None
    treated_days_ago: int | None = None
    days: int | None = None
    nectar: float | None = None
    warmer_k: float = 0.0
    seed: int = 1
    prices: Prices = field(default_factory=Prices)


@cache
def weather_from(on: date) -> Floats:
    """Sample the days from a date on at Dublin, [version, day, column]."""
    place = climate("Dublin Airport")
    first = date(on.year, 1, 1)
    days = (on - first).days + AHEAD
    weather = generate(place, first, days, 20, 5)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, place, seed=5)
    return conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)[:, -AHEAD:]


@cache
def season_from(year: int) -> Floats:
    """Sample the days of a year at Dublin, [version, day, column]."""
    place, first = climate("Dublin Airport"), date(year, 1, 1)
    days = (date(year + 1, 2, 1) - first).days
    weather = generate(place, first, days, VERSIONS, 5)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, place, seed=5)
    return conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)


def season_of(on: date) -> SeasonDays:
    """Give the days from one on to the end of its season."""
    start = (on - date(on.year, 1, 1)).days
    days = (season_ends(on, AHEAD) - on).days
    table = season_from(on.year)[:, start : start + days]
    return SeasonDays(table, np.arange(MEMBERS) % VERSIONS)


def boards_beside(hive_key: str, frames: int) -> int:
    """Give the dummy boards that fit beside so many frames, at most two."""
    hive = catalogue().hive(hive_key)
    return next((b for b in (2, 1) if frames_that_fit(hive, None, b) >= frames), 0)


def situation(case: Case) -> Situation:
    """Make what the advice is told of a case."""
    hive = catalogue().hive(case.hive)
    set_up = SetUp(
        hive=case.hive,
        frames=case.frames,
        dummy_boards=boards_beside(case.hive, case.frames),
        supers=case.supers if hive.honey_super else 0,
        excluder=case.supers > 0,
    )
    known = Described(
        frames_of_bees=case.frames_of_bees,
        frames_of_brood=case.frames_of_brood,
        stores_kg=case.stores_kg,
        mites=case.mites,
        queen_year=case.on.year - 1,
        has_queen=True,
    )
    colonies = begin(
        hive, set_up, known, on=case.on, members=MEMBERS, seed=case.seed, colony="colony"
    )
    if case.queen in ONLY_DRONES:
        colonies["queen"] = ONLY_DRONES[case.queen]
    elif case.queen != "laying":
        change_queen(colonies, case.queen)
        colonies["eggs"] = 0.0
        colonies["larvae"][:, :3] = 0.0
    if case.feeder_g:
        feed(colonies, case.feeder_g, 0.6)
    if case.honey_above_kg and case.supers:
        most = 0.95 * colonies["super_drawn"] * colonies["sugar_per_cell"]
        colonies["super_ripe"] = np.minimum(800.0 * case.honey_above_kg, most)
    arrange(colonies, hive, set_up)
    return Situation(
        colony="colony",
        on=case.on,
        days=case.days or SEASON_DAYS.get(case.on.month, 7),
        colonies=colonies,
        standing=Standing(hive, set_up),
        conditions=_days(case),
        luck=luck(3, "colony", case.on, AHEAD, MEMBERS),
        limits=Limits(),
        history=_history(case),
        signs_at=case.signs_at,
        prices=case.prices,
        season=season_of(case.on),
    )


def _days(case: Case) -> Floats:
    table = weather_from(case.on)[np.arange(MEMBERS) % 20].copy()
    if case.nectar is not None:
        table[:, :, NECTAR] = case.nectar
    table[:, :, [MEAN_C, MAX_C, NIGHT_C]] += case.warmer_k
    return table


def _history(case: Case) -> tuple[Noted, ...]:
    before = case.on - timedelta(days=7)
    visit = Visit(id=UUID(int=1), on=before, colony="colony", disease_signs=case.disease_signs)
    if case.treated_days_ago is None:
        return (visit,)
    day = case.on - timedelta(days=case.treated_days_ago)
    return visit, Treatment(id=UUID(int=2), on=day, colony="colony", substance="thymol")


def gives(decided: Plan) -> bool:
    """Tell whether it gives a nuc away: brood with bees, or its queen with them on purpose."""
    parts = [each for each in decided.asks(Divide) if each.way == "on purpose"]
    return bool(decided.asks(Give) or parts)


def drawn(number: int) -> Case:
    """Draw a colony and a day; most are sound, some are in trouble."""
    rng = np.random.default_rng([number, 6])
    on = date(2027, 1, 1) + timedelta(days=int(rng.integers(0, 365)))
    is_nuc = rng.random() < 0.2
    hive = str(rng.choice(NUCS if is_nuc else HIVES))
    box = catalogue().hive(hive)
    summer = 4 <= on.month <= 8
    frames = box.frames if is_nuc else int(rng.integers(4, box.frames + 1))
    bees = float(rng.uniform(1.5, frames + 1.5))
    supers = int(rng.integers(0, 3)) if summer and not is_nuc and frames >= 10 else 0
    brood = 0.0 if on.month in {11, 12} else float(rng.uniform(0.1, 0.6)) * bees
    return Case(
        on=on,
        frames_of_bees=bees,
        frames_of_brood=min(brood, frames - 0.5),
        stores_kg=float(rng.uniform(0.5, 2.0 * (frames - brood))),
        frames=frames,
        hive=hive,
        supers=supers,
        queen=str(rng.choice(["laying", "virgin", "cell", "lost"], p=[0.85, 0.05, 0.05, 0.05])),
        feeder_g=float(rng.choice([0.0, 0.0, 0.0, 1500.0])) if not supers else 0.0,
        honey_above_kg=float(rng.uniform(0.0, 12.0 * supers)) if supers else 0.0,
        mites=float(rng.uniform(5.0, 1500.0)),
        disease_signs="sunken caps" if rng.random() < 0.08 else None,
        treated_days_ago=int(rng.integers(1, 60)) if rng.random() < 0.2 else None,
        signs_at="Sorrel" if rng.random() < 0.08 else None,
        seed=number,
    )

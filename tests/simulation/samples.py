"""Colonies, days and chance for tests: likely ones, and ones of any kind."""

from datetime import date
from functools import cache
from typing import Any

import numpy as np
from hypothesis import strategies as st
from numpy.typing import NDArray

from combwright.kit.catalogue import catalogue
from combwright.simulation.begin import Described, begin
from combwright.simulation.biology import BIOLOGY, PARAMETERS, Biology, as_table
from combwright.simulation.columns import COLUMNS, STATE, TRAITS
from combwright.simulation.luck import NORMAL
from combwright.simulation.run import days_lived
from combwright.simulation.step.frames import stack_of
from combwright.terms.set_up import SetUp
from combwright.weather.climates import climate
from combwright.weather.conditions import DAY, FLIGHT, MATING, MAX_C, MEAN_C, NIGHT_C, conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
SPRING = date(2026, 3, 20)
TIMBER = catalogue().hive("national timber")


def usual(
    *,
    members: int = 40,
    frames: int = 11,
    boards: int = 0,
    bees: float | None = 6.5,
    brood: float | None = 2.5,
    stores: float | None = 8.0,
    mites: float | None = 40.0,
    on: date = SPRING,
    seed: int = 1,
) -> NDArray[np.void]:
    """Colonies in a timber National, near the spread that the model begins with."""
    described = Described(
        frames_of_bees=bees,
        frames_of_brood=brood,
        stores_kg=stores,
        mites=mites,
        queen_year=on.year - 1,
        has_queen=True,
    )
    set_up = SetUp(frames=frames, dummy_boards=boards)
    return begin(TIMBER, set_up, described, on=on, members=members, seed=seed, colony="test")


@cache
def dublin(first: date = SPRING, days: int = 400, years: int = 8) -> Floats:
    """Days near Dublin, each scenario its own year."""
    place = climate("Dublin Airport")
    weather = generate(place, first, days, years, 7)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, place, seed=7)
    return conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)


def chance(seed: int, members: int, days: int) -> Floats:
    """Luck of the shape that the step reads."""
    rng = np.random.default_rng(seed)
    drawn = rng.random((members, days, 9))
    normal = [0, 1, 7, 8]
    drawn[:, :, normal] = rng.standard_normal((members, days, 4))
    return drawn


LARGEST = {
    "eggs": 2500.0,
    "larvae": 2500.0,
    "sealed": 2500.0,
    "drone_open": 1500.0,
    "drone_sealed": 1500.0,
    "drones": 3000.0,
    "nest": 40000.0,
    "foragers": 20000.0,
    "winter": 25000.0,
    "hurt_nest": 1.0,
    "hurt_winter": 1.0,
    "queen_clock": 40.0,
    "queen_age": 1500.0,
    "mating_flights": 3.0,
    "swarm_clock": 21.0,
    "drawn": 110000.0,
    "foundation": 50000.0,
    "super_drawn": 130000.0,
    "super_foundation": 60000.0,
    "ripe": 30000.0,
    "super_ripe": 40000.0,
    "far": 30000.0,
    "starved": 20.0,
    "unripe": 8000.0,
    "water": 12000.0,
    "pollen": 3000.0,
    "syrup_share": 1.0,
    "super_syrup": 5000.0,
    "feeder": 10000.0,
    "feeder_water": 8000.0,
    "feeder_days": 20.0,
    "feeder_warmth": 30.0,
    "mites": 6000.0,
    "mites_worker": 800.0,
    "mites_drone": 800.0,
    "kill_bees": 0.9,
    "kill_cells": 0.5,
    "lay_brake": 1.0,
    "treated_days": 45.0,
    "invaders": 80.0,
    "frames": 22.0,
    "boards": 2.0,
    "supers": 5.0,
    "entrance": 430.0,
    "tray_open": 460.0,
    "unmet": 1.0,
    "starving": 1.0,
}


@st.composite
def states(draw: st.DrawFn) -> dict[str, Any]:
    """A colony of any kind: any column may be nothing, little or much."""
    rng = np.random.default_rng(draw(st.integers(0, 2**32 - 1)))
    empty = draw(st.sets(st.sampled_from(sorted(LARGEST)), max_size=8))
    colony: dict[str, Any] = {}
    for column in COLUMNS:
        most = 0.0 if column.name in empty else LARGEST.get(column.name, 0.0)
        drawn = most * rng.random(column.width) ** 2
        colony[column.name] = float(drawn[0]) if column.width == 1 else drawn.tolist()
    for name in TRAITS:
        colony[name] = float(np.exp(rng.normal(0.0, 0.4)))
    colony["queen"] = float(draw(st.integers(0, 4)))
    colony["supers"] = float(np.floor(colony["supers"]))
    colony["frames"] = float(np.ceil(colony["frames"]))
    colony["swarm_clock"] = float(np.floor(colony["swarm_clock"]))
    colony["loss_base"], colony["loss_per_frame"] = 0.1 + rng.random(), 0.02 + 0.2 * rng.random()
    colony["cells_per_frame"], colony["bees_per_frame"] = 5000.0, 1800.0
    colony["sugar_per_cell"] = 0.336
    colony["super_ripe"] = min(colony["super_ripe"], 0.336 * colony["super_drawn"])
    colony["super_syrup"] = min(colony["super_syrup"], colony["super_ripe"])
    colony["intake"], colony["used"] = 1500.0 * rng.random(), 600.0 * rng.random()
    return colony


def row(colony: dict[str, Any]) -> Any:  # a record
    """One colony as the processes of a day take it, changed in place by them."""
    made = np.zeros(1, dtype=STATE)
    for name, value in colony.items():
        made[name] = value
    return made.view(np.recarray)[0]


def fit_comb(one: NDArray[np.void]) -> None:
    """Take away in place what finds no comb in a colony, whose stack stays as it is."""
    sheets, supers = float(one["foundation"][0]), float(one["supers"][0])
    stack_of(one, float(one["drawn"][0]) + sheets, sheets, supers, 3000.0, False)  # noqa: FBT003


def numbers(biology: Biology = BIOLOGY) -> Any:  # a record
    """Give the numbers of the model as the processes of a day take them."""
    return as_table(biology).view(np.recarray)[0]


def today(
    luck: Floats | None = None,
    *,
    day: float = 150.0,
    flight: float = 0.0,
    mean_c: float = 10.0,
    max_c: float = 15.0,
    night_c: float = 5.0,
    mating: float = 0.0,
) -> Any:  # a record
    """Give a day as the processes of a day take it: with luck in which nothing rare happens."""
    weather = np.zeros((1, 1, DAY + 1))
    weather[0, 0, [DAY, FLIGHT, MEAN_C, MAX_C, NIGHT_C, MATING]] = (
        *(day, flight, mean_c, max_c, night_c, mating),
    )
    if luck is None:
        luck = np.ones(9)
        luck[list(NORMAL)] = 0.0
    lived = days_lived(weather, luck.reshape(1, 1, -1), np.zeros(1), (BIOLOGY,))
    return lived.view(np.recarray)[0, 0]


def colonies() -> st.SearchStrategy[Any]:
    """Colonies of any kind, as the processes of a day take them."""
    return states().map(row)


@st.composite
def weather_of_days(draw: st.DrawFn, days: int) -> Floats:
    """Days of any weather at any time of the year, [1, day, column]."""
    rng = np.random.default_rng(draw(st.integers(0, 2**32 - 1)))
    first = draw(st.integers(1, 366))
    table = np.zeros((1, days, 8))
    table[0, :, 0] = 14.0 * rng.random(days) * (rng.random(days) < 0.8)
    table[0, :, 1] = rng.uniform(-12.0, 26.0, days)
    table[0, :, 2] = table[0, :, 1] + rng.uniform(0.0, 9.0, days)
    table[0, :, 3] = table[0, :, 1] - rng.uniform(0.0, 7.0, days)
    table[0, :, 4:7] = rng.random((days, 3))
    table[0, :, 7] = (first + np.arange(days) - 1) % 366 + 1
    return table


@st.composite
def biologies(draw: st.DrawFn) -> Biology:
    """Every number of the model moved toward one end of its range or the other."""
    far = draw(st.floats(0, 1))
    rng = np.random.default_rng(draw(st.integers(0, 2**32 - 1)))
    return Biology(
        **{
            name: p.value + (at - p.value) * far
            for name, p in PARAMETERS.items()
            for at in [rng.choice([p.low, p.high])]
        }
    )

"""Colonies that have lived for years under the careful keeper, in a world that nobody tells of."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any, Final

import numpy as np
import pytest
from tests.validation.belief.keeper import (
    HIVE,
    PLACE,
    State,
)
from tests.validation.worlds.other_world import OtherWorld

from combwright.belief.worlds import WORLDS
from combwright.kit.catalogue import catalogue
from combwright.services.weather.surroundings import DISTRICT
from combwright.simulation.begin import Described, begin
from combwright.simulation.hands import keeper
from combwright.simulation.luck import luck
from combwright.simulation.run import Trace, run
from combwright.simulation.step.remembered import TRACED
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.terms.weather import DailyWeather
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

EVERY, VISITS, START = 7, 24, date(2022, 8, 1)
SERIES: Final = ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")


class OwnWorld:
    """One of the model's own worlds, in the form of ``OtherWorld``."""

    def __init__(self, colonies: State, day_of_year: int) -> None:
        del colonies, day_of_year

    def run(self, colonies: State, conditions: State, luck: State) -> None:
        """Live through days in place."""
        run(colonies, conditions, luck, worlds=WORLDS)


@dataclass(frozen=True)
class Untold:
    """What is true and not told: the rules, the forage, the way of counting, a trouble."""

    world: type[OtherWorld] | type[OwnWorld] = OtherWorld
    shift: int = 0  # days by which the forage of the year is late
    as_combs: bool = False  # brood is counted as combs with brood, and nobody said so
    trouble: str = ""
    cells: bool = False  # cells are looked for and noted


@dataclass
class Elsewhere:
    """A colony with the days before it."""

    colonies: State
    world: OtherWorld | OwnWorld
    table: Any
    luck: Any
    weather: DailyWeather

    def onward(self, first: int, days: int) -> None:
        part = slice(first, first + days)
        self.world.run(self.colonies, self.table[:, part], self.luck[:, part])


def grown(number: int, untold: Untold) -> Elsewhere:
    """Let a colony live two or three years under the careful keeper."""
    seed, rng = 990_000 + number, stream(number, "elsewhere")
    first = date(2024 + number % 2, 3, 18) + timedelta(days=int(rng.integers(0, 30)))
    before = (first - START).days
    days = before + EVERY * VISITS + 40
    weather = generate(PLACE, START, days, 1, seed + 1)
    nectar, pollen = forage_index(calendar(DISTRICT), weather, PLACE, seed=seed + 2)
    nectar, pollen = (np.roll(each, untold.shift, axis=1) for each in (nectar, pollen))
    table = conditions(weather, nectar, pollen, latitude_deg=PLACE.latitude_deg)
    hive, set_up = catalogue().hive(HIVE), SetUp(frames=11)
    known = Described(frames_of_bees=9.0, stores_kg=12.0, queen_year=2022)
    made = begin(hive, set_up, known, on=START, members=1, seed=seed, colony="elsewhere")
    made["world"] = rng.integers(0, len(WORLDS))
    world, chance = untold.world(made, 213), luck(seed, "elsewhere", START, days, 1)

    def elsewhere(colonies: State, some: State, drawn: State, **_: object) -> Trace:
        world.run(colonies, some, drawn)
        return Trace(np.zeros((some.shape[1], 1, len(TRACED))))

    with pytest.MonkeyPatch.context() as patch:  # the same keeper, in a world of other rules
        patch.setattr(keeper, "run", elsewhere)
        keeper.keep(
            made, hive, set_up, table[:, :before], chance[:, :before],
            first=START, keeping=keeper.Keeping(), seed=seed,
        )  # fmt: skip
    later = DailyWeather(first, *(getattr(weather, name)[:, before:] for name in SERIES))
    return Elsewhere(made, world, table[:, before:], chance[:, before:], later)

"""Colonies of our own making in weather without a flow, for the tests of what is planned."""

from datetime import date, timedelta
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from combwright.advice.situation import Limits, Situation
from combwright.kit.catalogue import catalogue
from combwright.kit.standing import Standing
from combwright.simulation.begin import Described, begin
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp
from combwright.terms.weather import DailyWeather
from combwright.weather.conditions import conditions

MEMBERS = 200
ON = date(2027, 5, 1)


class Kind(NamedTuple):
    """A colony as a keeper would describe it."""

    hive: str
    bees: float
    brood: float
    stores_kg: float
    frames: int


STRONG = Kind("national timber", 10.0, 7.0, 4.0, 11)
AVERAGE = Kind("national timber", 6.5, 4.0, 3.0, 8)
NUC = Kind("nuc 6 polystyrene", 3.5, 2.0, 1.5, 6)


def without_flow(first: date, days: int) -> NDArray[np.float64]:
    """Give mild days on which bees fly and find pollen, but no nectar."""

    def all_days(value: float) -> NDArray[np.float64]:
        return np.full((1, days), value)

    weather = DailyWeather(
        first, all_days(16.0), all_days(7.0), all_days(0.0), all_days(5.0), all_days(2.0)
    )
    nectar, pollen = np.zeros((1, days)), np.ones((1, days))
    return conditions(weather, nectar, pollen, latitude_deg=53.4)


def situation(kind: Kind, *, days: int, on: date = ON, pitch_mm: float | None = None) -> Situation:
    """Give a colony of a kind on a day, so many days before its next visit."""
    hive = catalogue().hive(kind.hive)
    set_up = SetUp(hive=hive.key, frames=kind.frames)
    described = Described(
        frames_of_bees=kind.bees,
        frames_of_brood=kind.brood,
        stores_kg=kind.stores_kg,
        queen_year=2026,
        has_queen=True,
    )
    day_before = on - timedelta(days=1)
    colonies = begin(
        hive, set_up, described, on=day_before, members=MEMBERS, seed=1, colony=kind.hive
    )
    # a day's life settles what is eaten and what is warm
    run(colonies, without_flow(day_before, 1), luck(1, kind.hive, day_before, 1, MEMBERS))
    ahead = max(days + 3, 29)
    return Situation(
        colony=kind.hive,
        on=on,
        days=days,
        colonies=colonies,
        standing=Standing(hive, set_up),
        conditions=without_flow(on, ahead),
        luck=luck(1, kind.hive, on, ahead, MEMBERS),
        limits=Limits(),
        pitch_mm=pitch_mm,
    )

"""Letting ensembles live through days of weather, and what is kept of it."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.simulation.biology import BIOLOGY, Biology, SameWorlds, as_table
from combwright.simulation.step.day import live
from combwright.simulation.step.rearing import seasons_of_worlds
from combwright.simulation.step.remembered import TRACED
from combwright.simulation.step.today import TODAY, days_of_members
from combwright.weather.conditions import DAY

Floats = NDArray[np.float64]
BALANCES: Final = ("bees", "sugar", "water", "comb", "mites", "brood")


class BrokenBalanceError(Exception):
    """Bees, brood, sugar, water, comb or mites were made or lost outside a named process: a bug."""


@dataclass(frozen=True)
class Trace:
    """What was seen each day: arrays [day, lane], by the names of ``TRACED``."""

    values: Floats

    def __getitem__(self, name: str) -> Floats:
        """Give one quantity, [day, lane]."""
        return np.asarray(self.values[:, :, TRACED.index(name)])


def run(
    colonies: NDArray[np.void],
    conditions: Floats,
    luck: Floats,
    *,
    worlds: tuple[Biology, ...] = (BIOLOGY,),
    traced: bool = False,
) -> Trace:
    """Let colonies live through some days, in place.

    Lane ``i`` lives in scenario ``i % scenarios`` of the conditions, [scenario, day, column], and
    has the luck of member ``i % members``, [member, day, process]; it lives in the world that its
    column ``world`` names. What was seen is empty unless traced.
    """
    days = conditions.shape[1]
    if luck.shape[1] < days:
        raise ValueError(f"{days} days of weather need as many days of luck, not {luck.shape[1]}")
    trace = np.zeros((days if traced else 0, len(colonies), len(TRACED)))
    broken: Any = live(
        colonies,
        np.ascontiguousarray(conditions),
        np.ascontiguousarray(luck),
        seasons_of(conditions, worlds),
        as_table(*worlds),
        np.empty(days, TODAY),
        trace,
    )
    refuse_broken(broken)
    return Trace(trace)


def days_lived(
    conditions: Floats, luck: Floats, world_of: Floats, worlds: tuple[Biology, ...]
) -> NDArray[np.void]:
    """Work out the days of members once for all that is tried on them, [member, day].

    Member ``i`` lives in scenario ``i % scenarios`` of the conditions, [scenario, day, column],
    has the luck of [member, day, process], and lives in the world that is named for it.
    """
    days = np.empty((len(luck), conditions.shape[1]), TODAY)
    seasons = seasons_of(conditions, worlds)
    days_of_members(
        days,
        np.ascontiguousarray(conditions),
        np.ascontiguousarray(luck),
        seasons,
        np.ascontiguousarray(world_of),
        as_table(*worlds),
    )
    return days


def seasons_of(conditions: Floats, worlds: tuple[Biology, ...]) -> Floats:
    """Give what the season lets a queen do on each day in each world, [world, day]."""
    return _seasons(conditions[0, :, DAY].tobytes(), SameWorlds(worlds))


@lru_cache(maxsize=256)
def _seasons(days: bytes, same: SameWorlds) -> Floats:
    days_of_year = np.frombuffer(days)
    seasons = np.empty((len(same.worlds), len(days_of_year)))
    seasons_of_worlds(seasons, days_of_year, as_table(*same.worlds))
    return seasons


def refuse_broken(broken: int) -> None:
    """Stop where the step reports a broken balance: the number of it plus 10 times the lane."""
    if broken:
        raise BrokenBalanceError(
            f"the balance of {BALANCES[broken % 10 - 1]} broke in lane {broken // 10}"
        )

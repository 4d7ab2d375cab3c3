"""Colonies described alike that live near one place, each in weather and luck of its own."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from combwright.kit.catalogue import catalogue
from combwright.simulation.begin import Described, begin
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.hands.keeper import Keeping, Kept, keep
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp
from combwright.weather.sampled import sampled_conditions

Floats = NDArray[np.float64]
WEEK = 7


@dataclass(frozen=True)
class SimulatedYard:
    """So many colonies from a day on; ``name`` and ``seed`` say which chances they meet."""

    name: str
    place: str
    first: date
    days: int
    colonies: int
    seed: int
    set_up: SetUp = field(default_factory=lambda: SetUp(frames=11))

    def begin(self, described: Described) -> NDArray[np.void]:
        """Make the colonies."""
        return begin(
            catalogue().hive(self.set_up.hive),
            self.set_up,
            described,
            on=self.first,
            members=self.colonies,
            seed=self.seed,
            colony=self.name,
        )

    @cached_property
    def weather(self) -> Floats:
        """A year of weather for each colony, [colony, day, column]."""
        return sampled_conditions(self.place, self.first, self.days, self.colonies, self.seed)

    @cached_property
    def luck(self) -> Floats:
        """The luck of each colony, [colony, day, process]."""
        return luck(self.seed, self.name, self.first, self.days, self.colonies)

    def keep(
        self,
        colonies: NDArray[np.void],
        keeping: Keeping,
        *,
        worlds: tuple[Biology, ...] = (BIOLOGY,),
    ) -> Kept:
        """Let the colonies live in place under a keeper to the end."""
        return self.keep_part(colonies, keeping, slice(0, self.days), self.seed, worlds)

    def by_week(self, colonies: NDArray[np.void], keeping: Keeping) -> Iterator[int]:
        """Let the colonies live in place under a keeper; give the number of each week done."""
        for week in range(self.days // WEEK):
            part = slice(WEEK * week, WEEK * (week + 1))
            self.keep_part(colonies, keeping, part, self.seed + week, (BIOLOGY,))
            yield week + 1

    def by_day(self, colonies: NDArray[np.void]) -> Iterator[int]:
        """Let the colonies live in place, left alone; give the number of each day done."""
        for day in range(self.days):
            run(colonies, self.weather[:, day : day + 1], self.luck[:, day : day + 1])
            yield day + 1

    def keep_part(
        self,
        colonies: NDArray[np.void],
        keeping: Keeping,
        part: slice,
        seed: int,
        worlds: tuple[Biology, ...],
    ) -> Kept:
        """Let the colonies live in place under a keeper through some of the days."""
        return keep(
            colonies,
            catalogue().hive(self.set_up.hive),
            self.set_up,
            self.weather[:, part],
            self.luck[:, part],
            first=self.first + timedelta(days=part.start),
            keeping=keeping,
            seed=seed,
            worlds=worlds,
        )

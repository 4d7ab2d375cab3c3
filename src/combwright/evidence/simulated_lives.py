"""Colonies that live for years from their own winters: what they look like, by year and climate.

A life begins on 1 August with eleven frames of bees; its first year is the one from then on. The
keeper is careful: treats, feeds to the winter weight, holds swarms back and replaces queens of two
years.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache

import numpy as np
from numpy.typing import NDArray

from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.hands.keeper import Keeping, Kept, keep
from combwright.simulation.luck import luck
from combwright.simulation.run import Trace
from combwright.terms.set_up import SetUp
from combwright.weather.climates import climates
from combwright.weather.sampled import sampled_conditions

Floats = NDArray[np.float64]
START, YEARS, SEED = date(2026, 8, 1), 4, 20260801
WEATHERS, COLONIES = 10, 40  # versions of the weather, and colonies that share them
HIVE = "national timber"
ALIVE = 1500.0  # bees from which a colony is one
WEAK, STRONG = 4.5, 7.5  # frames of bees in March between which a colony is normal
CLOSED = (2, 3, 4)  # the years that begin with the model's own winter


@dataclass(frozen=True)
class Life:
    """Colonies of one climate through the years: what was seen of them each day."""

    kept: Kept
    first: date = START

    def on(self, name: str, day: date) -> Floats:
        """Give one quantity on a day, [colony]."""
        return np.asarray(self.kept.trace[name][self.place(day)])

    def through(self, name: str, first: date, until: date) -> Floats:
        """Give one quantity from a day up to another, [day, colony]."""
        return np.asarray(self.kept.trace[name][self.place(first) : self.place(until)])

    def place(self, day: date) -> int:
        """Place of a day in the life."""
        return (day - self.first).days

    def alive(self, day: date) -> NDArray[np.bool_]:
        """Tell which colonies live on a day, [colony]."""
        return self.on("adults", day) > ALIVE


def live(
    climate: str,
    *,
    worlds: tuple[Biology, ...] = (BIOLOGY,),
    colonies: int = COLONIES,
    years: int = YEARS,
    weathers: int = WEATHERS,
    seed: int = SEED,
) -> list[Life]:
    """Let the same colonies of one climate live for some years in each of some worlds.

    Colonies share so many versions of the weather. Gives a life for each world.
    """
    hive, set_up, days = catalogue().hive(HIVE), SetUp(frames=11), 365 * years + 92
    described = Described(frames_of_bees=11.0, stores_kg=14.0, mites=200.0, queen_year=START.year)
    one = begin(hive, set_up, described, on=START, members=colonies, seed=seed, colony=climate)
    made = np.concatenate([one] * len(worlds))
    made["world"] = np.repeat(np.arange(len(worlds), dtype=np.float64), colonies)
    kept = keep(
        made,
        hive,
        set_up,
        sampled_conditions(climate, START, days, weathers, seed),
        luck(seed, climate, START, days, colonies),
        first=START,
        keeping=Keeping(),
        seed=seed,
        worlds=worlds,
    )
    return [
        Life(_some(kept, slice(world * colonies, (world + 1) * colonies)))
        for world in range(len(worlds))
    ]


def _some(kept: Kept, which: slice) -> Kept:
    """Give what came of some of the colonies."""
    trace = Trace(kept.trace.values[:, which])
    return Kept(trace, kept.honey_taken_kg[:, which], kept.sugar_given_kg[:, which])


@cache
def lives() -> dict[str, Life]:
    """Give a life in each built-in climate under the careful keeper."""
    return {place: live(place)[0] for place in climates()}


def seen(life: Life, year: int) -> dict[str, float]:
    """Look at the colonies that live in a year of the life, the first being 1.

    Medians over colonies, but for shares, honey and sugar, which are means.
    """
    autumn = life.first.year + year - 1
    spring = date(autumn + 1, 3, 20)
    alive = life.alive(spring)
    found = {**_bees(life, autumn), **_most(life, autumn + 1, alive)}
    found |= _shares(life, spring, alive) | _food(life, autumn, alive) | _lost(life, autumn)
    return found


def _middle(values: Floats, which: NDArray[np.bool_]) -> float:
    return float(np.median(values[which])) if which.any() else float("nan")


def _mean(values: Floats | NDArray[np.bool_], which: NDArray[np.bool_]) -> float:
    return float(np.mean(values[which])) if which.any() else float("nan")


def _bees(life: Life, autumn: int) -> dict[str, float]:
    """Bees and brood in the weeks for which something is published."""
    days = {
        "november": date(autumn, 11, 1),
        "february": date(autumn + 1, 2, 10),
        "march": date(autumn + 1, 3, 20),
        "april": date(autumn + 1, 4, 25),
        "may": date(autumn + 1, 5, 27),
        "september": date(autumn + 1, 9, 25),
    }
    return {
        f"{what}_{name}": _middle(life.on(column, day), life.alive(day))
        for what, column in (("bees", "adults"), ("brood", "brood"))
        for name, day in days.items()
    }


def _most(life: Life, year: int, alive: NDArray[np.bool_]) -> dict[str, float]:
    """Most bees and most brood of a summer and their days; the day of fewest bees before."""
    first, until = date(year, 3, 1), date(year, 10, 1)
    start = first.timetuple().tm_yday
    bees, brood = (life.through(name, first, until) for name in ("adults", "brood"))
    winter = life.through("adults", date(year - 1, 11, 1), date(year, 6, 1))
    return {
        "bees_peak": _middle(bees.max(axis=0), alive),
        "peak_day": _middle(bees.argmax(axis=0) + float(start), alive),
        "brood_peak": _middle(brood.max(axis=0), alive),
        "brood_peak_day": _middle(brood.argmax(axis=0) + float(start), alive),
        "least_day": _middle(winter.argmin(axis=0) - 60.0, alive),
    }


def _shares(life: Life, spring: date, alive: NDArray[np.bool_]) -> dict[str, float]:
    """Shares of colonies that are weak, normal and strong on 20 March, by frames of bees."""
    at_home = life.on("adults", spring) - observe.AWAY_AT_NOON * life.on("foragers", spring)
    frames = at_home / catalogue().hive(HIVE).frame.bees_full_cover
    return {
        "weak_march": _mean(frames < WEAK, alive),
        "normal_march": _mean((frames >= WEAK) & (frames < STRONG), alive),
        "strong_march": _mean(frames >= STRONG, alive),
    }


def _food(life: Life, autumn: int, alive: NDArray[np.bool_]) -> dict[str, float]:
    """Honey used and taken, sugar given, honey gained or lost by month. [kg]."""
    gain = (life.kept.trace["gathered_g"] - life.kept.trace["used_g"]) / _GRAMS

    def gained(first: date, until: date) -> float:
        return _middle(gain[life.place(first) : life.place(until)].sum(axis=0), alive)

    def used(first: date, until: date) -> float:
        return _middle(life.through("used_g", first, until).sum(axis=0) / _GRAMS, alive)

    def came(total: Floats, first: date, until: date) -> Floats:
        return np.asarray(total[life.place(until)] - total[life.place(first)])

    next_year = autumn + 1
    honey = came(life.kept.honey_taken_kg, date(next_year, 3, 20), date(next_year, 9, 20))
    given = life.kept.sugar_given_kg
    return {
        "used_winter_kg": used(date(autumn, 10, 1), date(next_year, 4, 1)),
        "used_year_kg": used(date(autumn, 10, 1), date(next_year, 10, 1)),
        "honey_kg": _mean(honey, alive),
        "honey_middle_kg": _middle(honey, alive),
        "sugar_autumn_kg": _mean(came(given, date(autumn, 8, 2), date(autumn, 10, 20)), alive),
        "sugar_spring_kg": _mean(came(given, date(autumn, 10, 20), date(next_year, 8, 1)), alive),
        "gained_december_kg": gained(date(autumn, 12, 1), date(autumn, 12, 31)),
        "gained_april_kg": gained(date(next_year, 4, 1), date(next_year, 5, 1)),
        "gained_may_kg": gained(date(next_year, 5, 1), date(next_year, 6, 1)),
        "gained_july_kg": gained(date(next_year, 7, 1), date(next_year, 8, 1)),
        "gained_september_kg": gained(date(next_year, 9, 1), date(next_year, 10, 1)),
    }


_GRAMS = 1000.0 * observe.SUGAR_IN_HONEY  # of sugar in a kilogram of honey


def _lost(life: Life, autumn: int) -> dict[str, float]:
    """Shares lost by 1 April of those that lived on 1 October: without a queen, and in all."""
    before, after = life.alive(date(autumn, 10, 1)), life.alive(date(autumn + 1, 4, 1))
    lays = life.on("queen_lays", date(autumn + 1, 4, 1)) > 0.0
    return {
        "lost_winter": _mean(~(after & lays), before),
        "queenless_spring": _mean(after & ~lays, before),
        "mites_august": _middle(life.on("mites", date(autumn + 1, 8, 10)), after),
    }


@cache
def own_winters(place: str = "") -> Mapping[str, float]:
    """Each quantity in the years after the first, the middle of climates and years, or of one."""
    there = [life for name, life in lives().items() if place in name]
    tables = [seen(life, year) for life in there for year in CLOSED]
    return {name: float(np.nanmedian([table[name] for table in tables])) for name in tables[0]}


def yearly_honey() -> dict[str, float]:
    """Honey taken a colony in the years after the first, by years of weather in all climates. [kg].

    Mean, the poor and the good year in twenty, and how much years vary.
    """
    years = np.concatenate([_honey_by_weather(life, year) for life in _all() for year in CLOSED])
    return {
        "mean": float(years.mean()),
        "poor_year": float(np.quantile(years, 0.05)),
        "good_year": float(np.quantile(years, 0.95)),
        "variation": float(years.std() / years.mean()),
    }


def _all() -> list[Life]:
    return list(lives().values())


def _honey_by_weather(life: Life, year: int) -> Floats:
    """Honey of the colonies that live, on average in each version of the weather. [kg]."""
    summer = life.first.year + year
    taken = life.kept.honey_taken_kg
    honey = taken[life.place(date(summer, 9, 20))] - taken[life.place(date(summer, 3, 20))]
    alive = life.alive(date(summer, 3, 20)).reshape(-1, WEATHERS)
    total = (honey.reshape(-1, WEATHERS) * alive).sum(axis=0)
    return np.asarray(total[alive.any(axis=0)] / alive.sum(axis=0)[alive.any(axis=0)])

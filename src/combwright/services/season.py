"""A season of simulated colonies from a start that a keeper describes, alone or against another."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.figures.bands import Course, season_chart
from combwright.kit.catalogue import Catalogue, catalogue
from combwright.kit.items import Hive
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.hands.keeper import Keeping, Kept, keep
from combwright.simulation.luck import luck
from combwright.terms.dated import dated
from combwright.terms.errors import OutOfRangeError
from combwright.terms.ranges import within
from combwright.terms.set_up import SetUp
from combwright.weather.sampled import sampled_conditions

Floats = NDArray[np.float64]
MOST_DAYS: Final = 1500
QUANTILES: Final = (0.05, 0.5, 0.95)
DEAD: Final = 1000.0  # bees below which a colony is as good as lost
TITLES: Final[Mapping[str, tuple[str, str]]] = {
    "adults": ("Adult bees", ""),
    "frames_of_bees": ("Frames of bees", ""),
    "frames_of_brood": ("Frames of brood", ""),
    "eggs_laid": ("Eggs laid", "a day"),
    "stores_kg": ("Stores", "kg of honey"),
    "room_cells": ("Room", "cells"),
    "mites": ("Mites", ""),
    "honey_taken_kg": ("Honey taken so far", "kg"),
    "syrup_taken_g": ("Syrup taken so far", "g"),
}


@dataclass(frozen=True, slots=True)
class Start:
    """A colony on the first day, how it stands, where, and how it is kept from then on."""

    set_up: SetUp = field(default_factory=lambda: SetUp(frames=11))
    frames_of_bees: float = 6.0
    frames_of_brood: float | None = None
    stores_kg: float = 8.0
    mites: float = 40.0
    queen_year: int | None = None
    climate: str = "Dublin Airport"
    district: str | None = None
    warmer_k: float = 0.0
    keeping: Keeping = field(default_factory=Keeping)


@dataclass(frozen=True)
class Year:
    """What is expected of one year from the first day on: 5, 50 and 95 % quantiles."""

    first: date
    until: date
    bands: Mapping[str, tuple[float, float, float]]
    lost: float  # share of all colonies, by its end

    def as_json(self) -> dict[str, Any]:
        """Give it as plain data."""
        bands = {
            name: dict(zip(("low", "mid", "high"), _rounded(band), strict=True))
            for name, band in self.bands.items()
        }
        days = {"from": self.first.isoformat(), "until": self.until.isoformat()}
        return {**days, **bands, "colonies_lost": round(self.lost, 3)}


@dataclass(frozen=True)
class Season:
    """What is expected on each day: 5, 50 and 95 % quantiles, by the names of ``TITLES``."""

    courses: Mapping[str, Course]
    lost: float
    swarmed: float
    years: tuple[Year, ...] = ()

    def as_json(self) -> dict[str, Any]:
        """Give the series as plain data, without their dates."""
        return {
            **{name: _plain(course) for name, course in self.courses.items()},
            "colonies_lost": round(self.lost, 3),
            "swarms": round(self.swarmed, 3),
            "years": [year.as_json() for year in self.years],
        }


def season(
    start: Start,
    first: date,
    until: date,
    *,
    kit: Catalogue | None = None,
    members: int = 200,
    seed: int = 1,
) -> Season:
    """Let simulated colonies, each in a year of its own, live from a day up to another.

    Two starts with the same dates and seed have the same luck; with the same climate also the same
    weather.
    """
    hive = (kit or catalogue()).hive(start.set_up.hive)
    _check(start, hive, first, until, members)
    days = (until - first).days + 1
    described = Described(
        frames_of_bees=start.frames_of_bees,
        frames_of_brood=start.frames_of_brood,
        stores_kg=start.stores_kg,
        mites=start.mites,
        queen_year=start.queen_year or first.year - 1,
    )
    colonies = begin(
        hive, start.set_up, described, on=first, members=members, seed=seed, colony="season"
    )
    weather = sampled_conditions(
        start.climate,
        first,
        days,
        members,
        seed,
        district=start.district,
        warmer_k=start.warmer_k,
    )
    kept = keep(
        colonies,
        hive,
        start.set_up,
        weather,
        luck(seed, "season", first, days, members),
        first=first,
        keeping=start.keeping,
        seed=seed,
    )
    dates = [first + timedelta(days=day) for day in range(days)]
    courses = {name: _course(dates, values) for name, values in _series(kept, hive).items()}
    lost = float(np.mean(_lost(kept, first, days)))
    swarmed = float(kept.trace["swarms"][-1].mean())
    return Season(courses, lost, swarmed, tuple(_by_year(kept, first)))


def chart(seasons: Mapping[str, Season], quantity: str) -> str:
    """Draw one quantity of one season, or of two together, as SVG."""
    if quantity not in TITLES:
        raise OutOfRangeError(
            f"Nothing is drawn of “{quantity}”.", remedy=f"There are: {', '.join(TITLES)}."
        )
    title, unit = TITLES[quantity]
    courses = {name: one.courses[quantity] for name, one in seasons.items()}
    return season_chart(courses, title=title, unit=unit)


def _check(start: Start, hive: Hive, first: date, until: date, members: int) -> None:
    if not first < until <= first + timedelta(days=MOST_DAYS):
        raise OutOfRangeError(
            f"A season from {dated(first)} to {dated(until)} cannot be shown.",
            remedy=f"Give a last day 1 to {MOST_DAYS} days after the first.",
        )
    frames = start.set_up.frames
    within(members, 20, 2000, "The number of simulated colonies")
    within(start.frames_of_bees, 0.5, 30, "Frames of bees")
    within(start.stores_kg, 0, 60, "Stores", "kg")
    within(start.mites, 0, 20000, "Mites")
    within(start.warmer_k, -5, 5, "The change of climate", "°C")
    if start.frames_of_bees > 1.15 * frames + 0.5 * hive.frames * start.set_up.supers:
        raise OutOfRangeError(
            f"Bees of {start.frames_of_bees:g} frames do not go onto {frames}.",
            remedy="Count the frames that stand in the box, or add a super.",
        )
    if (start.frames_of_brood or 0.0) > min(frames, 1.3 * start.frames_of_bees):
        raise OutOfRangeError(
            f"{start.frames_of_brood:g} frames of brood need more bees or frames than there are.",
            remedy="Brood lies on frames that bees cover.",
        )
    held = start.stores_kg / hive.frame.stores_full_kg + (start.frames_of_brood or 0.0)
    if held > frames + 0.6 * hive.frames * start.set_up.supers:
        raise OutOfRangeError(
            f"{start.stores_kg:g} kg of stores do not go into {frames} frames.",
            remedy=f"A full frame holds {hive.frame.stores_full_kg:g} kg.",
        )


def _by_year(kept: Kept, first: date) -> Iterator[Year]:
    """Sum up each whole year from the first day on."""
    adults = kept.trace["adults"]
    for start in range(0, len(adults) - 365, 365):
        stop = start + 365
        through = adults[start : stop + 1]
        values = {
            "most_bees": through.max(axis=0),
            "fewest_bees": through.min(axis=0),
            "honey_taken_kg": kept.honey_taken_kg[stop] - kept.honey_taken_kg[start],
            "sugar_given_kg": kept.sugar_given_kg[stop] - kept.sugar_given_kg[start],
        }
        yield Year(
            first + timedelta(days=start),
            first + timedelta(days=stop),
            {name: tuple(np.quantile(each, QUANTILES).tolist()) for name, each in values.items()},
            float(np.mean(_lost(kept, first, stop + 1))),
        )


def _lost(kept: Kept, first: date, days: int) -> NDArray[np.bool_]:
    """Tell which colonies died in some days, or came out of a winter without a queen.

    That is how surveys count.
    """
    adults, lays = kept.trace["adults"], kept.trace["queen_lays"]
    springs = [date(first.year + year, 4, 1) for year in range(MOST_DAYS // 365 + 2)]
    places = [(spring - first).days for spring in springs if spring > first]
    queenless = [lays[place] < 1.0 for place in places if place < days]
    return np.asarray(np.any([adults[days - 1] < DEAD, *queenless], axis=0))


def _series(kept: Kept, hive: Hive) -> dict[str, Floats]:
    trace, frame = kept.trace, hive.frame
    at_home = trace["adults"] - observe.AWAY_AT_NOON * trace["foragers"]
    return {
        "adults": trace["adults"],
        "frames_of_bees": at_home / frame.bees_full_cover,
        "frames_of_brood": trace["brood"] / (frame.worker_cells * observe.FULL_BROOD_SHARE),
        "eggs_laid": trace["eggs_laid"],
        "stores_kg": trace["sugar_g"] / 1000.0 / observe.SUGAR_IN_HONEY,
        "room_cells": trace["room_cells"],
        "mites": trace["mites"],
        "honey_taken_kg": kept.honey_taken_kg,
        "syrup_taken_g": trace["syrup_taken_g"],
    }


def _course(dates: list[date], values: Floats) -> Course:
    low, mid, high = np.quantile(values, QUANTILES, axis=1)
    return Course(dates, low.tolist(), mid.tolist(), high.tolist())


def _plain(course: Course) -> dict[str, list[float]]:
    parts = {"low": course.low, "mid": course.mid, "high": course.high}
    return {name: _rounded(values) for name, values in parts.items()}


def _rounded(values: Sequence[float]) -> list[float]:
    return [float(f"{value:.4g}") for value in values]

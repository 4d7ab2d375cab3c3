"""Nucs held against the written standard: what is missing, when it will be met, what to do."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

import numpy as np

from combwright.advice.decisions.disease import noted_signs
from combwright.advice.situation import Situation
from combwright.advice.words.wording import chance_words, day_words
from combwright.planning.supply.courses import STANDARD, NucCourse, nuc_course
from combwright.planning.supply.ready import A_WEEK, READY_WEEKS
from combwright.planning.supply.supply_numbers import number
from combwright.terms.entries import Noted, Treatment, Visit
from combwright.terms.ranked import median

SURE: Final = number("sure_of_it")
FOOD: Final = f"{STANDARD['stores_kg']:g} kg of stores"
LIKELY_LAYS: Final = number("likely_lays")
SEASON: Final = (number("sold_from"), number("sold_to"))


@dataclass(frozen=True)
class NucReady:
    """One nuc: what is missing today, the day by which all that grows is there, and the job."""

    colony: str
    yard: str
    missing: tuple[str, ...]
    by: date | None
    chance: float
    job: str

    @property
    def said(self) -> str:
        """Say it in a sentence.

        Examples
        --------
        >>> NucReady("Ash", "Yard", ("three combs of brood",), date(2027, 5, 8), 0.9, "feed").said
        'still needs three combs of brood; bees and brood by 8 May with 90 %; feed'

        """
        missing = f"still needs {', '.join(self.missing)}" if self.missing else "nothing is missing"
        chance = chance_words(self.chance)
        when = (
            f"bees and brood by {day_words(self.by)} with {chance}"
            if self.by
            else (f"bees and brood not this season, {chance} at best")
        )
        grows = self.missing not in ((), (FOOD,))
        return "; ".join((missing, *([when] if grows else []), self.job))


def is_sold(on: date) -> bool:
    """Tell whether nucs are sold at that time of the year."""
    return SEASON[0] <= on.timetuple().tm_yday <= SEASON[1]


def readiness_of(situation: Situation, yard: str) -> NucReady:
    """Hold one nuc against the standard, let live on for as many weeks as nucs are sold ahead."""
    course = nuc_course(situation, yard, READY_WEEKS)
    return nuc_readiness(course, situation.standing.hive.frames, situation.history, situation.on)


def nuc_readiness(course: NucCourse, box: int, entries: Sequence[Noted], on: date) -> NucReady:
    """Hold a nuc against the standard for a sale, from the belief of that very nuc.

    ``box``: frames that its box holds. ``entries``: what was noted of it before the day.
    """
    missing = [*_growing(course), *_written(entries, on)]
    chances = course.ready.mean(axis=0)
    sure = np.flatnonzero(chances >= SURE)
    week = int(sure[0]) if len(sure) else int(chances.argmax())
    by = on + timedelta(days=A_WEEK * week) if len(sure) else None
    job = _job(course, box, missing, by)
    return NucReady(
        course.colony, course.yard, tuple(missing), by, round(float(chances[week]), 3), job
    )


def _growing(course: NucCourse) -> list[str]:
    """Name what bees and queen still owe."""
    now = {
        f"{STANDARD['bees']:g} frames of bees": course.bees[:, 0] >= STANDARD["bees"],
        "three combs of brood": course.brood[:, 0] >= STANDARD["brood"],
        "a queen that has laid three weeks": course.laid_three_weeks[:, 0],
        FOOD: course.stores_kg[:, 0] >= STANDARD["stores_kg"],
    }
    return [what for what, met in now.items() if float(np.mean(met)) < SURE]


def _written(entries: Sequence[Noted], on: date) -> list[str]:
    """Name what the keeper must have seen and written down."""
    visits = [each for each in entries if isinstance(each, Visit)]
    told = []
    if noted_signs(entries):
        told.append("no signs of disease: nothing is sold before an inspector has cleared it")
    if not visits or (on - visits[-1].on).days > A_WEEK:
        told.append("a look for disease within a week")
    if visits and visits[-1].queen_cells in ("charged", "sealed"):
        told.append("no charged cells")
    told += [
        f"product and batch of the treatment of {day_words(each.on)}"
        for each in entries
        if isinstance(each, Treatment) and not (each.product and each.batch)
    ]
    return told


def _job(course: NucCourse, box: int, missing: list[str], by: date | None) -> str:
    if not missing:
        return "sell"
    lays = float(course.laying[:, 0].mean())
    if lays < LIKELY_LAYS:
        return "look for a queen that lays; unite it, or give a mated queen, if there is none"
    if median(course.bees[:, 0]) >= box:
        return "move up to a bigger box, or sell first"
    if by is None:
        return "hold back: give brood or unite two, for it will hardly be ready this season"
    if missing == [FOOD]:
        return "feed it, then sell"
    return "feed and hold until then"

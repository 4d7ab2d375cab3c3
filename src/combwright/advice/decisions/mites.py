"""Mites: where they stand, where they go without a treatment, and what can be done now."""

from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.decision import Decision
from combwright.advice.decisions.treated import COUNT, treated
from combwright.advice.situation import Situation, band
from combwright.advice.words.wording import chance_words, day_words
from combwright.science.mites.season_ahead import growth_in
from combwright.science.mites.treatments import LABEL, Option, options
from combwright.simulation import observe
from combwright.terms.entries import TrayCount, Treatment, WashCount

Floats = NDArray[np.float64]
HARM: Final = 1000.0  # mites in a full colony above which harm grows fast: Defra/NBU 2005
FULL_BEES: Final = 25000.0  # bees of the colony for which that level is meant; judgement
ALLOWED: Final = 0.10  # chance of passing the level before the next chance to treat
COUNT_EVERY: Final = 35  # days after which a new count is asked for in the season; judgement
SAFE_WINTER: Final = 50.0  # mites in midwinter above which a broodless treatment pays; judgement
# What is begun first where several are possible; substances in turn, so that none grows blunt.
IN_SEASON: Final = ("formic acid", "thymol", "amitraz")


@dataclass(frozen=True)
class MitePlan:
    """The decision, and the substance to begin today, if any."""

    decision: Decision
    treatment: str | None


def mites(situation: Situation, *, supers: int) -> MitePlan:
    """Decide on mites: a treatment today, a count, or nothing."""
    now = observe.mites(situation.colonies)
    level = HARM * np.clip(observe.adults(situation.colonies) / FULL_BEES, 0.15, 1.0)
    chance_day = _next_chance(situation.on, supers)
    growth = np.array([growth_in(month).value for month in range(1, 13)])
    later = (
        now
        * situation.colonies["mite_growth"] ** 2
        * np.exp(_summed(growth, situation.on, chance_day))
    )
    passing = float(np.mean(later > level))
    brood = float(np.median(observe.brood(situation.colonies)))
    inputs = {
        "mites_low": band(now)[0],
        "mites": band(now)[1],
        "mites_high": band(now)[2],
        "level": float(np.median(level)),
        "mites_later": float(np.median(later)),
        "chance_of_passing": passing,
        "days_to_next_chance": float((chance_day - situation.on).days),
    }
    ways = options(
        situation.on.month,
        "no brood" if brood < 300.0 else "brood",
        supers,
        float(np.mean(situation.conditions[:, :7, 2])),
    )
    because = _because(inputs, chance_day)
    before = treated(situation)
    because, inputs = (*because, *before.because), inputs | before.inputs
    if before.is_at_work:
        line = "A treatment is at work: count the fall, and again two weeks after it ends."
        return MitePlan(Decision("mites", before.jobs, (*because, line), inputs), None)
    wanted = passing > ALLOWED or _is_main_time(situation.on, supers, inputs)
    chosen = _choose(situation, ways, inputs, broodless=brood < 300.0) if wanted else None
    if chosen is not None:
        name = chosen.treatment.substance
        job = f"Treat with {name} ({chosen.treatment.way}) today. {LABEL}"
        note = "Write product, batch and dates into the book: the law asks for it for five years."
        reasons = (*because, f"{name.capitalize()}: {'; '.join(chosen.because)}.")
        jobs = (*before.jobs, job, note)
        return MitePlan(Decision("mites", jobs, reasons, inputs, _other_ways(name, ways)), name)
    jobs = tuple(dict.fromkeys((*before.jobs, *_count_jobs(situation))))
    return MitePlan(Decision("mites", jobs, because, inputs), None)


def _other_ways(chosen: str, ways: list[Option]) -> str:
    """Name what else would be possible today."""
    possible = dict.fromkeys(way.treatment.substance for way in ways if way.possible == "yes")
    others = [name for name in possible if name != chosen]
    return f"{', '.join(others)}: possible too; substances are used in turn" if others else ""


def _summed(growth: Floats, first: date, last: date) -> float:
    """Growth of the logarithm of mites between two days."""
    days = range(first.toordinal(), last.toordinal())
    return float(sum(growth[date.fromordinal(day).month - 1] for day in days))


def _next_chance(on: date, supers: int) -> date:
    """Give the next day after today on which treating is usual: August, or midwinter."""
    main = date(on.year, 8, 12)
    winter = date(on.year, 12, 15)
    if on < main:
        soon = date.fromordinal(on.toordinal() + 28)
        return main if supers else min(soon, main)
    return winter if on < winter else date(on.year + 1, 3, 15)


def _is_main_time(on: date, supers: int, inputs: dict[str, float]) -> bool:
    """Late summer once supers are off, and broodless midwinter, are treated where mites are."""
    late_summer = (on.month == 8 or (on.month == 9 and on.day < 20)) and supers == 0
    midwinter = on.month == 12 or (on.month == 1 and on.day < 10)
    return (late_summer and inputs["mites_high"] > 120.0) or (
        midwinter and inputs["mites_high"] > SAFE_WINTER
    )


def _choose(
    situation: Situation, ways: list[Option], inputs: dict[str, float], *, broodless: bool
) -> Option | None:
    possible = {way.treatment.substance: way for way in ways if way.possible == "yes"}
    if broodless and "oxalic acid" in possible:
        return possible["oxalic acid"]
    used = _last_substance(situation)
    ordered = sorted(IN_SEASON, key=lambda name: name == used)
    bees = situation.bees
    if bees < 5.0:  # formic acid is not for weak colonies
        ordered = [name for name in ordered if name != "formic acid"]
    del inputs
    return next((possible[name] for name in ordered if name in possible), None)


def _last_substance(situation: Situation) -> str | None:
    used = [entry for entry in situation.history if isinstance(entry, Treatment)]
    return used[-1].substance if used else None


def _count_jobs(situation: Situation) -> tuple[str, ...]:
    counts = [e.on for e in situation.history if isinstance(e, TrayCount | WashCount)]
    if not 3 <= situation.on.month <= 10:
        return ()
    if counts and (situation.on - counts[-1]).days < COUNT_EVERY:
        return ()
    return (COUNT,)


def _because(inputs: dict[str, float], chance_day: date) -> tuple[str, ...]:
    return (
        (
            f"About {_round(inputs['mites'])} mites ({_round(inputs['mites_low'])} to "
            f"{_round(inputs['mites_high'])}) against a level of {_round(inputs['level'])} for its "
            f"size; untreated about {_round(inputs['mites_later'])} by {day_words(chance_day)}, "
            f"chance of passing the level {chance_words(inputs['chance_of_passing'])}."
        ),
    )


def _round(value: float) -> str:
    if value < 20.0:
        return f"{value:.0f}"
    return f"{float(f'{value:.2g}'):,.0f}"

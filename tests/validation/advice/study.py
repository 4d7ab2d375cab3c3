"""Does the advice help? Six keepers on the same colonies, weather and luck, over years.

``python -m tests.validation.advice.study --page docs/validation/advice.md``
"""

import argparse
import sys
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import date
from math import ceil
from multiprocessing import get_context
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray
from tests.validation.advice.follower import Follower
from tests.validation.advice.keepers import Beginner, Careful, Idle, Keeper, fits
from tests.validation.advice.money import money, without_nucs
from tests.validation.advice.truth import COUNTED, Tally, TrueColony
from tests.validation.advice.weather import Known, conditions_of

from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import SPREAD, Described, begin
from combwright.simulation.columns import TRAITS
from combwright.simulation.luck import luck
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.weather.climates import climate
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
PLACES: Final = ("Dublin Airport", "Cork Airport", "Sheffield")
OPPONENTS: Final = ("careful", "careful with queens", "careful with a nuc")
KEEPERS: Final = ("Combwright", *OPPONENTS, "beginner", "nothing")
FIRST: Final = date(2027, 4, 1)
FLOW: Final = (6, 25)  # the main flow begins about now
AUTUMN: Final = (10, 1)
HIVE: Final = "national timber"
SEED: Final = 2027  # of the truth, unless another is given


@dataclass(frozen=True)
class Asked:
    """One colony of a study."""

    place: str
    number: int
    years: int
    members: int
    outside: bool
    seed: int


@dataclass(frozen=True)
class Outcome:
    """What each keeper's tally of one colony is, and how often each harm came to it."""

    asked: Asked
    counted: dict[str, dict[str, Floats]]
    harms: dict[str, NDArray[np.bool_]]
    flagged: list[tuple[float, bool]]


def live_with_all(asked: Asked) -> Outcome:
    """Let one colony live through the years under each keeper."""
    last = date(FIRST.year + asked.years, FIRST.month, FIRST.day)
    days = (last - FIRST).days
    name = f"{asked.place} {asked.number}"
    seed = asked.seed + 1000 * PLACES.index(asked.place) + asked.number
    place = climate(asked.place)
    weather = generate(place, FIRST, days, 1, seed)
    true = conditions_of(weather, place, seed)
    fortune = luck(asked.seed, name, FIRST, days, 1)
    known = Known(weather, place, seed + 500_000)
    counted, harms, flagged = {}, {}, []
    for keeper in KEEPERS:
        who = _keeper(keeper, known, asked)
        colony = _first_colony(asked, keeper, name, true, fortune)
        _live(colony, who, last, asked)
        counted[keeper] = {each: getattr(colony.tally, each) for each in COUNTED}
        counted[keeper] |= {"money": money(colony.tally), "apart": without_nucs(colony.tally)}
        harms[keeper] = np.array(colony.harms, dtype=np.bool_).reshape(-1, 5)
        if isinstance(who, Follower):
            flagged = who.flagged
    return Outcome(asked, counted, harms, flagged)


def _keeper(keeper: str, known: Known, asked: Asked) -> Keeper:
    if keeper == "Combwright":
        return Follower(known, asked.members)
    if keeper in OPPONENTS:
        return Careful(
            queen_since=date(FIRST.year - 1, 6, 20),
            buys_queens=keeper == "careful with queens",
            makes_nuc=keeper == "careful with a nuc",
        )
    return Beginner() if keeper == "beginner" else Idle()


def _live(colony: TrueColony, keeper: Keeper, last: date, asked: Asked) -> None:
    """Pass from visit to visit; count at the flow, in autumn and in spring."""
    marks = _marks(asked.years)
    visit = FIRST
    while colony.on < last:
        day = min([visit, last, *(mark for mark in marks if mark > colony.on)])
        if day > colony.on:
            colony.live_until(day)
        if day in marks:
            _mark(colony, keeper, day, asked)
        if day == visit and day < last:
            visit = date.fromordinal(day.toordinal() + _visit(colony, keeper))


def _visit(colony: TrueColony, keeper: Keeper) -> int:
    if colony.is_gone:
        return 28
    colony.end_interval()
    before = len(keeper.flagged) if isinstance(keeper, Follower) else 0
    if before and isinstance(keeper, Follower):
        chance, _ = keeper.flagged[-1]
        keeper.flagged[-1] = (chance, colony.swarms_since > 0.0)
    colony.begin_interval()
    return keeper.visit(colony)


def _marks(years: int) -> set[date]:
    return {
        date(FIRST.year + year + (month < FIRST.month or (month, day) == (4, 1)), month, day)
        for year in range(years)
        for month, day in (FLOW, AUTUMN, (4, 1))
    }


def _mark(colony: TrueColony, keeper: Keeper, day: date, asked: Asked) -> None:
    there = not colony.is_gone
    year = day.year - FIRST.year
    if (day.month, day.day) == FLOW:
        bees = float(observe.frames_of_bees(colony.record)[0])
        colony.tally.frames[year] = bees if there else 0.0
    elif (day.month, day.day) == AUTUMN:
        alive = there and float(observe.adults(colony.record)[0]) > 1000.0
        colony.tally.mites[year] = float(observe.mites(colony.record)[0]) if alive else np.nan
    else:
        colony.tally.survived[year - 1] = float(colony.is_alive)
        colony.tally.worth_after[year - 1] = colony.worth
        if not colony.is_alive:
            _replace(colony, keeper, day, asked)
        if year < asked.years:
            colony.tally.worth_before[year] = colony.worth
        colony.record["swarmed"] = 0.0


def _replace(colony: TrueColony, keeper: Keeper, day: date, asked: Asked) -> None:
    """Put another colony in the place of one that was lost, the same for every keeper."""
    full = isinstance(keeper, Beginner | Idle)
    colony.record, colony.set_up = _drawn(asked, day, full=full)
    colony.is_gone = False
    colony.harms.append([False] * 5)
    if isinstance(keeper, Follower):
        keeper.start_afresh()
    if isinstance(keeper, Careful):
        keeper.queen_since = date(day.year - 1, 6, 20)
        keeper.waits_until, keeper.without_eggs = None, 0


def _first_colony(
    asked: Asked, keeper: str, name: str, weather: Floats, fortune: Floats
) -> TrueColony:
    record, set_up = _drawn(asked, FIRST, full=keeper in {"beginner", "nothing"})
    hive = catalogue().hive(HIVE)
    tally = Tally(asked.years)
    first = TrueColony(name, hive, record, set_up, FIRST, FIRST, weather, fortune, tally)
    tally.worth_before[0] = first.worth
    return first


def _drawn(asked: Asked, on: date, *, full: bool) -> tuple[NDArray[np.void], SetUp]:
    """Draw a colony in spring: four to eight frames of bees, a queen of last year."""
    hive = catalogue().hive(HIVE)
    rng = stream(asked.seed, asked.place, asked.number, "begin", on.toordinal())
    bees = float(rng.uniform(4.0, 8.0))
    frames = hive.frames if full else min(hive.frames, ceil(bees) + 1)
    set_up = SetUp(hive=HIVE, frames=frames, dummy_boards=0 if full else fits(hive.frames, frames))
    brood, stores = bees * float(rng.uniform(0.4, 0.6)), float(rng.uniform(4.0, 10.0))
    described = Described(bees, brood, stores, queen_year=on.year - 1, has_queen=True)
    seed = int(rng.integers(1_000_000))
    record = begin(hive, set_up, described, on=on, members=1, seed=seed, colony="true")
    for trait in TRAITS:
        sd = SPREAD[trait].value
        record[trait] = np.exp(sd * _deviate(rng, outside=asked.outside) - 0.5 * sd * sd)
    return record, set_up


def _deviate(rng: np.random.Generator, *, outside: bool) -> float:
    """Draw a standard normal number, on demand from outside its central half."""
    value = float(rng.standard_normal())
    while outside and abs(value) < 0.6745:
        value = float(rng.standard_normal())
    return value


def run_study(
    *,
    colonies: int,
    places: Sequence[str],
    years: int,
    members: int,
    outside: bool,
    seed: int = SEED,
    workers: int = 2,
    progress: bool = False,
) -> list[Outcome]:
    """Run a study; colonies are shared out over processes."""
    asked = [
        Asked(place, number, years, members, outside, seed)
        for number in range(colonies)
        for place in places
    ]
    if workers == 1:
        return [live_with_all(each) for each in asked]
    found = []
    with ProcessPoolExecutor(workers, mp_context=get_context("spawn")) as pool:
        for outcome in pool.map(live_with_all, asked):
            found.append(outcome)
            if progress and len(found) % 10 == 0:
                sys.stderr.write(f"{len(found)} of {len(asked)}\n")
    return found


def main(arguments: Sequence[str] | None = None) -> None:
    """Run the studies and write the page."""
    from tests.validation.advice.page import write_page

    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--colonies", type=int, default=100)
    parser.add_argument("--years", type=int, default=5)
    parser.add_argument("--places", type=int, default=3)
    parser.add_argument("--members", type=int, default=60)
    parser.add_argument("--outside", type=int, default=40, help="colonies of the second study")
    parser.add_argument("--seed", type=int, default=SEED, help="seed of the truth")
    parser.add_argument("--workers", type=int, default=2, help="processes")
    parser.add_argument("--page", type=Path)
    chosen = parser.parse_args(arguments)
    places = PLACES[: chosen.places]
    studies = {}
    for name, count, outside in (
        ("prior", chosen.colonies, False),
        ("outside", chosen.outside, True),
    ):
        if count:
            studies[name] = run_study(
                colonies=count,
                places=places,
                years=chosen.years,
                members=chosen.members,
                outside=outside,
                seed=chosen.seed,
                workers=chosen.workers,
                progress=True,
            )
    command = " ".join(sys.argv[1:]) if arguments is None else ""
    text = write_page(studies, command, chosen.seed)
    if chosen.page:
        chosen.page.write_text(text, encoding="utf-8")
    sys.stdout.write(text)


if __name__ == "__main__":
    main()

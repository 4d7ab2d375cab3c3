"""Does the advice help? Keepers on the same colonies, weather and luck, over years.

``python -m tests.validation.advice.study --page docs/validation/advice.md``
"""

import argparse
import sys
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import lru_cache
from math import ceil
from multiprocessing import get_context
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray
from tests.validation.advice.follower import Follower
from tests.validation.advice.keepers import Careful, Keeper, fits
from tests.validation.advice.money import money, parts, without_nucs
from tests.validation.advice.truth import COUNTED, Tally, TrueColony
from tests.validation.advice.weather import Known, conditions_of
from tests.validation.simulation.trying import FREE

from combwright.advice.prices import NUCS, Prices
from combwright.belief.worlds import WORLDS
from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import SPREAD, Described, begin
from combwright.simulation.biology import BIOLOGY, PARAMETERS, Biology
from combwright.simulation.columns import TRAITS
from combwright.simulation.luck import luck
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.weather.climates import climate
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
PLACES: Final = ("Dublin Airport", "Cork Airport", "Sheffield")
ASKED_FOR: Final = ("careful", "careful with queens", "careful with a nuc")
OPPONENTS: Final = (*ASKED_FOR, "careful with her nuc")
KEEPERS: Final = ("Combwright", *OPPONENTS)
NO_BUYERS: Final = ("Combwright", "careful", "careful with queens", "careful for honey")
FIRST: Final = date(2027, 4, 1)
FLOW: Final = (6, 25)  # the main flow begins about now
AUTUMN: Final = (10, 1)
HIVE: Final = "national timber"
OUTSIDE_TIMES: Final = 2.0  # as far from the middle as a fitted world
TRIES: Final = 20  # colonies begun for one that comes through its first winter
LACKS: Final = {
    "": "all of it",
    "season": "the season ahead (a fortnight only)",
    "nucs": "nucs on purpose",
    "queens": "queens, but for those of nucs",
    "looking": "looks and counts that are asked for",
    "swarm": "dividing and the cutting of cells",
}
AIMED: Final = ("honey first", "nucs first", "few visits")
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
    keepers: tuple[str, ...] = KEEPERS
    lacks: str = ""
    aim: str = "as priced"
    sells_nucs: bool = True


@dataclass(frozen=True)
class Outcome:
    """What each keeper's tally of one colony is, and how often each harm came to it."""

    asked: Asked
    began: float
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
    for keeper in asked.keepers:
        who = _keeper(keeper, known, asked)
        colony = _first_colony(asked, name, true, fortune)
        if isinstance(who, Careful):
            who.queen_since = colony.queen_since
        _live(colony, who, last, asked)
        counted[keeper] = {each: getattr(colony.tally, each) for each in COUNTED}
        counted[keeper] |= _earned(colony.tally, sells_nucs=asked.sells_nucs)
        harms[keeper] = np.array(colony.harms, dtype=np.bool_).reshape(-1, 5)
        if isinstance(who, Follower):
            flagged = who.flagged
    began = float(observe.frames_of_bees(_wintered(asked, 0)[0])[0])
    return Outcome(asked, began, counted, harms, flagged)


def _earned(tally: Tally, *, sells_nucs: bool) -> dict[str, Floats]:
    """Give what was earned, and what of: where nobody buys nucs, nothing of those."""
    apart = without_nucs(tally)
    earned = {f"from {name}": part for name, part in parts(tally).items()}
    if not sells_nucs:
        return earned | {"from nucs": np.zeros(tally.years), "money": apart, "apart": apart}
    return earned | {"money": money(tally), "apart": apart}


def _keeper(keeper: str, known: Known, asked: Asked) -> Keeper:
    if keeper == "Combwright":
        prices = Prices().aimed(asked.aim)
        if not asked.sells_nucs:
            prices = replace(prices, **dict.fromkeys(NUCS, 0.0))
        return Follower(known, asked.members, lacks=asked.lacks, prices=prices)
    return Careful(
        queen_since=date(FIRST.year - 1, 6, 20),
        buys_queens=keeper == "careful with queens",
        makes_nuc=keeper in {"careful with a nuc", "careful with her nuc"},
        sells_her=keeper == "careful with her nuc",
        keeps_to_honey=keeper == "careful for honey",
    )


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
    record, colony.set_up = _wintered(asked, day.year - FIRST.year)
    colony.record = record.copy()
    colony.is_gone = False
    colony.harms.append([False] * 5)
    if isinstance(keeper, Follower):
        keeper.start_afresh()
    if isinstance(keeper, Careful):
        keeper.queen_since = colony.queen_since
        keeper.waits_until, keeper.without_eggs, keeper.counted = None, 0, None


def _first_colony(asked: Asked, name: str, weather: Floats, fortune: Floats) -> TrueColony:
    record, set_up = _wintered(asked, 0)
    hive, tally = catalogue().hive(HIVE), Tally(asked.years)
    first = TrueColony(
        name, hive, record.copy(), set_up, FIRST, FIRST, weather, fortune, tally, _world(asked)
    )
    tally.worth_before[0] = first.worth
    return first


@lru_cache(maxsize=8)
def _world(asked: Asked) -> Biology:
    """Draw the world of a colony: every other one as far again from the middle as a fitted one."""
    rng = stream(asked.seed, asked.place, asked.number, "world")
    fitted = WORLDS[int(rng.integers(len(WORLDS)))]
    if not is_outside(asked):
        return fitted
    far = {}
    for name in FREE:
        middle, at = getattr(BIOLOGY, name), getattr(fitted, name)
        low, high = PARAMETERS[name].low, PARAMETERS[name].high
        far[name] = float(np.clip(middle + OUTSIDE_TIMES * (at - middle), low, high))
    return BIOLOGY._replace(**far)


def is_outside(asked: Asked) -> bool:
    """Tell whether a colony lives in a world outside the fitted set."""
    return asked.number % 2 == 1


@lru_cache(maxsize=8)
def _wintered(asked: Asked, which: int) -> tuple[NDArray[np.void], SetUp]:
    """Give a colony on 1 April that has lived a year under the careful keeper, winter and all."""
    begun, place = date(FIRST.year - 1, 4, 1), climate(asked.place)
    days = (FIRST - begun).days
    for attempt in range(TRIES):
        number = TRIES * which + attempt
        seed = asked.seed + 1_000_000 + 1000 * number + asked.number
        name = f"{asked.place} {asked.number} before {number}"
        true = conditions_of(generate(place, begun, days, 1, seed), place, seed)
        record, set_up = _described(asked, begun, number)
        hive, fortune = catalogue().hive(HIVE), luck(asked.seed, name, begun, days, 1)
        colony = TrueColony(
            name, hive, record, set_up, begun, begun, true, fortune, Tally(1), _world(asked)
        )
        keeper, visit = Careful(queen_since=date(begun.year - 1, 6, 20)), begun
        while visit < FIRST:
            colony.live_until(visit)
            colony.begin_interval()
            visit = visit + timedelta(days=keeper.visit(colony))
        colony.live_until(FIRST)
        if colony.is_alive:
            break
    colony.record["swarmed"] = 0.0
    return colony.record, colony.set_up


def _described(asked: Asked, on: date, number: int) -> tuple[NDArray[np.void], SetUp]:
    """Draw a colony in spring: four to eight frames of bees, a queen of last year."""
    hive = catalogue().hive(HIVE)
    rng = stream(asked.seed, asked.place, asked.number, "begin", number)
    bees = float(rng.uniform(4.0, 8.0))
    frames = min(hive.frames, ceil(bees) + 1)
    set_up = SetUp(hive=HIVE, frames=frames, dummy_boards=fits(hive.frames, frames))
    brood, stores = bees * float(rng.uniform(0.4, 0.6)), float(rng.uniform(4.0, 10.0))
    described = Described(bees, brood, stores, queen_year=on.year - 1, has_queen=True)
    seed = int(rng.integers(1_000_000))
    record = begin(hive, set_up, described, on=on, members=1, seed=seed, colony="true")
    for trait in TRAITS:
        sd = SPREAD[trait].value
        record[trait] = np.exp(sd * _deviate(rng, outside=asked.outside) - 0.5 * sd * sd)
    record["world"] = 0.0
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
    seeds: Sequence[int] = (SEED,),
    workers: int = 2,
    sells_nucs: bool = True,
) -> list[Outcome]:
    """Run a study; colonies are shared out over processes."""
    keepers = KEEPERS if sells_nucs else NO_BUYERS
    asked = [
        Asked(place, number, years, members, outside, seed, keepers, sells_nucs=sells_nucs)
        for seed in seeds
        for number in range(colonies)
        for place in places
    ]
    return _run(asked, workers)


def run_alone(
    colonies: int, seed: int, workers: int, *, lacks: str = "", aim: str = "as priced"
) -> list[Outcome]:
    """Run the advice alone for a year, without one of its parts or with an aim of the keeper."""
    alone = Asked(
        PLACES[0],
        0,
        1,
        60,
        outside=False,
        seed=seed,
        keepers=KEEPERS[:1],
        lacks=lacks,
        aim=aim,
    )
    asked = [
        replace(alone, place=PLACES[number % len(PLACES)], number=number)
        for number in range(colonies)
    ]
    return _run(asked, workers)


def _run(asked: Sequence[Asked], workers: int) -> list[Outcome]:
    if workers == 1:
        return [live_with_all(each) for each in asked]
    with ProcessPoolExecutor(workers, mp_context=get_context("spawn")) as pool:
        return list(pool.map(live_with_all, asked))


def main(arguments: Sequence[str] | None = None) -> None:
    """Run the studies and write the page."""
    from tests.validation.advice.page import write_page

    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--colonies", type=int, default=100)
    parser.add_argument("--years", type=int, default=5)
    parser.add_argument("--places", type=int, default=3)
    parser.add_argument("--members", type=int, default=60)
    parser.add_argument("--outside", type=int, default=40, help="colonies of the second study")
    parser.add_argument("--no-buyers", type=int, default=0, help="colonies where none buys nucs")
    parser.add_argument(
        "--seed", type=int, nargs="+", default=[SEED], help="seeds of the truth, a thousand apart"
    )
    parser.add_argument("--workers", type=int, default=2, help="processes")
    parser.add_argument("--without", type=int, default=12, help="colonies without each part")
    parser.add_argument("--page", type=Path)
    chosen = parser.parse_args(arguments)
    places = PLACES[: chosen.places]
    studies = {}
    for name, count, outside, sells_nucs in (
        ("prior", chosen.colonies, False, True),
        ("outside", chosen.outside, True, True),
        ("no buyers", chosen.no_buyers, False, False),
    ):
        if count:
            studies[name] = run_study(
                colonies=count,
                places=places,
                years=chosen.years,
                members=chosen.members,
                outside=outside,
                seeds=chosen.seed,
                workers=chosen.workers,
                sells_nucs=sells_nucs,
            )
    command = " ".join(sys.argv[1:]) if arguments is None else ""
    if chosen.page:  # so that an error in what follows loses nothing
        chosen.page.write_text(write_page(studies, command, chosen.seed), encoding="utf-8")
    without = {
        name: run_alone(chosen.without, chosen.seed[0] + 1, chosen.workers, lacks=lacks)
        for lacks, name in LACKS.items()
        if chosen.without
    }
    aimed = {
        aim: run_alone(chosen.without, chosen.seed[0] + 1, chosen.workers, aim=aim)
        for aim in AIMED
        if chosen.without
    }
    text = write_page(studies, command, chosen.seed, without, aimed)
    if chosen.page:
        chosen.page.write_text(text, encoding="utf-8")
    sys.stdout.write(text)


if __name__ == "__main__":
    main()

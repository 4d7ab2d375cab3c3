"""How long the decisions take: aim 300 colonies x 200 members, season ahead and branches, 8 s.

Colonies as a spring round meets them, warm (kernel compiled), on two threads, as the round does.
Where the time goes is told by the decisions called alone, one after the other, on one thread.
"""

import resource
from collections import deque
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from functools import partial
from itertools import islice
from time import perf_counter, process_time

import numpy as np

from combwright.advice.deciding import Deciding
from combwright.advice.decisions import food, honey, nucs, queen, space, treating, visits, winter
from combwright.advice.decisions.branches import branches
from combwright.advice.plan import plan
from combwright.advice.season_ahead import SeasonDays, season_ends
from combwright.advice.situation import Limits, Situation
from combwright.kit.catalogue import catalogue
from combwright.kit.standing import Standing
from combwright.simulation.begin import Described, begin
from combwright.simulation.luck import luck
from combwright.terms.set_up import SetUp
from combwright.weather.climates import climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

Work = Callable[[Situation], object]
AT_ONCE = 20  # colonies held at a time, as in a round
MEMBERS, COLONIES, AHEAD, DAYS, THREADS = 200, 300, 29, 7, 2
ON = date(2027, 5, 8)
AIM_S, AIM_MB = 8.0, 600.0


def colonies(count: int) -> Iterator[Situation]:
    """Draw colonies of five to eleven frames in one yard's weather, one after the other."""
    place = climate("Dublin Airport")
    weather = generate(place, ON, (season_ends(ON, AHEAD) - ON).days, MEMBERS, 1)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, place, seed=1)
    table = conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)
    rng = np.random.default_rng(1)
    for number in range(count):
        yield _one(f"colony {number}", rng, table)


def _one(name: str, rng: np.random.Generator, table: np.ndarray) -> Situation:
    hive = catalogue().hive("national timber")
    frames = int(rng.integers(6, 12))
    bees = float(rng.uniform(0.6, 1.1)) * frames
    set_up = SetUp(hive=hive.key, frames=frames, dummy_boards=1 if frames >= hive.frames - 1 else 2)
    known = Described(bees, 0.55 * bees, float(rng.uniform(2.0, 9.0)), queen_year=2026)
    members = begin(hive, set_up, known, on=ON, members=MEMBERS, seed=1, colony=name)
    chance = luck(1, name, ON, AHEAD, MEMBERS)
    standing = Standing(hive, set_up)
    season = SeasonDays(table, np.arange(MEMBERS))
    near = table[:, :AHEAD]
    return Situation(name, ON, DAYS, members, standing, near, chance, Limits(), season=season)


def timed(work: Work, count: int, threads: int) -> tuple[float, float]:
    """Time one kind of work over colonies: by the clock, and of the processor. [s, s]."""
    whole = processor = 0.0
    waiting = colonies(count)
    with ThreadPoolExecutor(threads) as pool:
        while some := list(islice(waiting, AT_ONCE)):
            start, used = perf_counter(), process_time()
            deque(pool.map(work, some), maxlen=0)
            whole += perf_counter() - start
            processor += process_time() - used
    return whole, processor


def parts() -> dict[str, Work]:
    """Give the decisions alone, each with what it needs of others."""
    decide: dict[str, Callable[[Deciding], object]] = {
        "queen": queen.decide,
        "honey": honey.decide,
        "winter": winter.decide,
        "room and warmth": space.decide,
        "and food": food.decide,
        "and next visit": visits.decide,
        "and branches": branches,
        "mites": treating.decide,
        "nucs": nucs.decide,
    }
    return {name: partial(_decided, one) for name, one in decide.items()}


def _decided(decide: Callable[[Deciding], object], at: Situation) -> object:
    return Deciding(at).of(decide)


def main() -> None:
    """Measure and print."""
    deque(map(plan, colonies(2)), maxlen=0)  # warms the kernel
    took = {}
    for count in (COLONIES // 4, COLONIES // 2, COLONIES):
        whole, processor = timed(plan, count, THREADS)
        took[count] = whole
        print(f"{count:4d} colonies: {whole:6.2f} s, of the processor {processor:6.2f} s")
    growth = took[COLONIES] / took[COLONIES // 4] / 4.0
    print(f"a colony at {COLONIES} against one at {COLONIES // 4}: {growth:.2f} (linear: 1)")
    print(f"one thread, of the processor, a colony: {_alone(plan):.1f} ms; alone:")
    for name, work in parts().items():
        print(f"  {name:16s} {_alone(work):6.1f} ms")
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    met = took[COLONIES] < AIM_S and memory < AIM_MB
    print(f"most memory: {memory:.0f} MB (aim {AIM_MB:.0f})")
    print(f"aim of {AIM_S:.0f} s for {COLONIES} colonies: {'met' if met else 'missed'}")


def _alone(work: Work) -> float:
    return timed(work, 40, 1)[1] / 40 * 1e3


if __name__ == "__main__":
    main()

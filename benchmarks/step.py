"""How fast simulated colonies live: member-days a second, and what the machine could do.

The compiled day is compared, in the same run, with the plain Python reference of the tests and,
for some of its processes, with vectorised numpy. Two limits are measured: moving the bytes that
each member-day must move, and doing the arithmetic that the plain reference counts.
"""

import math
import os
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from time import perf_counter, process_time
from unittest.mock import patch

import numba
import numpy as np
from numpy.typing import NDArray

sys.path.insert(0, str(Path(__file__).parent.parent))

from tests.simulation import samples
from tests.simulation.reference.day import one_day, plain

from combwright.simulation.biology import BIOLOGY, as_table
from combwright.simulation.columns import STATE
from combwright.simulation.run import run
from combwright.simulation.step.mite_day import age_mites
from combwright.simulation.step.rearing import age_brood
from combwright.simulation.step.warmth import brood_of, warmth

Floats = NDArray[np.float64]
Colonies = NDArray[np.void]
MEMBERS, DAYS, CORES = 4000, 60, 2
SLOW_MEMBERS, SLOW_DAYS = 4, 60
AIM = 150.0


def seconds(
    work: Callable[[], object], times: int = 9, clock: Callable[[], float] = process_time
) -> float:
    """Best of some runs, by the processor's time, which other programs disturb less, or a clock."""
    best = float("inf")
    for _ in range(times):
        start = clock()
        work()
        best = min(best, clock() - start)
    return best


def compiled(colonies: Colonies, days: Floats, luck: Floats) -> tuple[float, float]:
    """Member-days a second on one core and on two."""
    one = seconds(lambda: run(colonies.copy(), days, luck))
    half = MEMBERS // CORES
    parts = [slice(i * half, (i + 1) * half) for i in range(CORES)]
    with ThreadPoolExecutor(CORES) as pool:

        def on_cores() -> None:
            list(pool.map(lambda p: run(colonies[p].copy(), days, luck[p]), parts))

        both = seconds(on_cores, 25, perf_counter)
    return MEMBERS * DAYS / one, MEMBERS * DAYS / both


def plainly(colonies: Colonies, days: Floats, luck: Floats) -> tuple[float, float]:
    """Member-days a second of the plain reference, by the processor's time and by the clock."""
    weather, chance = days.tolist(), luck.tolist()

    def live() -> None:
        for i in range(SLOW_MEMBERS):
            colony = plain(colonies[i])
            for day in range(SLOW_DAYS):
                one_day(colony, weather[i % len(weather)][day], chance[i][day], BIOLOGY)

    lived = SLOW_MEMBERS * SLOW_DAYS
    return lived / seconds(live, 5), lived / seconds(live, 5, perf_counter)


class Counted(float):
    """A number that counts what is done with it."""

    done = 0


def _counting(name: str) -> Callable[..., "Counted"]:
    plain_one = getattr(float, name)

    def operation(self: float, *others: float) -> "Counted":
        Counted.done += 1
        return Counted(plain_one(self, *map(float, others)))

    return operation


for _name in ("add", "sub", "mul", "truediv", "pow"):
    for _side in ("", "r"):
        setattr(Counted, f"__{_side}{_name}__", _counting(f"__{_side}{_name}__"))


def arithmetic(colonies: Colonies, days: Floats, luck: Floats) -> float:
    """Operations of one member-day, as the plain reference counts them; an exp counts as ten."""
    exps = 0
    true_exp = math.exp

    def counted_exp(x: float) -> float:
        nonlocal exps
        exps += 1
        return Counted(true_exp(x))

    colony = {
        name: [Counted(x) for x in value] if isinstance(value, list) else Counted(value)
        for name, value in plain(colonies[0]).items()
    }
    Counted.done = 0
    with patch.object(math, "exp", counted_exp):
        for day in range(DAYS):
            weather = [Counted(x) for x in days[0, day]]
            one_day(colony, weather, [Counted(x) for x in luck[0, day]], BIOLOGY)
    return (Counted.done + 10 * exps) / DAYS


@numba.njit(cache=False, fastmath=True)
def _multiply_add(x: Floats, times: int) -> float:
    for _ in range(times):
        for i in range(len(x)):
            x[i] = x[i] * 0.999999 + 1e-9
    return float(x[0])


def operations_a_second() -> float:
    """Multiplications and additions that one core does in its cache."""
    x = np.ones(1024)
    _multiply_add(x, 1)
    return 2 * 1024 * 20000 / seconds(lambda: _multiply_add(x, 20000))


def bytes_a_second() -> float:
    """Bytes that one core reads and writes."""
    source = np.ones(16_000_000)
    target = np.empty_like(source)
    return 2 * source.nbytes / seconds(lambda: np.copyto(target, source))


@numba.njit(cache=False)
def _processes_compiled(colonies: Colonies, today: np.void, bio: np.void) -> None:
    for i in range(len(colonies)):
        s = colonies[i]
        warmth(s, brood_of(s), today, bio)
        age_mites(s, 900.0, 20.0, 0.0, 1.1, bio)
        age_brood(s, 900.0, 0.01, 0.0, bio)


def _processes_numpy(c: dict[str, Floats]) -> None:
    b = BIOLOGY
    bees = c["nest"] + c["foragers"] + c["winter"]
    brood = c["eggs"].sum(1) + c["larvae"].sum(1) + c["sealed"].sum(1)
    # warmth
    rearing = brood / (brood + b.core_half)
    covered = np.minimum(bees / c["bees_per_frame"] * (1 - (1 - b.contract) * 0.45), c["frames"])
    empty = np.maximum(0.0, c["frames"] - covered)
    beside = empty / (empty + b.empty_half)
    loose = b.mantle_loose + (b.mantle_brood - b.mantle_loose) * rearing
    loose *= 1.0 + b.draught * rearing * beside
    mantle = b.mantle_w_per_k * (bees * b.bee_g + 1.0) ** b.mantle_exponent * loose
    walls = c["heat_loss"] * (c["loss_base"] + c["loss_per_frame"] * covered)
    loss = mantle * walls / (mantle + walls)
    core = b.cluster_c + (b.nest_c - b.cluster_c) * rearing
    living = bees * (b.basal_loose + (b.basal_nest - b.basal_loose) * rearing * 0.7) * 0.19
    extra = np.minimum(np.maximum(0.0, loss * (core - 9.0) - living), bees * b.heat_most)
    night = loss * (b.nest_c - 6.0)
    share = np.minimum(1.0, (living + bees * b.heat_most) / np.maximum(night, 1e-9))
    _ = (
        np.maximum(b.warm_least * covered, covered - b.edge_frames * 2 * beside * 0.8) * share,
        extra,
    )
    # mites
    grams = bees * b.bee_g + 1.0
    worker, drone = b.invade_worker * 900.0 / grams, b.invade_drone * 20.0 / grams
    enter = c["mites"] * (1.0 - np.exp(-(worker + drone)))
    to_drone = enter * drone / (worker + drone)
    keep = (1.0 - c["kill_cells"])[:, None]
    c["mites_worker"] *= keep
    c["mites_drone"] *= keep
    left, left_drone = c["mites_worker"][:, 11].copy(), c["mites_drone"][:, 4] * (5 / 14.5)
    c["mites_worker"][:, 1:] = c["mites_worker"][:, :-1].copy()
    c["mites_worker"][:, 0] = enter - to_drone
    moved = c["mites_drone"] * (5 / 14.5)
    c["mites_drone"] -= moved
    c["mites_drone"][:, 1:] += moved[:, :-1]
    c["mites_drone"][:, 0] += to_drone
    stay = c["mites"] - enter
    natural = b.mite_death_winter + (b.mite_death - b.mite_death_winter) * brood / (
        brood + b.mite_death_half
    )
    dying = stay * (1.0 - np.exp(-natural) * (1.0 - c["kill_bees"]))
    c["mites"] = (
        stay - dying + c["mite_growth"] * (left * b.leave_worker + left_drone * b.leave_drone)
    )
    # brood
    rate = c["brood_mortality"]
    egg = (1.0 - np.minimum(1.0, b.egg_death * rate)) * 0.99
    larva = (1.0 - np.minimum(1.0, b.larva_death * rate)) * 0.99
    pupa = (1.0 - np.minimum(1.0, b.sealed_death * rate)) * 0.99
    hatched, capped = c["eggs"][:, 2] * egg, c["larvae"][:, 5] * larva
    c["sealed"][:, 1:] = c["sealed"][:, :-1] * pupa[:, None]
    c["sealed"][:, 0] = capped
    c["larvae"][:, 1:] = c["larvae"][:, :-1] * larva[:, None]
    c["larvae"][:, 0] = hatched
    c["eggs"][:, 1:] = c["eggs"][:, :-1] * egg[:, None]
    c["eggs"][:, 0] = 900.0


def numpy_against_compiled(members: int) -> float:
    """Time of three processes in vectorised numpy against compiled, on so many colonies."""
    records = samples.usual(members=members)
    columns = {name: np.ascontiguousarray(records[name]) for name in STATE.names or ()}
    bio, today = as_table(BIOLOGY)[0], samples.today(mean_c=9.0, night_c=6.0)
    _processes_compiled(records.copy(), today, bio)
    fast = seconds(lambda: _processes_compiled(records, today, bio), 9)
    return seconds(lambda: _processes_numpy(columns), 9) / fast


def line(what: str, value: str) -> None:
    """Print one line of the table."""
    print(f"{what:58} {value}")


def main() -> None:
    """Print speeds, ratios and shares."""
    colonies = samples.usual(members=MEMBERS)
    days, luck = np.ascontiguousarray(samples.dublin()[:, :DAYS]), samples.chance(1, MEMBERS, DAYS)
    start = perf_counter()
    run(colonies[:1].copy(), days[:, :1], luck)
    line("first day, compiling or reading the compiled step", f"{perf_counter() - start:.2f} s")
    one, two = compiled(colonies, days, luck)
    slow, slow_by_clock = plainly(colonies, days, luck)
    line("compiled, one core's time", f"{one:,.0f} member-days a second")
    line(f"compiled, {CORES} threads by the clock ({os.cpu_count()} cores)", f"{two:,.0f}")
    line("plain Python reference, one core's time", f"{slow:,.0f}")
    line("plain Python reference, by the clock", f"{slow_by_clock:,.0f}")
    line("compiled against the reference, one core", f"{one / slow:,.0f} times")
    line(f"... two threads by the clock (aim {AIM:.0f})", f"{two / slow_by_clock:,.0f} times")
    moved = (2 * STATE.itemsize / DAYS) + days.itemsize * (days.shape[2] + luck.shape[2])
    operations = arithmetic(colonies, days, luck)
    by_bytes = bytes_a_second() / moved
    by_arithmetic = operations_a_second() / operations
    line("state of a colony, in the cache over its days", f"{STATE.itemsize:,} bytes")
    line("bytes that a member-day must move", f"{moved:,.0f}")
    line("operations of a member-day (an exp counts as ten)", f"{operations:,.0f}")
    line("limit by memory, one core", f"{by_bytes:,.0f} member-days a second")
    line("limit by arithmetic in full vectors, one core", f"{by_arithmetic:,.0f}")
    line("share of the nearer limit", f"{one / min(by_bytes, by_arithmetic):.0%}")
    for members in (200, 4000):
        ratio = numpy_against_compiled(members)
        line(f"warmth, mites and brood in numpy, {members} colonies", f"{ratio:.1f} times as long")


if __name__ == "__main__":
    main()

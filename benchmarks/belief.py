"""The belief: a new visit in one colony (aim 150 ms), and 300 colonies from nothing (aim 60 s).

Reference: the same book followed again unchanged, from what was kept. Cost is also shown for a
quarter and a half of the colonies, and for half of the notes, where a line through zero would
give 1.0.
"""

from collections.abc import Sequence
from datetime import date, timedelta
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter, process_time
from typing import Any, NamedTuple
from uuid import UUID

import numpy as np

from combwright.belief.following.noted import notes_of_colonies
from combwright.belief.following.replay import Replay
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.observation import EYE, looked_at
from combwright.kit.catalogue import catalogue
from combwright.services.beliefs.kept_beliefs import KeptBeliefs, version
from combwright.services.beliefs.neighbours import MEMBERS as FEW
from combwright.services.beliefs.neighbours import Lessons
from combwright.services.beliefs.workers import follow_each
from combwright.services.weather.surroundings import yard_conditions
from combwright.simulation.begin import Described, begin
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.entries import Colony, Noted, Visit
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.weather.climates import climate
from combwright.weather.generator import generate

FIRST = date(2026, 3, 20)
VISITS = 26
MEMBERS = 200
HIVE = "national timber"
PLACE = climate("Dublin Airport")
DAYS = 7 * VISITS
AIM_UPDATE_S, AIM_BOOK_S = 0.150, 60.0


def season_of_notes(number: int, table: Any) -> list[Noted]:  # noqa: ANN401 (conditions)
    """Write a season of weekly notes about one simulated colony."""
    name, rng = f"colony {number}", stream(number, "benchmark")
    set_up = SetUp(hive=HIVE, frames=11)
    bees = float(rng.uniform(4, 8))
    described = Described(frames_of_bees=bees, frames_of_brood=bees / 2, stores_kg=8.0)
    truth = begin(
        catalogue().hive(HIVE), set_up, described, on=FIRST, members=1, seed=number, colony=name
    )
    eye = draw_shared(1, 1, rng)
    entries: list[Noted] = []

    def key() -> UUID:
        return UUID(int=(number << 32) | len(entries))

    entries.append(Colony(id=key(), on=FIRST, colony=name, yard=f"yard {number // 20}", hive=HIVE))
    for visit in range(VISITS):
        on = FIRST + timedelta(days=7 * visit)
        true = looked_at(truth, eye, empty_kg=0.0)
        seen = {
            kind: min(36.0, round(2 * float(EYE[kind].draw(true[kind], rng)[0])) / 2)
            for kind in ("frames_of_bees", "frames_of_brood", "stores_kg")
        }
        entries.append(Visit(id=key(), on=on, colony=name, **seen))
        run(truth, table[:1, 7 * visit : 7 * visit + 7], luck(number, name, on, 7, 1))
    return entries


class Years:
    """Conditions of the season, known but for the flow."""

    def __init__(self) -> None:
        known = generate(PLACE, FIRST, DAYS + 7, 1, 9)
        until = FIRST + timedelta(days=DAYS + 7)
        self.table = yard_conditions(PLACE, known, FIRST, until, members=MEMBERS, seed=3)

    def __call__(self, yard: str, first: date, until: date) -> Any:  # noqa: ANN401 (conditions)
        del yard
        return self.table[:, (first - FIRST).days : (until - FIRST).days]


class Took(NamedTuple):
    """Wall time, and time of the processor, which a busy machine does not lengthen. [s]."""

    wall: float
    work: float


def followed(
    entries: Sequence[Noted], years: Years, folder: Path, colony: str | None = None
) -> Took:
    """Follow a book, or one colony of it, with what its neighbours teach."""
    start, work = perf_counter(), process_time()
    notes = notes_of_colonies(entries)
    kept, on = KeptBeliefs(folder, catalogue()), FIRST + timedelta(days=DAYS)
    alone = Replay(
        notes, years, catalogue(), members=FEW, seed=1, kept=kept, version=version() + " alone"
    )
    replay = Replay(
        notes,
        years,
        catalogue(),
        members=MEMBERS,
        seed=1,
        pooled=Lessons(alone, entries, on, folder / "lessons"),
        kept=kept,
        version=version(),
    )
    follow_each(replay, [colony] if colony else replay.colonies, on)
    return Took(perf_counter() - start, process_time() - work)


def main() -> None:
    """Print a line a measurement."""
    years = Years()
    seasons = [season_of_notes(number, years.table) for number in range(300)]
    with TemporaryDirectory() as place:
        folder = Path(place)

        def follow(colonies: int, visits: int, name: str) -> Took:
            part = [entry for season in seasons[:colonies] for entry in season[: 1 + visits]]
            return followed(part, years, folder / name)

        follow(4, VISITS, "warm")
        took = {count: follow(count, VISITS, f"{count}") for count in (75, 150, 300)}
        for count, (wall, work) in took.items():
            print(
                f"{count} colonies, {VISITS} visits, from nothing: {wall:.1f} s, {work:.1f} s work"
            )
        half = follow(150, VISITS // 2, "half")
        again = follow(300, VISITS, "300")
        size = sum(path.stat().st_size for path in (folder / "300").rglob("*.belief")) / 1e6
        print(f"unchanged, from what was kept: {again.wall:.1f} s, {size:.0f} MB kept")
        new = median(updated(seasons[0:20], n, years, folder / "300").wall for n in range(9))
        print(f"one colony with a new visit, its yard of 20 unchanged: {1000 * new:.0f} ms")
        print(f"work for twice the colonies: {took[300].work / took[150].work:.2f}")
        print(f"work for twice the notes: {took[150].work / half.work:.2f}")
        shares = took[300].wall / AIM_BOOK_S, new / AIM_UPDATE_S
        print(f"against the aims: book {shares[0]:.2f}, visit {shares[1]:.2f}")


def updated(seasons: Sequence[Sequence[Noted]], number: int, years: Years, folder: Path) -> Took:
    """Add a visit to one colony of a yard, and give the time until it is believed."""
    entries = [entry for season in seasons for entry in season]
    on, colony = seasons[number][-1].on + timedelta(days=5), f"colony {number}"
    followed(entries, years, folder, colony)
    visit = Visit(id=UUID(int=number + (1 << 90)), on=on, colony=colony, frames_of_bees=7)
    return followed([*entries, visit], years, folder, colony)


if __name__ == "__main__":
    np.seterr(all="raise", under="ignore")
    main()

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
from time import perf_counter
from typing import Any
from uuid import UUID

import numpy as np

from combwright.belief.observation import EYE, looked_at
from combwright.belief.replay import Replay
from combwright.belief.shared import draw_shared
from combwright.kit.catalogue import catalogue
from combwright.services.beliefs import KeptBeliefs, version
from combwright.services.surroundings import yard_conditions
from combwright.services.workers import follow_each
from combwright.simulation.begin import Described, begin
from combwright.simulation.luck import luck, stream
from combwright.simulation.run import run
from combwright.simulation.weather import climate, generate
from combwright.terms.entries import Colony, Noted, Visit
from combwright.terms.set_up import SetUp

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

    entries.append(Colony(id=key(), on=FIRST, colony=name, yard="Home", hive=HIVE))
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


def followed(
    entries: Sequence[Noted], years: Years, folder: Path, colony: str | None = None
) -> float:
    """Follow a book, or one colony of it, and give the wall time."""
    start = perf_counter()
    replay = Replay(
        entries,
        years,
        catalogue(),
        members=MEMBERS,
        seed=1,
        kept=KeptBeliefs(folder, catalogue()),
        version=version(),
    )
    names = [colony] if colony else replay.colonies
    follow_each(replay, names, FIRST + timedelta(days=DAYS))
    return perf_counter() - start


def main() -> None:
    """Print a line a measurement."""
    years = Years()
    seasons = [season_of_notes(number, years.table) for number in range(300)]
    book = [entry for season in seasons for entry in season]
    with TemporaryDirectory() as folder:
        place = Path(folder)
        warm = [entry for season in seasons[:4] for entry in season]
        followed(warm, years, place / "warm")
        took = {}
        for count in (75, 150, 300):
            part = [entry for season in seasons[:count] for entry in season]
            took[count] = followed(part, years, place / f"{count}")
            print(f"{count} colonies, {VISITS} visits each, from nothing: {took[count]:6.1f} s")
        half = [entry for season in seasons[:150] for entry in season[: 1 + VISITS // 2]]
        took_half = followed(half, years, place / "half")
        again = followed(book, years, place / "300")
        size = sum(path.stat().st_size for path in (place / "300").rglob("*.npz")) / 1e6
        print(f"unchanged, from what was kept:              {again:6.1f} s, {size:.0f} MB kept")
        new = [updated(seasons, number, years, place / "300") for number in range(9)]
        print(f"one colony with a new visit:                {1000 * median(new):6.0f} ms")
        print(
            f"cost for twice the colonies: {took[300] / took[150]:.2f}, {took[150] / took[75]:.2f}"
        )
        print(f"cost for twice the notes:    {took[150] / took_half:.2f}")
        shares = took[300] / AIM_BOOK_S, median(new) / AIM_UPDATE_S
        print(f"against the aims: book {shares[0]:.2f}, visit {shares[1]:.2f}")


def updated(seasons: Sequence[Sequence[Noted]], number: int, years: Years, folder: Path) -> float:
    """Add a visit to one colony of the book, and give the time until it is believed."""
    entries = list(seasons[number])
    last = entries[-1]
    on = last.on + timedelta(days=5)
    visit = Visit(id=UUID(int=number), on=on, colony=f"colony {number}", frames_of_bees=7)
    return followed([*entries, visit], years, folder, f"colony {number}")


if __name__ == "__main__":
    np.seterr(all="raise", under="ignore")
    main()

"""An invented keeper: three yards, twelve colonies and four nucs, and seven weeks of spring notes.

The notes come from simulated colonies whose own parameters the belief does not know, seen with a
keeper's errors and rounded to halves.
"""

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any, Final
from uuid import NAMESPACE_URL, uuid5

import numpy as np
from numpy.typing import NDArray

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Hive
from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import keep_weather
from combwright.services.book.book import add_entries, add_notebook, save
from combwright.services.demo_colonies import (
    CASTS,
    CLIMATE,
    FIRST,
    SEED,
    Cast,
    days_of,
    wintered,
)
from combwright.services.demo_papers import STRIPS, STRIPS_BATCH, demo_papers
from combwright.services.demo_supply import demo_supply
from combwright.services.progress import NOTING, READY, Progress, Step, silent
from combwright.simulation import observe
from combwright.simulation.ahead.roll import make_ready
from combwright.simulation.hands import actions
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.sources.table import write_table
from combwright.terms.entries import HowCounted, Kit
from combwright.terms.errors import BookError
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.terms.weather import DailyWeather
from combwright.weather.climates import climate
from combwright.weather.generator import generate

Floats = NDArray[np.float64]

VISITS: Final = 7
ON: Final = FIRST + timedelta(days=7 * VISITS)
SPRING: Final = 5  # seed of the weather: a spring in which bees fly in some of March
COLD: Final = slice(35, 41)  # six days from 10 April on which hardly a bee flies
COLDER_K: Final = 5.0  # invented, as all of the demo is
KIT: Final = (
    ("drawn frame", 46),
    ("foundation frame", 60),
    ("dummy board", 14),
    ("super", 18),
    ("queen excluder", 12),
    ("contact feeder", 16),
)


COUNTING: Final = HowCounted(
    id=uuid5(NAMESPACE_URL, "demo counting"), on=FIRST, brood="frames filled", bees="frames covered"
)
TREATED_YARD: Final = "Mill Orchard"  # all of its colonies at one time, as labels ask


@dataclass(frozen=True)
class Paths:
    """What the demo wrote."""

    book: Path
    notebook: Path
    weather: Path
    on: date


@dataclass
class TrueColony:
    """A colony as it truly is, and how its stack stands."""

    cast: Cast
    hive: Hive
    set_up: SetUp
    truth: Any
    lines: list[dict[str, object]] = field(default_factory=list)


def write_demo(folder: Path, *, progress: Progress = silent) -> Paths:
    """Write the demo's notebook, weather and book into a folder; an old demo in it is replaced."""
    folder = folder.resolve()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for old in folder.glob("demo.book*"):
            old.unlink()
    except OSError as error:
        raise BookError(
            f"The folder cannot be written: {error.strerror}.",
            where=str(folder),
            remedy="Name a folder that you may write, with --dir.",
        ) from error
    paths = Paths(folder / "demo.book", folder / "demo.notebook.csv", folder / "weather.csv", ON)
    progress(Step(READY))
    make_ready()
    weather = known_weather()
    lines: list[dict[str, object]] = []
    table, colonies = days_of(weather, seed=SPRING), wintered()
    for number, cast in enumerate(CASTS, 1):
        lines += list(_season(cast, colonies[cast.name], table))
        progress(Step(NOTING, number, len(CASTS)))
    lines.sort(key=lambda line: (str(line["date"]), str(line["yard"])))
    save(paths.notebook, _as_csv(lines))
    save(paths.weather, weather_csv(weather))
    book = Book(paths.book)
    add_notebook(book, paths.notebook)
    add_entries(
        book,
        [
            Kit(id=uuid5(NAMESPACE_URL, f"demo kit {item}"), on=FIRST, item=item, count=count)
            for item, count in KIT
        ]
        + [COUNTING, *demo_supply(), *demo_papers()],
    )
    with book.writing() as db:
        keep_weather(db, CLIMATE, weather, "demo: sampled from the climate of Dublin Airport")
    book.close()
    return paths


def known_weather() -> DailyWeather:
    """Give the weather up to the day before the round: a spring with a cold spell."""
    weather = generate(climate(CLIMATE), FIRST, 7 * VISITS, 1, SPRING)
    colder = np.zeros(7 * VISITS)
    colder[COLD] = COLDER_K
    return replace(weather, t_max_c=weather.t_max_c - colder, t_min_c=weather.t_min_c - colder)


def weather_csv(weather: DailyWeather) -> str:
    """Write weather to tenths in the plain format that `combwright weather add` reads."""
    series = (weather.t_max_c, weather.t_min_c, weather.rain_mm, weather.sun_h, weather.wind_m_s)
    return write_table(DailyWeather(weather.first, *(np.round(each, 1) for each in series)))


def _as_csv(lines: list[dict[str, object]]) -> str:
    headings = list(dict.fromkeys(heading for line in lines for heading in line))
    out = io.StringIO()
    writer = csv.DictWriter(out, headings, lineterminator="\n", restval="")
    writer.writeheader()
    writer.writerows(lines)
    return out.getvalue()


def _season(cast: Cast, colony: NDArray[np.void], table: Floats) -> Iterator[dict[str, object]]:
    """Live one colony's spring and write a line at each visit."""
    hive = catalogue().hive(cast.hive)
    actions.arrange(colony, hive, cast.set_up)
    kept = TrueColony(cast, hive, cast.set_up, colony)
    rng = stream(SEED, cast.name, "keeper")
    for visit in range(VISITS):
        on = FIRST + timedelta(days=7 * visit)
        yield _note(kept, on, visit, rng)
        days = slice(7 * visit, 7 * visit + 7)
        run(kept.truth, table[:, days], luck(SEED, cast.name, on, 7, 1))


def _note(kept: TrueColony, on: date, visit: int, rng: np.random.Generator) -> dict[str, object]:
    """Look at the colony as a keeper does, do what a keeper does, and write the line."""
    cast, truth = kept.cast, kept.truth
    line: dict[str, object] = {"date": on.isoformat(), "yard": cast.yard, "colony": cast.name}
    if visit == 0:
        line |= {"hive": cast.hive, "queen year": cast.queen_year, "climate": CLIMATE}
    if cast.trouble == "queen" and visit == 5:  # noqa: PLR2004  (lost at the sixth, unnoticed)
        actions.change_queen(truth, "lost")
    bees = float(observe.frames_of_bees(truth)[0])
    line["frames of bees"] = _halves(bees * np.exp(rng.normal(0, 0.08)) + rng.normal(0, 0.2))
    if visit != 3:  # noqa: PLR2004  (a cold day: only a quick look)
        brood = float(observe.frames_of_brood(truth)[0])
        line["frames of brood"] = _halves(brood * np.exp(rng.normal(0, 0.1)) + rng.normal(0, 0.2))
        line["eggs"] = "yes" if truth["eggs"][0].sum() > 300.0 else "no"  # noqa: PLR2004
    stores = float(observe.frames_of_stores(truth)[0])
    line["frames of stores"] = _halves(stores * np.exp(rng.normal(0, 0.15)) + rng.normal(0, 0.2))
    if cast.trouble == "mites" and visit == 4:  # noqa: PLR2004  (a tray is counted once)
        line |= {"mites on tray": round(7 * float(truth["fallen"][0])), "tray days": 7}
    line |= _do(kept, visit, bees, stores)
    if cast.yard == TREATED_YARD:
        line |= _treat(kept, visit)
    return line


def _treat(kept: TrueColony, visit: int) -> dict[str, object]:
    """Hang strips against mites at the first visit, and take them out at the last."""
    if visit == VISITS - 1:
        return {"treatment out": "yes"}
    if visit:
        return {}
    actions.treat(kept.truth, "amitraz")
    return {
        "treatment": "amitraz",
        "product": STRIPS,
        "batch": STRIPS_BATCH,
        "treatment quantity": 2 if kept.hive.kind == "hive" else 1,
        "treated until": (FIRST + timedelta(days=7 * (VISITS - 1))).isoformat(),
    }


def _do(kept: TrueColony, visit: int, bees: float, stores: float) -> dict[str, object]:
    """Add a frame when the bees reach the edge, and give a portion when stores are short."""
    done: dict[str, object] = {}
    set_up = kept.set_up
    is_tight = bees > set_up.frames - 1.0 and kept.cast.trouble != "tight"
    if is_tight and set_up.frames < kept.hive.frames:
        boards = set_up.dummy_boards
        if set_up.frames + 1 >= kept.hive.frames - 1:
            boards = min(boards, 1)
        update = {"frames": set_up.frames + 1, "dummy_boards": boards}
        kept.set_up = set_up = set_up.model_copy(update=update)
        actions.arrange(kept.truth, kept.hive, set_up)
    done |= {
        "frames in box": set_up.frames,
        "dummy boards": set_up.dummy_boards,
        "supers": set_up.supers,
        "entrance mm": set_up.entrance_mm,
        "tray open mm": set_up.tray_open_mm,
    }
    if kept.cast.trouble == "wide":
        done["pitch mm"] = 37.5
    if stores < 1.5 and visit > 0:  # noqa: PLR2004  (frames)
        grams = 1500 if kept.hive.kind == "hive" else 700
        actions.feed(kept.truth, grams, 0.6, warmer_k=10.0)
        done |= {"syrup fed g": grams, "sugar share %": 60}
    return done


def _halves(value: float) -> float:
    return max(0.0, round(2.0 * value) / 2.0)

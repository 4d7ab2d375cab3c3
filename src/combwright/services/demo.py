"""An invented keeper: three yards, twelve colonies and four nucs, and seven weeks of spring notes.

The notes come from simulated colonies whose own parameters the belief does not know, seen with a
keeper's errors and rounded to halves.
"""

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta
from pathlib import Path
from typing import Any, Final
from uuid import NAMESPACE_URL, uuid5

import numpy as np

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Hive
from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import keep_weather
from combwright.services.book.book import add_entries, add_notebook, save
from combwright.services.demo_supply import demo_supply
from combwright.services.progress import NOTING, READY, Progress, Step, silent
from combwright.simulation import observe
from combwright.simulation.ahead.roll import make_ready
from combwright.simulation.begin import Described, begin
from combwright.simulation.hands import actions
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.sources.table import write_table
from combwright.terms.entries import HowCounted, Kit, Product, Purchase
from combwright.terms.errors import BookError
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream
from combwright.terms.weather import DailyWeather
from combwright.weather.climates import climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

CLIMATE: Final = "Dublin Airport"
FIRST: Final = date(2027, 3, 6)
VISITS: Final = 7
ON: Final = FIRST + timedelta(days=7 * VISITS)
SEED: Final = 20270306
SPRING: Final = 5  # seed of the weather: a spring in which bees fly in some of March
KIT: Final = (
    ("drawn frame", 46),
    ("foundation frame", 60),
    ("dummy board", 14),
    ("super", 18),
    ("queen excluder", 12),
    ("contact feeder", 16),
)


@dataclass(frozen=True)
class Cast:
    """One colony of the demo at its first note."""

    name: str
    yard: str
    hive: str
    bees: float
    brood: float
    stores_kg: float
    queen_year: int
    frames: int
    boards: int
    mites: float
    trouble: str = ""


COUNTING: Final = HowCounted(
    id=uuid5(NAMESPACE_URL, "demo counting"), on=FIRST, brood="frames filled", bees="frames covered"
)
LABEL: Final = Product(
    id=uuid5(NAMESPACE_URL, "demo label"),
    on=FIRST,
    product="Example formic pads",
    withdrawal_days=0,
    prescription="none needed",
)
BOUGHT: Final = Purchase(
    id=uuid5(NAMESPACE_URL, "demo purchase"),
    on=FIRST,
    product=LABEL.product,
    quantity=20,
    unit="sachets",
    batch="F26-118",
    expiry=date(2028, 9, 30),
    supplier="Example Bee Supply",
    supplier_address="1 Main Street, Exampletown",
    no_prescription=True,
)
CASTS: Final = (
    Cast("Bramble", "Alder Bank", "national timber", 7.0, 1.3, 15.0, 2026, 9, 1, 30),
    Cast("Teasel", "Alder Bank", "national timber", 4.5, 0.8, 11.0, 2025, 7, 2, 45),
    Cast("Sorrel", "Alder Bank", "national timber", 3.5, 0.6, 11.0, 2026, 6, 2, 20),
    Cast("Yarrow", "Alder Bank", "national polystyrene", 5.0, 0.9, 9.0, 2025, 8, 2, 90, "mites"),
    Cast("Clary", "Alder Bank", "national timber", 2.5, 0.4, 8.0, 2024, 5, 2, 35),
    Cast("Burdock", "Quarry Field", "national timber", 7.0, 1.3, 10.0, 2026, 11, 0, 40, "wide"),
    Cast("Vetch", "Quarry Field", "national timber", 5.0, 0.9, 6.0, 2025, 8, 2, 30),
    Cast("Sedge", "Quarry Field", "national timber", 5.0, 0.9, 12.0, 2026, 8, 2, 25, "queen"),
    Cast("Tansy", "Quarry Field", "national polystyrene", 6.0, 1.1, 12.0, 2026, 10, 1, 30),
    Cast("Comfrey", "Mill Orchard", "national timber", 4.5, 0.8, 13.0, 2025, 6, 2, 50, "tight"),
    Cast("Mallow", "Mill Orchard", "national timber", 6.0, 1.1, 11.0, 2026, 9, 1, 25),
    Cast("Thrift", "Mill Orchard", "national timber", 3.0, 0.5, 9.0, 2025, 5, 2, 30),
    Cast("Nuc Ash", "Mill Orchard", "nuc 6 polystyrene", 2.5, 0.4, 4.5, 2026, 6, 0, 12),
    Cast("Nuc Elm", "Mill Orchard", "nuc 6 polystyrene", 2.0, 0.4, 4.0, 2026, 5, 1, 10),
    Cast("Nuc Holly", "Alder Bank", "nuc 6 polystyrene", 3.0, 0.5, 4.0, 2026, 6, 0, 15),
    Cast("Nuc Rowan", "Quarry Field", "nuc 5 ply", 2.5, 0.4, 4.0, 2026, 5, 0, 8),
)


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
    for number, cast in enumerate(CASTS, 1):
        lines += list(_season(cast, weather))
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
        + [COUNTING, LABEL, BOUGHT, *demo_supply()],
    )
    with book.writing() as db:
        keep_weather(db, CLIMATE, weather, "demo: sampled from the climate of Dublin Airport")
    book.close()
    return paths


def known_weather() -> DailyWeather:
    """Give the weather of the demo's spring up to the day before the round."""
    return generate(climate(CLIMATE), FIRST, 7 * VISITS, 1, SPRING)


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


def _season(cast: Cast, weather: DailyWeather) -> Iterator[dict[str, object]]:
    """Live one colony's spring and write a line at each visit."""
    place = climate(CLIMATE)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, place, seed=SPRING)
    table = conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)
    kept = _enter(cast)
    rng = stream(SEED, cast.name, "keeper")
    for visit in range(VISITS):
        on = FIRST + timedelta(days=7 * visit)
        yield _note(kept, on, visit, rng)
        days = slice(7 * visit, 7 * visit + 7)
        run(kept.truth, table[:, days], luck(SEED, cast.name, on, 7, 1))


def _enter(cast: Cast) -> TrueColony:
    hive = catalogue().hive(cast.hive)
    set_up = SetUp(
        hive=cast.hive,
        frames=cast.frames,
        dummy_boards=cast.boards,
        entrance_mm=60,
        tray_open_mm=100 if hive.floor == "mesh" else 0,
    )
    described = Described(
        frames_of_bees=cast.bees,
        frames_of_brood=cast.brood,
        stores_kg=cast.stores_kg,
        mites=cast.mites,
        queen_year=cast.queen_year,
        has_queen=True,
    )
    truth = begin(hive, set_up, described, on=FIRST, members=1, seed=SEED, colony=cast.name)
    return TrueColony(cast, hive, set_up, truth)


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
    return line


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

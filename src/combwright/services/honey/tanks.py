"""Honey as it stands: what is in the tanks, what is in jars, and what wants a second look."""

from dataclasses import dataclass
from datetime import date

from combwright.records.replay.known_honey import KnownHoney, KnownLot
from combwright.records.store.book_handle import Book
from combwright.science.honey.honey_law import Law, WaterLimit, water_limit
from combwright.science.honey.lots import best_before_words, lot_code, papers_kept_until
from combwright.science.honey.moisture import (
    water_percent_of_brix,
    water_percent_of_index,
    water_percent_read_at,
)
from combwright.science.honey.net_weight import NetWeights, net_weights
from combwright.terms.entries import HoneyBatch, JarWeights, Keeper
from combwright.terms.entries.keeper import COUNTRIES, Country
from combwright.terms.errors import OutOfRangeError

WATER_OF: dict[str, Law] = {"IE": "eu", "EU": "eu", "NI": "eu"}


@dataclass(frozen=True, slots=True)
class HoneyTank:
    """A batch as it stands. ``water_percent`` is corrected for the warmth of the reading."""

    honey: str
    on: date
    tank: str
    in_kg: float | None
    kg: float
    lost_percent: float | None
    jarred_kg: float
    lost_kg: float
    given_kg: float
    left_kg: float
    water_percent: float | None
    says: str


@dataclass(frozen=True, slots=True)
class LotOnShelf:
    """A lot of jars as it stands."""

    lot: str
    honey: str
    on: date
    jars: int
    jar_g: float
    best_before: str
    sold: int
    left: int
    kept_until: date
    weighed: tuple[NetWeights, ...]


@dataclass(frozen=True, slots=True)
class HoneyPage:
    """All tanks and lots, newest first, and the code of the next lot of a day."""

    country: Country
    place: str
    tanks: tuple[HoneyTank, ...]
    shelves: tuple[LotOnShelf, ...]
    next_lot: str


def honey_now(book: Book, today: date) -> HoneyPage:
    """Tell how all honey of a book stands."""
    now = book.now()
    country = country_of(book)
    tanks = tuple(_tank(each, country) for each in now.honey.values())
    shelves = tuple(_shelf(each) for each in now.lots.values())
    return HoneyPage(country, COUNTRIES[country], tanks[::-1], shelves[::-1], next_lot(book, today))


def keeper_of(book: Book) -> Keeper | None:
    """Give the keeper's name and address, as last noted."""
    found = [each for each in book.now().entries if isinstance(each, Keeper)]
    return found[-1] if found else None


def country_of(book: Book) -> Country:
    """Give the keeper's country; Ireland while none is noted."""
    keeper = keeper_of(book)
    return keeper.country if keeper else "IE"


def next_lot(book: Book, on: date) -> str:
    """Give the code of the next lot of a day: one that was never printed."""
    taken = book.now().lots
    return next(
        code for run in range(1, len(taken) + 2) if (code := lot_code(on, run)) not in taken
    )


def water_of(batch: HoneyBatch) -> float | None:
    """Give the water in a batch, corrected for the warmth of the reading. [g per 100 g]."""
    if batch.reading is None:
        return None
    warmth = 20.0 if batch.reading_c is None else batch.reading_c
    match batch.scale:
        case "refractive index":
            water = water_percent_of_index(batch.reading, warmth)
        case "Brix":
            water = water_percent_of_brix(batch.reading, warmth)
        case "water %":
            water = water_percent_read_at(batch.reading, warmth)
    return round(float(water), 1)


def water_words(batch: HoneyBatch, country: Country) -> tuple[float | None, str]:
    """Give the water in a batch, and say how it stands to the limit of a country."""
    try:
        water = water_of(batch)
    except OutOfRangeError as error:
        return None, str(error)
    if water is None:
        return None, "Its water is not measured yet."
    limit: WaterLimit = water_limit(batch.sort, WATER_OF.get(country, "uk"))
    side = "within" if water <= limit.most_percent else "above"
    return water, (
        f"{water:g} % of water: {side} the {limit.most_percent:g} % of {limit.text}. "
        "Check the current law of your country."
    )


def _tank(now: KnownHoney, country: Country) -> HoneyTank:
    batch = now.batch
    water, says = water_words(batch, country)
    return HoneyTank(
        batch.honey,
        batch.on,
        batch.tank,
        now.in_kg,
        batch.kg,
        now.lost_percent,
        now.jarred_kg,
        now.lost_kg,
        now.given_kg,
        now.left_kg,
        water,
        says,
    )


def _shelf(now: KnownLot) -> LotOnShelf:
    run = now.run
    sold = max([run.on, *(each.on for each in now.sales)])
    return LotOnShelf(
        run.lot,
        run.honey,
        run.on,
        run.jars,
        run.jar_g,
        best_before_words(run.best_before, run.shows),
        now.sold,
        now.left,
        papers_kept_until(sold, now.durable_until),
        tuple(weighed(each, run.jar_g) for each in now.weighed),
    )


def weighed(note: JarWeights, jar_g: float) -> NetWeights:
    """Hold weighed jars against their label."""
    weights = [float(one) for one in note.weights.replace(";", " ").split()]
    return net_weights(weights, jar_g, every_jar=bool(note.every_jar))

"""Simulated colonies at the start: as a keeper describes them, spread over what is not known."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.kit.items import Hive
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.columns import LAYING, STATE, TRAITS
from combwright.simulation.hands.actions import arrange
from combwright.simulation.observe import FULL_BROOD_SHARE, SUGAR_IN_HONEY
from combwright.simulation.step.rearing import season
from combwright.terms.errors import ClashError
from combwright.terms.parameters import Parameter
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream

Floats = NDArray[np.float64]

# How much colonies differ: standard deviation of the logarithm of each of their own parameters.
SPREAD: Final[Mapping[str, Parameter]] = {
    name: Parameter(value, "log sd", low, high, source, "judgement")
    for name, value, low, high, source in (
        ("queen_potential", 0.15, 0.05, 0.3, "queens of one keeper, without outright failures"),
        ("forager_mortality", 0.25, 0.1, 0.5, "published deaths a day span 0.045 to 0.154"),
        ("forage_success", 0.30, 0.1, 0.6, "colonies of one yard differ two- to threefold in crop"),
        ("consumption", 0.12, 0.05, 0.3, "winter use 39 ± 13 g a day between 32 colonies"),
        ("brood_mortality", 0.30, 0.1, 0.6, "survival 0.80 to 0.90 between colonies"),
        ("mite_growth", 0.06, 0.02, 0.12, "growth 0.017 to 0.027 a day between colonies"),
        ("swarm_readiness", 0.50, 0.2, 1.0, "strains differ; no published figure"),
        ("heat_loss", 0.30, 0.15, 0.6, "published conductances of wooden hives span threefold"),
    )
}

BROOD_DAYS: Final = 21  # from egg to bee: what is in the cells was laid in as many days
MOST_BROOD: Final = 0.9  # of the drawn cells: more than that was not brood
MOST_DESCRIBED: Final = 1e5  # of anything in one colony

# Adults of a full colony at the middle of each month, in thousands: composite for temperate
# northern Europe, from memory, weak; used only where nobody looked.
ADULTS_BY_MONTH: Final = (11.0, 10.0, 9.0, 11.0, 20.0, 32.0, 35.0, 28.0, 20.0, 15.0, 13.0, 12.0)
STORES_BY_MONTH: Final = (13.0, 10.0, 7.0, 6.0, 7.0, 8.0, 9.0, 10.0, 13.0, 18.0, 17.0, 15.0)
MITES_BY_MONTH: Final = (40, 35, 30, 40, 60, 100, 170, 300, 350, 250, 120, 60)

LONG_LIVED: Final = (
    (1, 44, 58, 72, 79, 93, 107, 121, 150, 225, 241, 248, 262, 276, 297, 320, 366),
    (0.99, 0.92, 0.8, 0.5, 0.37, 0.2, 0.1, 0.04, 0.0, 0.02, 0.28, 0.45, 0.67, 0.8, 0.9, 0.96, 0.99),
)


@dataclass(frozen=True, slots=True)
class Described:
    """What is known of a colony at the start; ``None`` where nobody looked."""

    frames_of_bees: float | None = None
    frames_of_brood: float | None = None
    stores_kg: float | None = None
    mites: float | None = None
    queen_year: int | None = None
    has_queen: bool | None = None
    bees_sd: float = 0.12
    brood_sd: float = 0.15
    stores_sd: float = 0.25


def begin(
    hive: Hive,
    set_up: SetUp,
    described: Described,
    *,
    on: date,
    members: int,
    seed: int,
    colony: str,
) -> NDArray[np.void]:
    """Make an ensemble for a colony at a date."""
    _refuse_impossible(described)
    rng = stream(seed, colony, "begin")
    colonies = np.zeros(members, dtype=STATE)
    for trait in TRAITS:
        sd = SPREAD[trait].value
        colonies[trait] = np.exp(rng.normal(-0.5 * sd * sd, sd, members))
    colonies["rearing"] = 1.0
    colonies["invaders"] = np.exp(rng.normal(np.log(2.0), 0.8, members))
    colonies["cells_per_frame"] = hive.frame.worker_cells
    colonies["bees_per_frame"] = hive.frame.bees_full_cover
    colonies["sugar_per_cell"] = (
        1000.0 * hive.frame.stores_full_kg * SUGAR_IN_HONEY / hive.frame.worker_cells
    )
    arrange(colonies, hive, set_up)
    day = on.timetuple().tm_yday
    _settle_bees(colonies, described, day, on, rng)
    _settle_brood(colonies, described, day, rng)
    _settle_food(colonies, described, on, rng)
    _settle_mites(colonies, described, on, rng)
    _settle_queen(colonies, described, on, rng)
    return colonies


def _refuse_impossible(described: Described) -> None:
    """Refuse what no colony can have, with the reason."""
    for name in ("frames_of_bees", "frames_of_brood", "stores_kg", "mites"):
        value = getattr(described, name)
        if value is not None and not 0.0 <= value < MOST_DESCRIBED:
            words = name.replace("_kg", "").replace("_", " ").capitalize()
            raise ClashError(
                f"{words} of {value:g} cannot be.", remedy="Count again, or leave the number out."
            )


def _around(rng: np.random.Generator, middle: float, sd: float, members: int) -> Floats:
    """Draw positive numbers around a middle with a relative spread."""
    return np.asarray(middle * np.exp(rng.normal(-0.5 * sd * sd, sd, members)))


def _settle_bees(
    colonies: Any, described: Described, day: int, on: date, rng: np.random.Generator
) -> None:
    members = len(colonies)
    cover = float(colonies["bees_per_frame"][0])
    if described.frames_of_bees is None:
        usual = min(1000.0 * ADULTS_BY_MONTH[on.month - 1], 0.9 * cover * colonies["frames"][0])
        adults = _around(rng, usual, 0.35, members)
    else:
        adults = _around(rng, cover * described.frames_of_bees, described.bees_sd, members)
        adults *= 1.07  # foragers that are out while the hive is open
    winter = _winter_bees(day) * np.exp(rng.normal(0.0, 0.1, members))
    winter = np.clip(winter, 0.0, 1.0)
    foraging = np.clip(rng.normal(0.24, 0.03, members), 0.1, 0.35)
    colonies["winter"] = adults * winter
    colonies["foragers"] = adults * (1.0 - winter) * foraging
    colonies["nest"] = adults * (1.0 - winter) * (1.0 - foraging)
    if 120 < day < 215:
        colonies["drones"] = 0.02 * adults


def _winter_bees(day: int) -> float:
    """Share of adults that are long-lived, as in the model's own years; judgement.

    All in midwinter, a third on 20 March, none from June on, half in early September.
    """
    return float(np.interp(day, *LONG_LIVED))


def _settle_brood(colonies: Any, described: Described, day: int, rng: np.random.Generator) -> None:
    members = len(colonies)
    full = float(colonies["cells_per_frame"][0]) * FULL_BROOD_SHARE
    if described.frames_of_brood is None:
        bees = colonies["nest"] + colonies["foragers"] + colonies["winter"]
        laying = np.mean([season(float(day - ago), BIOLOGY) for ago in range(BROOD_DAYS)])
        cells = np.minimum(0.9 * bees, 17.0 * BIOLOGY.lay_peak * laying)
        cells = cells * _around(rng, 0.9, 0.3, members)
    else:
        cells = _around(rng, full * described.frames_of_brood, described.brood_sd, members)
    cells = np.minimum(cells, MOST_BROOD * colonies["drawn"])
    tilt = rng.normal(0.0, 0.02, members)[:, None]
    ages = np.exp(tilt * (np.arange(21.0) - 10.0)) * (0.9925 ** np.arange(21.0))
    ages *= np.exp(rng.normal(0.0, 0.1, (members, 21)))
    by_day = cells[:, None] * ages / ages.sum(axis=1, keepdims=True)
    colonies["eggs"], colonies["larvae"] = by_day[:, :3], by_day[:, 3:9]
    colonies["sealed"] = by_day[:, 9:]


def _settle_food(colonies: Any, described: Described, on: date, rng: np.random.Generator) -> None:
    members = len(colonies)
    if described.stores_kg is None:
        share = min(1.0, float(colonies["frames"][0]) / 11.0)
        honey = _around(rng, STORES_BY_MONTH[on.month - 1] * share, 0.4, members)
    else:
        honey = _around(rng, max(described.stores_kg, 0.05), described.stores_sd, members)
    sugar = 1000.0 * honey * SUGAR_IN_HONEY
    held = colonies["eggs"].sum(axis=1) + colonies["larvae"].sum(axis=1)
    held += colonies["sealed"].sum(axis=1)
    most = np.maximum(colonies["drawn"] - held, 0.0) * colonies["sugar_per_cell"] * 0.95
    below = np.minimum(sugar, most)
    colonies["ripe"] = below
    above = np.minimum(sugar - below, colonies["super_drawn"] * colonies["sugar_per_cell"])
    colonies["super_ripe"] = above
    colonies["pollen"] = _around(rng, 500.0, 0.5, members) * np.minimum(
        1.0, colonies["frames"] / 11.0
    )
    colonies["intake"] = 0.004 * (colonies["nest"] + colonies["winter"])
    colonies["used"] = colonies["intake"]


def _settle_mites(colonies: Any, described: Described, on: date, rng: np.random.Generator) -> None:
    members = len(colonies)
    adults = colonies["nest"] + colonies["foragers"] + colonies["winter"]
    if described.mites is None:
        usual = MITES_BY_MONTH[on.month - 1] * np.minimum(1.0, adults / 12000.0)
        total = usual * np.exp(rng.normal(-0.4, 0.9, members))
    else:
        total = _around(rng, max(described.mites, 0.5), 0.3, members)
    sealed = colonies["sealed"].sum(axis=1)
    share = 0.65 * sealed / (sealed + 0.35 * adults + 1.0)
    colonies["mites"] = total * (1.0 - share)
    by_day = colonies["sealed"] / np.maximum(sealed, 1.0)[:, None]
    colonies["mites_worker"] = (total * share)[:, None] * by_day
    colonies["mites"] += total * share * (1.0 - by_day.sum(axis=1))


def _settle_queen(colonies: Any, described: Described, on: date, rng: np.random.Generator) -> None:
    members = len(colonies)
    if described.queen_year is None:
        age = 365.0 * rng.uniform(0.3, 2.5, members)
    else:
        born = date(described.queen_year, 6, 20).toordinal()
        age = np.maximum(1.0, on.toordinal() - born + rng.normal(0.0, 20.0, members))
    colonies["queen_age"] = age
    present = 0.985 if described.has_queen is None else float(described.has_queen)
    colonies["queen"] = np.where(rng.random(members) < present, LAYING, 0.0)

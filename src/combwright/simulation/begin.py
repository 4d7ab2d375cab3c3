"""Simulated colonies at the start: as a keeper describes them, spread over what is not known."""

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
from combwright.terms.data_files import contents, parameters
from combwright.terms.errors import ClashError
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream

Floats = NDArray[np.float64]

PLACE: Final = "simulation/begin"
SPREAD: Final = parameters(PLACE, "spread")  # how much colonies differ in each of their own
UNSEEN: Final = parameters(PLACE, "unseen")
SEEN: Final = parameters(PLACE, "seen")
MADE_UP: Final = parameters(PLACE, "made_up")
USUAL: Final = contents(PLACE)["usual"]  # by month, where nobody looked
LONG_LIVED: Final = contents(PLACE)["long_lived"]
BROOD_DAYS: Final = 21  # from egg to bee: what is in the cells was laid in as many days
MOST_DESCRIBED: Final = 1e5  # of anything in one colony


@dataclass(frozen=True, slots=True)
class Described:
    """What is known of a colony at the start; ``None`` where nobody looked."""

    frames_of_bees: float | None = None
    frames_of_brood: float | None = None
    stores_kg: float | None = None
    mites: float | None = None
    queen_year: int | None = None
    has_queen: bool | None = None
    bees_sd: float = SEEN["bees_sd"].value
    brood_sd: float = SEEN["brood_sd"].value
    stores_sd: float = SEEN["stores_sd"].value


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
    colonies["invaders"] = np.exp(
        rng.normal(np.log(MADE_UP["invaders"].value), MADE_UP["invaders_sd"].value, members)
    )
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
        usual = min(
            USUAL["bees"][on.month - 1],
            UNSEEN["most_of_box"].value * cover * colonies["frames"][0],
        )
        adults = _around(rng, usual, UNSEEN["bees_sd"].value, members)
    else:
        adults = _around(rng, cover * described.frames_of_bees, described.bees_sd, members)
        adults *= SEEN["out"].value
    winter = _winter_bees(day) * np.exp(rng.normal(0.0, MADE_UP["winter_sd"].value, members))
    winter = np.clip(winter, 0.0, 1.0)
    foraging = np.clip(
        rng.normal(MADE_UP["foragers"].value, MADE_UP["foragers_sd"].value, members),
        MADE_UP["foragers_least"].value,
        MADE_UP["foragers_most"].value,
    )
    colonies["winter"] = adults * winter
    colonies["foragers"] = adults * (1.0 - winter) * foraging
    colonies["nest"] = adults * (1.0 - winter) * (1.0 - foraging)
    if MADE_UP["drones_from"].value < day < MADE_UP["drones_to"].value:
        colonies["drones"] = MADE_UP["drones"].value * adults


def _winter_bees(day: int) -> float:
    """Share of adults that are long-lived, by day of the year."""
    return float(np.interp(day, LONG_LIVED["day"], LONG_LIVED["share"]))


def _settle_brood(colonies: Any, described: Described, day: int, rng: np.random.Generator) -> None:
    members = len(colonies)
    full = float(colonies["cells_per_frame"][0]) * FULL_BROOD_SHARE
    if described.frames_of_brood is None:
        bees = colonies["nest"] + colonies["foragers"] + colonies["winter"]
        laying = np.mean([season(float(day - ago), BIOLOGY) for ago in range(BROOD_DAYS)])
        cells = np.minimum(
            UNSEEN["brood_per_bee"].value * bees,
            UNSEEN["brood_days"].value * BIOLOGY.lay_peak * laying,
        )
        cells = cells * _around(rng, UNSEEN["brood_share"].value, UNSEEN["brood_sd"].value, members)
    else:
        cells = _around(rng, full * described.frames_of_brood, described.brood_sd, members)
    cells = np.minimum(cells, MADE_UP["brood_of_drawn"].value * colonies["drawn"])
    tilt = rng.normal(0.0, MADE_UP["brood_tilt_sd"].value, members)[:, None]
    ages = np.exp(tilt * (np.arange(21.0) - 10.0)) * (
        MADE_UP["brood_lives"].value ** np.arange(21.0)
    )
    ages *= np.exp(rng.normal(0.0, MADE_UP["brood_day_sd"].value, (members, 21)))
    by_day = cells[:, None] * ages / ages.sum(axis=1, keepdims=True)
    colonies["eggs"], colonies["larvae"] = by_day[:, :3], by_day[:, 3:9]
    colonies["sealed"] = by_day[:, 9:]


def _settle_food(colonies: Any, described: Described, on: date, rng: np.random.Generator) -> None:
    members = len(colonies)
    if described.stores_kg is None:
        share = min(1.0, float(colonies["frames"][0]) / 11.0)
        honey = _around(
            rng, USUAL["stores_kg"][on.month - 1] * share, UNSEEN["stores_sd"].value, members
        )
    else:
        honey = _around(
            rng,
            max(described.stores_kg, MADE_UP["least_kg"].value),
            described.stores_sd,
            members,
        )
    sugar = 1000.0 * honey * SUGAR_IN_HONEY
    held = colonies["eggs"].sum(axis=1) + colonies["larvae"].sum(axis=1)
    held += colonies["sealed"].sum(axis=1)
    most = np.maximum(colonies["drawn"] - held, 0.0) * colonies["sugar_per_cell"]
    most *= MADE_UP["stores_of_free"].value
    below = np.minimum(sugar, most)
    colonies["ripe"] = below
    above = np.minimum(sugar - below, colonies["super_drawn"] * colonies["sugar_per_cell"])
    colonies["super_ripe"] = above
    colonies["pollen"] = _around(
        rng, MADE_UP["pollen_g"].value, MADE_UP["pollen_sd"].value, members
    ) * np.minimum(1.0, colonies["frames"] / 11.0)
    colonies["intake"] = MADE_UP["sugar_a_bee"].value * (colonies["nest"] + colonies["winter"])
    colonies["used"] = colonies["intake"]


def _settle_mites(colonies: Any, described: Described, on: date, rng: np.random.Generator) -> None:
    members = len(colonies)
    adults = colonies["nest"] + colonies["foragers"] + colonies["winter"]
    if described.mites is None:
        usual = USUAL["mites"][on.month - 1] * np.minimum(1.0, adults / UNSEEN["mites_full"].value)
        total = usual * np.exp(
            rng.normal(UNSEEN["mites_log"].value, UNSEEN["mites_sd"].value, members)
        )
    else:
        total = _around(rng, max(described.mites, 0.5), SEEN["mites_sd"].value, members)
    sealed = colonies["sealed"].sum(axis=1)
    share = MADE_UP["mites_sealed"].value * sealed
    share /= sealed + MADE_UP["mites_half"].value * adults + 1.0
    colonies["mites"] = total * (1.0 - share)
    by_day = colonies["sealed"] / np.maximum(sealed, 1.0)[:, None]
    colonies["mites_worker"] = (total * share)[:, None] * by_day
    colonies["mites"] += total * share * (1.0 - by_day.sum(axis=1))


def _settle_queen(colonies: Any, described: Described, on: date, rng: np.random.Generator) -> None:
    members = len(colonies)
    if described.queen_year is None:
        age = 365.0 * rng.uniform(UNSEEN["youngest"].value, UNSEEN["oldest"].value, members)
    else:
        born = date(described.queen_year, 6, 20).toordinal()
        age = np.maximum(
            1.0, on.toordinal() - born + rng.normal(0.0, MADE_UP["queen_day_sd"].value, members)
        )
    colonies["queen_age"] = age
    known = described.has_queen
    present = UNSEEN["has_queen"].value if known is None else float(known)
    colonies["queen"] = np.where(rng.random(members) < present, LAYING, 0.0)

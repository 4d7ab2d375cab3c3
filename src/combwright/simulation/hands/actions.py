"""What a keeper does to a colony, done to every member of its ensemble in place."""

from collections.abc import Mapping
from functools import lru_cache
from math import isfinite
from typing import Any, Final

import numpy as np

from combwright.kit.fits import refuse_impossible
from combwright.kit.items import Hive
from combwright.simulation.columns import CAGED, CELL, LAYING, QUEENLESS, VIRGIN, plain
from combwright.simulation.enclosure.loss import slab_loss
from combwright.simulation.observe import SUGAR_IN_HONEY
from combwright.simulation.step.frames import stack_of
from combwright.terms.data_files import contents
from combwright.terms.errors import ClashError
from combwright.terms.set_up import SetUp

QUEEN_EVENTS: Final[Mapping[str, float]] = {
    "introduced": LAYING,
    "removed": QUEENLESS,
    "lost": QUEENLESS,
    "caged": CAGED,
    "released": LAYING,
    "virgin": VIRGIN,
    "cell": CELL,
}
CELL_DAYS: Final = 10.0  # of a cell that is given or left, sealed as a rule; judgement


def arrange(colonies: Any, hive: Hive, set_up: SetUp, *, honey_stays: bool = False) -> None:
    """Set a stack up in place.

    Frames more than before come as drawn comb, but for those that ``set_up.foundation`` counts;
    of frames taken out, sheets of foundation beyond that number go first, then empty comb, then
    comb with its stores, and brood with its mites only when nothing else is left. Supers taken off
    go with their share of the honey; with ``honey_stays`` they go empty, as after a harvest, and
    the honey stays as far as the comb of the other supers holds it.
    """
    refuse_impossible(hive, set_up)
    rearrange(colonies, hive, set_up, honey_stays=honey_stays)


def rearrange(colonies: Any, hive: Hive, set_up: SetUp, *, honey_stays: bool = False) -> None:
    """Do what ``arrange`` does in place, also to a stack that fits only by the evening."""
    cells, above = hive.frame.worker_cells, hive.honey_super
    stack_of(
        plain(colonies),
        float(set_up.frames * cells),
        float(set_up.foundation * cells),
        float(set_up.supers),
        float(above.frames * above.frame.worker_cells) if above is not None else 0.0,
        honey_stays,
    )
    colonies["frames"] = set_up.frames
    colonies["boards"] = set_up.dummy_boards
    colonies["excluder"] = float(set_up.excluder)
    colonies["entrance"] = set_up.entrance_mm
    colonies["tray_open"] = set_up.tray_open_mm
    if set_up.frames == 0:  # no nest that could lose anything
        return
    loss = slab_loss(hive, set_up)
    colonies["loss_base"] = loss.base_w_per_k
    colonies["loss_per_frame"] = loss.per_frame_w_per_k


def feed(colonies: Any, grams: float, sugar_fraction: float, *, warmer_k: float = 0.0) -> None:
    """Fill the feeder in place with syrup or fondant of a sugar fraction by mass."""
    fine = isfinite(grams) and grams >= 0.0 and 0.0 < sugar_fraction < 1.0
    if not (fine and isfinite(warmer_k)):
        raise ClashError(
            f"A feed of {grams:g} g at {sugar_fraction:g} sugar cannot be.",
            remedy="Give grams above zero, and sugar as a share of the mass between 0 and 1.",
        )
    colonies["feeder"] += grams * sugar_fraction
    colonies["feeder_water"] += grams * (1.0 - sugar_fraction)
    colonies["feeder_days"] = 0.0
    colonies["feeder_warmth"] = warmer_k


def empty_feeder(colonies: Any) -> None:
    """Take the feeder off in place, with what is left in it."""
    for column in ("feeder", "feeder_water", "feeder_days", "feeder_warmth"):
        colonies[column] = 0.0


@lru_cache(maxsize=1)
def treatment_courses() -> dict[str, dict[str, float]]:
    """How each substance acts over its days: data with sources."""
    return {
        name: {key: value for key, value in course.items() if key != "source"}
        for name, course in contents("simulation/treatments").items()
    }


def treat(colonies: Any, substance: str) -> None:
    """Begin a mite treatment in place; the label says whether it may be used at all."""
    if substance == "drone brood removed":
        remove_drone_brood(colonies)
        return
    courses = treatment_courses()
    if substance not in courses:
        raise ClashError(
            f"No treatment with “{substance}” is known.",
            remedy=f"Known are: {', '.join(sorted(courses))}, drone brood removed.",
        )
    course = courses[substance]
    colonies["kill_bees"] = course["kill_bees"]
    colonies["kill_cells"] = course["kill_cells"]
    colonies["lay_brake"] = course["lay_brake"]
    colonies["kill_per_k"] = course["per_k"]
    colonies["treated_days"] = course["days"]


def remove_drone_brood(colonies: Any) -> None:
    """Cut out sealed drone brood in place, with its mites."""
    colonies["drone_sealed"] = 0.0
    colonies["mites_drone"] = 0.0


def change_queen(colonies: Any, event: str, *, age_days: float = 0.0) -> None:
    """Let something happen to the queen in place.

    Only a laying queen can be caged and only a caged one released. Where swarm cells had been
    started, a colony that loses its queen goes on with them.
    """
    if event not in QUEEN_EVENTS:
        raise ClashError(
            f"Nothing is known of a queen “{event}”.",
            remedy=f"Known are: {', '.join(QUEEN_EVENTS)}.",
        )
    state = np.full(len(colonies), QUEEN_EVENTS[event])
    if event == "caged":
        state = np.where(colonies["queen"] == LAYING, CAGED, colonies["queen"])
    elif event == "released":
        state = np.where(colonies["queen"] == CAGED, LAYING, colonies["queen"])
    clock = np.full(len(colonies), CELL_DAYS if event == "cell" else 0.0)
    if event in {"removed", "lost"}:
        started = colonies["swarm_clock"] > 0.0
        state, clock = np.where(started, CELL, state), np.where(started, colonies["swarm_clock"], 0)
    colonies["queen"], colonies["queen_clock"] = state, clock
    colonies["mating_flights"] = 0.0
    if event not in {"caged", "released"}:
        colonies["swarm_clock"] = 0.0
    if event == "introduced":
        colonies["queen_age"] = age_days


def cut_cells(colonies: Any) -> None:
    """Knock down all queen cells in place.

    Bees that were preparing to swarm may begin again. A colony that lives on its cells loses the
    last of them: it is queenless, and raises others only from larvae that are young enough.
    """
    colonies["swarm_clock"] = 0.0
    on_cells = colonies["queen"] == CELL
    colonies["queen"] = np.where(on_cells, QUEENLESS, colonies["queen"])
    colonies["queen_clock"] = np.where(on_cells, 0.0, colonies["queen_clock"])


def leave_one_cell(colonies: Any) -> None:
    """Knock down all queen cells but one in place: a colony without a queen goes on with that.

    Beside a queen that still lays a cell was left on purpose: she and it are as they were.
    """
    without = colonies["queen"] == QUEENLESS
    colonies["queen"] = np.where(without, CELL, colonies["queen"])
    colonies["queen_clock"] = np.where(without, CELL_DAYS, colonies["queen_clock"])


def harvest(colonies: Any, honey_kg: Any) -> Any:
    """Take honey from the supers in place, as far as there is any; gives what was taken. [kg].

    ``honey_kg`` is one amount for all, or one for each.
    """
    if not np.all(np.asarray(honey_kg) >= 0.0):
        raise ClashError(
            f"A harvest of {honey_kg} kg cannot be.", remedy="Give kilograms, zero or more."
        )
    ripe = colonies["super_ripe"]
    sugar = np.minimum(np.asarray(honey_kg) * 1000.0 * SUGAR_IN_HONEY, ripe)
    colonies["super_syrup"] *= 1.0 - np.divide(sugar, ripe, out=np.zeros(len(ripe)), where=ripe > 0)
    colonies["super_ripe"] -= sugar
    return sugar / 1000.0 / SUGAR_IN_HONEY

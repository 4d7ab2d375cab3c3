"""What would be seen at a colony: from the hidden state to a keeper's words."""

from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.simulation.biology import BIOLOGY
from combwright.simulation.columns import CAGED, plain
from combwright.simulation.step.frames import brood_cells_of
from combwright.terms.data_files import parameters

Floats = NDArray[np.float64]
PARAMETERS: Final = parameters("simulation/seen")
SUGAR_IN_HONEY: Final = PARAMETERS["sugar_in_honey"].value
FULL_BROOD_SHARE: Final = PARAMETERS["full_brood_frame"].value
AWAY_AT_NOON: Final = PARAMETERS["away_at_noon"].value
STORES_PER_SUGAR: Final = PARAMETERS["stores_kg_per_kg_sugar"].value
BEE_G: Final = PARAMETERS["bee_g"].value
BROOD_G: Final = PARAMETERS["brood_g"].value
NOTHING: Final = 1e-9


def adults(colonies: Any) -> Floats:
    """Adult workers, [member]."""
    return np.asarray(colonies["nest"] + colonies["foragers"] + colonies["winter"])


def brood(colonies: Any) -> Floats:
    """Worker brood cells of all ages, [member]."""
    return _brood(colonies)[0]


def _brood(colonies: Any) -> tuple[Floats, Floats]:
    """Count brood cells of workers, and those with drones in worker cells, [member] each."""
    shape = np.shape(colonies)
    workers, with_drones = np.empty(shape), np.empty(shape)
    brood_cells_of(plain(colonies), workers.reshape(-1), with_drones.reshape(-1))
    return workers, with_drones


def brood_cells(colonies: Any) -> Floats:
    """Worker cells' worth of comb that worker and drone brood take, [member]."""
    return _brood(colonies)[1]


def cells_held(colonies: Any) -> Floats:
    """Cells that hold brood or food, above and below, [member]."""
    return brood_cells(colonies) + food_cells(colonies)


def food_cells(colonies: Any) -> Floats:
    """Cells that hold stores, pollen or unripe food, above and below, [member]."""
    ripe = (colonies["ripe"] + colonies["super_ripe"]) / np.maximum(
        colonies["sugar_per_cell"], NOTHING
    )
    unripe = (colonies["unripe"] / BIOLOGY.sugar_kg_per_l + colonies["water"]) / (
        BIOLOGY.cell_ml * BIOLOGY.unripe_fill
    )
    pollen = colonies["pollen"] / BIOLOGY.pollen_per_cell
    return np.asarray(ripe + unripe + pollen)


def frames_of_bees(colonies: Any) -> Floats:
    """Frames covered by bees on both sides, as counted with some foragers away, [member]."""
    at_home = adults(colonies) - AWAY_AT_NOON * colonies["foragers"]
    return np.asarray(at_home / np.maximum(colonies["bees_per_frame"], 1.0))


def only_drones(colonies: Any) -> NDArray[np.bool_]:
    """Tell where all the brood is of drones, of a drone layer or laying workers, [member]."""
    return np.asarray(colonies["queen"] > CAGED)


def frames_of_brood(colonies: Any) -> Floats:
    """Frames of brood, full on both sides, [member]: of drones where there is no other."""
    full = colonies["cells_per_frame"] * FULL_BROOD_SHARE
    workers, with_drones = _brood(colonies)
    cells = np.where(only_drones(colonies), with_drones, workers)
    return np.asarray(cells / np.maximum(full, 1.0))


def sugar_kg(colonies: Any) -> Floats:
    """Sugar in ripe and unripe stores, without the feeder, [member]. [kg]."""
    return np.asarray((colonies["ripe"] + colonies["unripe"] + colonies["super_ripe"]) / 1000.0)


def stores_kg(colonies: Any) -> Floats:
    """Give all stores as honey, below and above the excluder, [member]. [kg]."""
    return sugar_kg(colonies) / SUGAR_IN_HONEY


def stores_below_kg(colonies: Any) -> Floats:
    """Give stores as honey below the excluder, which a keeper counts in frames. [kg]."""
    return np.asarray((colonies["ripe"] + colonies["unripe"]) / 1000.0 / SUGAR_IN_HONEY)


def frames_of_stores(colonies: Any) -> Floats:
    """Frames of stores below the excluder, full on both sides, [member]."""
    full_kg = colonies["cells_per_frame"] * colonies["sugar_per_cell"] / 1000.0 / SUGAR_IN_HONEY
    return np.asarray(stores_below_kg(colonies) / np.maximum(full_kg, NOTHING))


def honey_above_kg(colonies: Any) -> Floats:
    """Honey in supers, [member]. [kg]."""
    return np.asarray(colonies["super_ripe"] / 1000.0 / SUGAR_IN_HONEY)


def mites(colonies: Any) -> Floats:
    """Mites on bees and in cells, [member]."""
    in_cells = colonies["mites_worker"].sum(axis=-1) + colonies["mites_drone"].sum(axis=-1)
    return np.asarray(colonies["mites"] + in_cells)


def mites_per_bee(colonies: Any) -> Floats:
    """Mites on each adult bee, [member]."""
    return np.asarray(colonies["mites"] / np.maximum(adults(colonies), 1.0))


def weight_kg(colonies: Any, empty_kg: float) -> Floats:
    """Weight of the stack, [member]. [kg]."""
    food = sugar_kg(colonies) * STORES_PER_SUGAR + (colonies["water"] + colonies["pollen"]) / 1000.0
    feed = (colonies["feeder"] + colonies["feeder_water"]) / 1000.0
    bees = (adults(colonies) * BEE_G + brood(colonies) * BROOD_G) / 1000.0
    return np.asarray(empty_kg + food + feed + bees)

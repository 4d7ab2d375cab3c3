"""Splits and unites: bees, brood and stores that change hives."""

from typing import Any, Final, Literal

import numpy as np
from numpy.typing import NDArray

from combwright.kit.items import Hive
from combwright.simulation.columns import QUEENLESS, STATE, TRAITS
from combwright.simulation.hands.actions import arrange, change_queen
from combwright.simulation.observe import FULL_BROOD_SHARE, adults, brood, brood_cells
from combwright.terms.data_files import parameters
from combwright.terms.set_up import SetUp

BROOD: Final = ("eggs", "larvae", "sealed", "drone_open", "drone_sealed")
GoesWith = Literal["queen", "cell", "nothing", "mated queen"]
SHARES: Final = parameters("simulation/dividing")
MOST_MOVED: Final = SHARES["most_moved"].value


def split(
    parent: Any,
    hive: Hive,
    set_up: SetUp,
    *,
    frames_of_bees: float,
    frames_of_brood: float,
    frames_of_stores: float,
    goes_with: GoesWith,
) -> NDArray[np.void]:
    """Take bees, brood and stores from a colony in place, and give the new colony.

    What is moved is what the parent has of it and the new box holds; the moved frames are replaced
    in the parent by drawn comb. [frames]
    """
    new = np.zeros(len(parent), dtype=STATE)
    for column in (
        *TRAITS,
        "rearing",
        "world",
        "invaders",
        "bees_per_frame",
        "cells_per_frame",
        "sugar_per_cell",
    ):
        new[column] = parent[column]
    bees = np.minimum(
        frames_of_bees * parent["bees_per_frame"] / np.maximum(adults(parent), 1), MOST_MOVED
    )
    full = parent["cells_per_frame"] * FULL_BROOD_SHARE
    young = np.minimum(frames_of_brood * full / np.maximum(brood(parent), 1.0), MOST_MOVED)
    arrange(new, hive, set_up)
    young = np.minimum(young, MOST_MOVED * new["drawn"] / np.maximum(brood_cells(parent), 1.0))
    _move_bees(parent, new, bees)
    _move_brood(parent, new, young)
    held = frames_of_stores * parent["cells_per_frame"] * parent["sugar_per_cell"]
    free = np.maximum(new["drawn"] - brood_cells(new), 0.0) * new["sugar_per_cell"]
    moved = np.minimum(np.minimum(held, free), MOST_MOVED * parent["ripe"])
    for column, amount in (
        ("ripe", moved),
        ("pollen", SHARES["pollen_moved"].value * young * parent["pollen"]),
    ):
        parent[column] -= amount
        new[column] += amount
    _share_queen(parent, new, goes_with)
    for column in ("hurt_nest", "hurt_winter"):
        new[column] = parent[column]
    return new


def _move_bees(parent: Any, new: Any, share: Any) -> None:
    for column in ("nest", "winter", "foragers", "mites"):
        part = share * (SHARES["fly_home"].value if column == "foragers" else 1.0)
        new[column] = part * parent[column]
        parent[column] -= new[column]


def _move_brood(parent: Any, new: Any, share: Any) -> None:
    for column in (*BROOD, "mites_worker", "mites_drone"):
        new[column] = share[:, None] * parent[column]
        parent[column] -= new[column]


def _share_queen(parent: Any, new: Any, goes_with: GoesWith) -> None:
    if goes_with == "queen":
        for column in ("queen", "queen_clock", "queen_age"):
            new[column] = parent[column]
        new["swarm_clock"] = 0.0
        change_queen(parent, "removed")
    elif goes_with == "cell":
        change_queen(new, "cell")
        new["queen_clock"] = SHARES["cell_age_days"].value
    elif goes_with == "mated queen":
        change_queen(new, "introduced", age_days=SHARES["mated_queen_days"].value)
    else:
        new["queen"] = QUEENLESS


def unite(going: Any, into: Any) -> None:
    """Join a colony to another in place, whose queen is kept; nothing stays in the first."""
    sugar = into["unripe"] + going["unripe"]
    fed = into["syrup_share"] * into["unripe"] + going["syrup_share"] * going["unripe"]
    into["syrup_share"] = np.where(sugar > 0.0, fed / np.maximum(sugar, 1e-9), 0.0)
    for column, of in (("hurt_nest", "nest"), ("hurt_winter", "winter")):
        bees = into[of] + going[of]
        mixed = into[column] * into[of] + going[column] * going[of]
        into[column] = np.where(bees > 0.0, mixed / np.maximum(bees, 1e-9), 0.0)
    for column in (
        "nest",
        "winter",
        "foragers",
        "drones",
        "mites",
        "eggs",
        "larvae",
        "sealed",
        "drone_open",
        "drone_sealed",
        "mites_worker",
        "mites_drone",
        "drawn",
        "foundation",
        "super_drawn",
        "super_foundation",
        "supers",
        "ripe",
        "super_ripe",
        "super_syrup",
        "unripe",
        "water",
        "pollen",
        "feeder",
        "feeder_water",
        "frames",
    ):
        into[column] += going[column]
        going[column] = 0.0
    going["queen"] = QUEENLESS

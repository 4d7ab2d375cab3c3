"""What a visit is about: the fields that the form at the hive asks for first."""

from typing import Final

from combwright.advice.actions import of_kind
from combwright.advice.bee_acts import LeaveShut
from combwright.advice.kit_acts import Counting
from combwright.planning.sheet import ColonySheet
from combwright.terms.combs import StackView

USUAL: Final = (
    *("frames_of_bees", "seams_of_bees", "frames_of_brood", "combs_with_brood"),
    *("frames_of_stores", "eggs", "queen_cells", "cells_found", "cells_place"),
)
WASHED: Final = ("wash_mites", "wash_bees")
FALLEN: Final = ("tray_mites", "tray_days")
MITES: Final = (*WASHED, *FALLEN)
TRAY_IN_MM: Final = 50  # a tray no further out than this lies in for a count; as counting asks


def asked_first(colony: ColonySheet) -> tuple[str, ...]:
    """Name the fields that are asked for first, in their order."""
    counting = of_kind(colony.actions, Counting)
    if any(not each.on_tray for each in counting):
        return (*USUAL, *WASHED)
    if colony.set_up_now.tray_open_mm <= TRAY_IN_MM and not counting:
        return (*USUAL, *FALLEN)
    return USUAL


def is_shut(colony: ColonySheet) -> bool:
    """Tell whether the hive is not to be opened."""
    return bool(of_kind(colony.actions, LeaveShut))


def frames_of_stores(stack: StackView) -> float:
    """Count the full frames of food that a stack holds, as it is drawn."""
    return sum(place.stores for box in stack.boxes for place in box.places)

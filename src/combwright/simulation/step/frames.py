"""Comb under the keeper's hands: what stands in it, and what finds place there."""

from typing import Any, Final

from combwright.simulation.biology import BIOLOGY
from combwright.simulation.step.compiled import compiled, inlined

DRONE_CELL: Final = BIOLOGY.drone_cell
SUGAR_KG_PER_L: Final = BIOLOGY.sugar_kg_per_l
ML_OF_UNRIPE: Final = BIOLOGY.cell_ml * BIOLOGY.unripe_fill  # in a cell
POLLEN_PER_CELL: Final = BIOLOGY.pollen_per_cell
NOTHING: Final = 1e-9
PAIRED: Final = 8  # numbers from which NumPy adds them up side by side


@inlined
def added_up(parts: Any) -> float:
    """Add up a few numbers in the order in which NumPy does, to the same last digit."""
    many = len(parts)
    paired = PAIRED if many >= PAIRED else 0
    total = 0.0
    if paired:
        first = (parts[0] + parts[1]) + (parts[2] + parts[3])
        total = first + ((parts[4] + parts[5]) + (parts[6] + parts[7]))
    for place in range(paired, many):
        total += parts[place]
    return total


@inlined
def worker_brood(s: Any) -> float:
    """Cells of worker brood of all ages."""
    return added_up(s.eggs) + added_up(s.larvae) + added_up(s.sealed)


@inlined
def brood_and_drones(s: Any) -> float:
    """Worker cells' worth of comb that worker and drone brood take."""
    drones = added_up(s.drone_open) + added_up(s.drone_sealed)
    return worker_brood(s) + DRONE_CELL * drones


@inlined
def food(s: Any) -> float:
    """Cells that hold stores, pollen or unripe food, above and below."""
    ripe = (s.ripe + s.super_ripe) / max(s.sugar_per_cell, NOTHING)
    unripe = (s.unripe / SUGAR_KG_PER_L + s.water) / ML_OF_UNRIPE
    return ripe + unripe + s.pollen / POLLEN_PER_CELL


@inlined
def share_placed(room: float, wanted: float) -> float:
    """Share of something that finds room, 0 to 1."""
    return min(max(room, 0.0) / max(wanted, NOTHING), 1.0)


@compiled
def brood_cells_of(colonies: Any, workers: Any, all_brood: Any) -> None:
    """Count the brood of each colony, [colony]: of workers, and of drones too in worker cells."""
    for lane in range(len(colonies)):
        workers[lane] = worker_brood(colonies[lane])
        all_brood[lane] = brood_and_drones(colonies[lane])


@inlined
def fit(s: Any) -> None:
    """Take away in place what stood in comb that is no longer there: stores first, then brood."""
    brood = brood_and_drones(s)
    left = share_placed(s.drawn + s.super_drawn - brood, food(s))
    if left < 1.0:
        s.ripe *= left
        s.unripe *= left
        s.water *= left
        s.pollen *= left
    left = share_placed(s.drawn, brood)
    if left < 1.0:
        lessen(s.eggs, left)
        lessen(s.larvae, left)
        lessen(s.sealed, left)
        lessen(s.mites_worker, left)
        lessen(s.drone_open, left)
        lessen(s.drone_sealed, left)
        lessen(s.mites_drone, left)


@inlined
def lessen(parts: Any, left: float) -> None:
    """Leave a share of each part in place."""
    for place in range(len(parts)):
        parts[place] *= left


@compiled
def stack_of(
    colonies: Any,
    cells: float,
    sheets: float,
    supers: float,
    super_cells: float,
    honey_stays: bool,
) -> None:
    """Put frames in or take them out in place, ``cells`` and ``sheets`` of foundation in all.

    The same with supers of so many cells, none where the hive takes none; then fit all to its comb.
    """
    for lane in range(len(colonies)):
        s = colonies[lane]
        more = cells - s.drawn - s.foundation
        added, taken = max(more, 0.0), max(-more, 0.0)
        new_sheets = min(max(sheets - s.foundation, 0.0), added)
        old_sheets = min(max(s.foundation - sheets, 0.0), taken)
        s.foundation += new_sheets - old_sheets
        s.drawn += (added - new_sheets) - (taken - old_sheets)
        if super_cells > 0.0:
            stack_supers(s, supers, super_cells, honey_stays)
        fit(s)


@inlined
def stack_supers(s: Any, supers: float, super_cells: float, honey_stays: bool) -> None:
    """Put supers on or take them off in place."""
    s.super_drawn += max(supers - s.supers, 0.0) * super_cells
    left = min(supers / max(s.supers, 1.0), 1.0) if s.supers > 0.0 else 1.0
    s.super_drawn *= left
    s.super_foundation *= left
    if honey_stays:
        left = share_placed(s.super_drawn * s.sugar_per_cell, s.super_ripe)
    s.super_ripe *= left
    s.super_syrup *= left
    s.supers = supers

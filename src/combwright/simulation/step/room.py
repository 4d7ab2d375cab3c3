"""Food against room: which cells hold what, and where the queen can lay tomorrow."""

from typing import Any

from combwright.simulation.step.compiled import inlined
from combwright.simulation.step.shapes import between, spread, sum_of
from combwright.simulation.step.warmth import frames_covered


@inlined
def cells_for(sugar: float, water: float, bio: Any) -> float:
    """Cells that unripe food takes: they are filled thinly to let it dry."""
    return (sugar / bio.sugar_kg_per_l + water) / (bio.cell_ml * bio.unripe_fill)


@inlined
def unripe_cells(s: Any, bio: Any) -> float:
    """Cells that the unripe nectar and syrup of the colony take."""
    return cells_for(s.unripe, s.water, bio)


@inlined
def super_free(s: Any) -> float:
    """Drawn cells in supers that hold no ripe honey."""
    return max(0.0, s.super_drawn - s.super_ripe / s.sugar_per_cell)


@inlined
def share_above(s: Any, today: Any, bio: Any) -> float:
    """Share of the unripe food that is kept in supers.

    Bees go up once they fill the box below, and keep an arch of stores over the brood first.
    """
    if s.supers < 1.0:
        return 0.0
    stored = s.ripe / s.sugar_per_cell / max(s.drawn, 1.0)
    arch = between(bio.above_without_arch, 1.0, spread(stored, bio.arch_begun, bio.arch_done))
    covered = frames_covered(s, today) / max(s.frames, 1.0)
    climbing = spread(covered, bio.climb_from, bio.climb_full)
    fits = min(1.0, super_free(s) / max(unripe_cells(s, bio), 1.0))
    return bio.above_most * climbing * arch * fits


@inlined
def held_below(s: Any, above: float, bio: Any) -> tuple[float, float]:
    """Cells below the excluder that hold food: all, and those that hold unripe food."""
    unripe = unripe_cells(s, bio) * (1.0 - above)
    return s.ripe / s.sugar_per_cell + s.pollen / bio.pollen_per_cell + unripe, unripe


@inlined
def drone_cells(s: Any, bio: Any) -> float:
    """Worker cells' worth of comb that drone brood takes; a drone cell is a third wider in area."""
    return bio.drone_cell * (sum_of(s.drone_open) + sum_of(s.drone_sealed))


@inlined
def room(s: Any, brood: float, warm_frames: float, above: float, bio: Any) -> tuple[float, float]:
    """Count the cells where the queen could lay, and all those free anywhere.

    Food is kept outside the warm nest first; what finds no place there, and a part of the unripe
    food in any case, is put into the nest's empty cells; but a patch in its middle is cleared for a
    queen however much food there is.
    """
    brood += drone_cells(s, bio)
    held, unripe = held_below(s, above, bio)
    warm = min(s.drawn, warm_frames * s.cells_per_frame * bio.nest_share)
    within = max(held - (s.drawn - warm), bio.unripe_near * unripe)
    below = s.drawn - brood - held
    overhead = (super_free(s) - unripe_cells(s, bio) * above) * (s.supers > 0.0)
    for_eggs = min(max(0.0, below), max(0.0, warm - brood - within))
    for_eggs = max(for_eggs, bio.nest_cleared * warm - brood)
    return for_eggs, min(max(0.0, below) + max(0.0, overhead), max(0.0, below + overhead))

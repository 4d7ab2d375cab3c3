"""What is remembered of a day, and what becomes of a colony without bees."""

from typing import Any, Final

from combwright.simulation.columns import (
    DWINDLED,
    HUNGER,
    LAYING,
    MITES,
    NO_QUEEN,
    QUEENLESS,
    ROBBERS,
)
from combwright.simulation.step.balances import mites_of
from combwright.simulation.step.compiled import compiled, inlined
from combwright.simulation.step.warmth import adults_of, brood_of

TRACED: Final = (
    "adults",
    "brood",
    "eggs_laid",
    "sugar_g",
    "room_cells",
    "mites",
    "super_sugar_g",
    "syrup_taken_g",
    "fallen",
    "swarms",
    "gathered_g",
    "used_g",
    "foragers",
    "heat_w",
    "queen_lays",
)


@compiled
def lie_dead(s: Any) -> int:
    """Stay dead: without bees, brood and mites die too."""
    s.nest = s.foragers = s.winter = s.drones = s.mites = 0.0
    s.eggs[:] = 0.0
    s.larvae[:] = 0.0
    s.sealed[:] = 0.0
    s.drone_open[:] = 0.0
    s.drone_sealed[:] = 0.0
    s.mites_worker[:] = 0.0
    s.mites_drone[:] = 0.0
    s.queen = QUEENLESS
    s.laid = s.wanted = s.room = s.intake = s.gathered = s.used = s.fallen = 0.0
    s.warm_frames = s.heat_w = s.tied = s.unmet = s.starving = 0.0
    return 0


@compiled
def cause_of_loss(s: Any, bio: Any) -> float:
    """Tell what a colony died of, by what it looks like at the end."""
    if s.starved > bio.starved_of:
        return ROBBERS if s.robbed > 0.0 else HUNGER
    if s.queen != LAYING:
        return NO_QUEEN
    return MITES if max(s.hurt_nest, s.hurt_winter) > bio.hurt_of else DWINDLED


@inlined
def note(
    s: Any,
    wanted: float,
    laid: float,
    room: float,
    warm: float,
    heat_w: float,
    tied: float,
    bio: Any,
) -> None:
    """Remember in place what decided the day."""
    s.wanted, s.laid, s.room = wanted, laid, room
    s.warm_frames, s.heat_w, s.tied = warm, heat_w, tied
    short = s.queen == LAYING and wanted > bio.wanted_least and room < bio.short_of_room * wanted
    s.short_of_room_days = s.short_of_room_days + 1.0 if short else 0.0
    s.short_of_room_most = max(s.short_of_room_most, s.short_of_room_days)


@compiled
def seen_today(s: Any, out: Any) -> None:
    """Write down the day's quantities, in the order of ``TRACED``."""
    out[0] = adults_of(s)
    out[1] = brood_of(s)
    out[2] = s.laid
    out[3] = s.ripe + s.super_ripe + s.unripe
    out[4] = s.room
    out[5] = mites_of(s)
    out[6] = s.super_ripe
    out[7] = s.taken_down
    out[8] = s.fallen
    out[9] = s.swarmed
    out[10] = s.gathered
    out[11] = s.used
    out[12] = s.foragers
    out[13] = s.heat_w
    out[14] = s.queen == LAYING

"""What the colony uses, the ripening of what it has, and the drawing of comb."""

from typing import Any

from combwright.simulation.step.compiled import inlined
from combwright.simulation.step.rearing import OPEN_LARVA_DAYS
from combwright.simulation.step.shapes import between, spread, sum_of
from combwright.simulation.step.warmth import (
    adults_of,
    basal,
    frames_covered,
    rearing_share,
    winter_reserve,
)


@inlined
def need(s: Any, brood: float, today: Any, heat_sugar: float, bio: Any) -> float:
    """Sugar needed today: to live, to rear brood, to heat and to fly. [g]."""
    bee = basal(rearing_share(brood, bio), today, bio)
    living = adults_of(s) * bee + s.drones * bio.drone_sugar
    per_larva = (bio.larva_sugar + bio.nurse_sugar) / OPEN_LARVA_DAYS
    larvae = (sum_of(s.larvae) + sum_of(s.drone_open)) * per_larva
    flying = s.foragers * today.flight * bio.flight_sugar
    return s.consumption * (living + larvae + heat_sugar + flying)


@inlined
def pollen_need(s: Any, bio: Any) -> float:
    """Pollen needed today by the larvae, through their nurses; winter bees give a part. [g]."""
    larvae = sum_of(s.larvae) + bio.drone_larva_pollen * sum_of(s.drone_open)
    saved = bio.winter_pollen_saved * winter_reserve(s)
    return larvae * bio.larva_pollen / OPEN_LARVA_DAYS * (1.0 - saved)


@inlined
def drawing(s: Any, warm_frames: float, bio: Any) -> tuple[float, float]:
    """Cells drawn today in the brood box and in supers.

    Foundation is drawn only by young bees in warmth, with food coming in.
    """
    income = spread(s.intake - s.used, bio.draw_from, bio.draw_full)
    warm = warm_frames * s.cells_per_frame / max(s.drawn, 1.0)
    crowded = spread(warm, bio.draw_crowded_from, bio.draw_crowded_full)
    most = bio.draw_rate * s.nest * income * crowded
    most = min(most, bio.draw_spends * s.unripe / bio.wax_sugar)
    below = min(s.foundation, most)
    above = min(s.super_foundation, most - below) if s.supers >= 1.0 else 0.0
    return below, above


@inlined
def held_tight(mean_c: float, bio: Any) -> float:
    """Tell how tightly the weather holds a cluster together, 0 to 1."""
    return 1.0 - spread(mean_c, bio.reach_tight_c, bio.reach_loose_c)


@inlined
def out_of_reach(s: Any, today: Any, bio: Any) -> float:
    """Ripe stores that the bees cannot get to today: a cold cluster keeps to its combs. [g].

    On a day warm enough to move, it takes up the combs beside those it covers; in loose weather
    bees get everywhere.
    """
    if today.max_c < bio.move_c:
        return min(s.far, s.ripe)
    within = min(1.0, (frames_covered(s, today) + bio.reach_frames) / max(s.frames, 1.0))
    return (1.0 - within) * today.held_tight * s.ripe


@inlined
def eat(s: Any, wanted_g: float) -> tuple[float, float]:
    """Take sugar for use in place: unripe first, then ripe, then supers.

    Returns what was eaten and the water that went with it.
    """
    from_unripe = min(s.unripe, wanted_g)
    water = s.water * from_unripe / s.unripe if s.unripe > 0.0 else 0.0
    from_ripe = min(max(0.0, s.ripe - s.far), wanted_g - from_unripe)
    from_super = min(s.super_ripe, wanted_g - from_unripe - from_ripe)
    if s.super_ripe > 0.0:
        s.super_syrup *= 1.0 - from_super / s.super_ripe
    s.unripe -= from_unripe
    s.water -= water
    s.ripe -= from_ripe
    s.super_ripe -= from_super
    return from_unripe + from_ripe + from_super, water


@inlined
def drying(mean_c: float, bio: Any) -> float:
    """Tell how well the air of a day dries unripe food."""
    return between(bio.dry_cold, 1.0, spread(mean_c, bio.dry_cold_c, bio.dry_warm_c))


@inlined
def ripen(s: Any, drying: float, above: float, bio: Any) -> float:
    """Dry unripe food in place; what is dry enough becomes ripe stores. Gives the water driven off.

    Mixed food is treated as a share that is finished today and a rest that is as thin as before.
    """
    excess = s.water - bio.ripe_water * s.unripe
    if s.unripe <= 0.0:
        return 0.0
    opening = spread(s.tray_open + s.entrance, bio.dry_closed_mm, bio.dry_open_mm)
    vents = between(bio.dry_closed, 1.0, opening)
    capacity = bio.evaporate * adults_of(s) * drying * vents
    share = min(bio.ripen_most, capacity / excess if excess > 0.0 else 1.0)
    ripened = share * s.unripe
    driven_off = share * max(0.0, excess)
    into_supers = ripened * above
    s.super_syrup += into_supers * s.syrup_share
    s.super_ripe += into_supers
    s.ripe += ripened - into_supers
    lost = s.water * share
    s.unripe -= ripened
    s.water -= lost
    return driven_off

"""Adults that change roles: what emerges, forages, ages and rests, and who of them is hurt."""

from typing import Any

from combwright.simulation.step.compiled import inlined


@inlined
def mix_adults(
    s: Any,
    emerging: float,
    to_winter: float,
    hurt: float,
    turned: float,
    aged: float,
    rested: float,
    bio: Any,
) -> None:
    """Let bees emerge and change roles in place, carrying along who was hurt by mites."""
    turned = min(turned, s.nest)
    rested = min(rested, s.nest - max(turned, 0.0))
    aged = min(aged, s.winter)
    staying = max(0.0, s.nest - max(turned, 0.0) - rested)
    new_winter = emerging * to_winter
    new_nest = emerging - new_winter
    aged_to_nest = (1.0 - bio.winter_aged_forage) * aged
    hurt_nest, hurt_winter = s.hurt_nest, s.hurt_winter
    s.nest = staying + max(-turned, 0.0) + new_nest + aged_to_nest
    s.foragers += turned + bio.winter_aged_forage * aged
    s.winter += new_winter + rested - aged
    hurt_now = staying * hurt_nest + new_nest * hurt + aged_to_nest * hurt_winter
    s.hurt_nest = share_of(hurt_now, s.nest)
    hurt_now = (s.winter - new_winter - rested) * hurt_winter + new_winter * hurt
    s.hurt_winter = share_of(hurt_now + rested * hurt_nest, s.winter)


@inlined
def share_of(part: float, whole: float) -> float:
    """Give a part as a share, 0 to 1, also where rounding is all that is left."""
    return min(1.0, max(0.0, part / whole)) if whole > 0.0 else 0.0

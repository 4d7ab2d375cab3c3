"""Adult workers: who becomes long-lived or a forager, who ages, who dies."""

from typing import Any

import numpy as np

from combwright.science.foraging import recruitment as published
from combwright.simulation.step.compiled import inlined
from combwright.simulation.step.shapes import between, spread, sum_of
from combwright.simulation.step.warmth import adults_of, food_of

hunger = inlined(published.hunger)
turning_share = inlined(published.turning_share)


@inlined
def nursing_load(s: Any, bio: Any) -> float:
    """Open larvae for each bee in the nest that could feed them."""
    larvae = sum_of(s.larvae) + bio.drone_larva_pollen * sum_of(s.drone_open)
    return larvae / max(s.nest + s.winter, 1.0)


@inlined
def long_lived_share(load: float, bio: Any) -> float:
    """Share of bees without much to feed: those that emerge or rest today become long-lived.

    Not the date makes winter bees but that there is little brood to rear: a colony without a
    queen has them in June.

    References
    ----------
    .. [1] G. V. Amdam and S. W. Omholt, J. Theor. Biol. 216, 209-228, 2002: protein kept for want
       of larvae makes bees live long (from memory).
    .. [2] H. R. Mattila, J. L. Harris and G. W. Otis, Insectes Soc. 48, 88-93, 2001: the share of
       long-lived bees grows with each batch that emerges from late August on (from memory).

    """
    squared = (load / bio.long_lived_load) ** bio.long_lived_steepness
    return 1.0 / (1.0 + squared)


@inlined
def turning(flight_hours: float, bio: Any) -> float:
    """Share of the bees about to turn foragers that a day with so many hours of flight lets."""
    return between(bio.recruit_indoors, 1.0, spread(flight_hours, 0.0, bio.recruit_hours))


@inlined
def recruitment(s: Any, turning: float, bio: Any) -> float:
    """Nest bees that turn foragers today; negative when foragers turn back."""
    if s.nest + s.foragers <= 0.0:
        return 0.0
    recruit = bio.recruit + bio.recruit_hunger * hunger(food_of(s), bio.food_half)
    rate = turning_share(s.nest, s.foragers, recruit, bio.inhibit)
    if rate >= 0.0:
        return rate * s.nest * turning
    return max(rate * s.nest, -bio.turn_back_most * s.foragers)


@inlined
def resting(s: Any, long_lived: float, bio: Any) -> float:
    """Nest bees that become long-lived today, as they find no larvae to feed."""
    return s.nest * bio.resting * long_lived


@inlined
def ageing_winter_bees(s: Any, load: float, bio: Any) -> float:
    """Long-lived bees that age into ordinary ones today, the faster the more larvae they feed."""
    return s.winter * bio.winter_ageing * load / (load + bio.winter_ageing_load)


@inlined
def hours_out(flight_hours: float, bio: Any) -> float:
    """Hours that a forager is out in a day with so many hours of flight: at most a few."""
    return bio.hours_out * flight_hours / (bio.hours_out + flight_hours)


@inlined
def idle_death(flight_hours: float, bio: Any) -> float:
    """Deaths of foragers at home in a day with so many hours of flight."""
    return bio.forager_death_home * (1.0 - spread(flight_hours, 0.0, bio.home_hours))


@inlined
def survival(
    s: Any, brood: float, today: Any, heat_sugar: float, bio: Any
) -> tuple[float, float, float]:
    """Share of nest bees, foragers and winter bees that live through the day.

    The more a bee must heat beyond what living costs, the sooner it is worn: a small cluster in a
    large box goes before a large one.
    """
    work = between(bio.nest_death_idle, 1.0, brood / (brood + bio.nest_death_half))
    worse_nest = 1.0 + (bio.hurt_death - 1.0) * s.hurt_nest
    worse_winter = 1.0 + (bio.hurt_death - 1.0) * s.hurt_winter
    nest = bio.nest_death * work * worse_nest
    hours = bio.forager_death * s.forager_mortality * today.hours_out
    foragers = (hours + today.idle_death) * worse_nest
    effort = heat_sugar / max(adults_of(s), 1.0) / bio.basal_cluster
    winter = bio.winter_death * s.forager_mortality * (1.0 + bio.heat_wear * effort)
    winter *= worse_winter * worse_winter
    fed = 1.0 - bio.hunger_nest * s.starving
    fed_foragers = 1.0 - bio.hunger_foragers * s.starving
    return np.exp(-nest) * fed, np.exp(-foragers) * fed_foragers, np.exp(-winter) * fed

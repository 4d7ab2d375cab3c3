"""Adult workers: emergence, recruitment to foraging, winter bees, deaths."""

from typing import Any

import numpy as np

from combwright.science.foraging import recruitment as published
from combwright.simulation.step.compiled import compiled
from combwright.simulation.step.shapes import between, spread
from combwright.simulation.step.warmth import brood_of, food_of

hunger = compiled(published.hunger)
turning_share = compiled(published.turning_share)


@compiled
def winter_share(day_of_year: float, bio: Any) -> float:
    """Share of the bees emerging today that become long-lived winter bees."""
    if day_of_year < bio.winter_last_until:
        return 1.0 - spread(day_of_year, bio.winter_last_from, bio.winter_last_until)
    return 1.0 / (1.0 + np.exp(-(day_of_year - bio.winter_made_day) / bio.winter_made_days))


@compiled
def recruitment(s: Any, flight_hours: float, bio: Any) -> float:
    """Nest bees that turn foragers today; negative when foragers turn back."""
    if s.nest + s.foragers <= 0.0:
        return 0.0
    recruit = bio.recruit + bio.recruit_hunger * hunger(food_of(s), bio.food_half)
    rate = turning_share(s.nest, s.foragers, recruit, bio.inhibit)
    if rate >= 0.0:
        flying = spread(flight_hours, 0.0, bio.recruit_hours)
        return rate * s.nest * between(bio.recruit_indoors, 1.0, flying)
    return max(rate * s.nest, -bio.turn_back_most * s.foragers)


@compiled
def ageing_winter_bees(s: Any, day_of_year: float, bio: Any) -> float:
    """Winter bees that age into nest bees today, from February on and the more brood they rear."""
    if day_of_year > bio.winter_ageing_until:
        return 0.0
    brood = brood_of(s)
    work = between(bio.winter_ageing_idle, 1.0, brood / (brood + bio.winter_ageing_half))
    in_season = spread(day_of_year, bio.winter_ageing_from, bio.winter_ageing_full)
    return s.winter * bio.winter_ageing * work * in_season


@compiled
def survival(s: Any, flight_hours: float, bio: Any) -> tuple[float, float, float]:
    """Share of nest bees, foragers and winter bees that live through the day."""
    brood = brood_of(s)
    work = between(bio.nest_death_idle, 1.0, brood / (brood + bio.nest_death_half))
    worse_nest = 1.0 + (bio.hurt_death - 1.0) * s.hurt_nest
    worse_winter = 1.0 + (bio.hurt_death - 1.0) * s.hurt_winter
    nest = bio.nest_death * work * worse_nest
    hours = bio.forager_death * s.forager_mortality * flight_hours
    idle = bio.forager_death_home * (1.0 - spread(flight_hours, 0.0, bio.home_hours))
    foragers = (hours + idle) * worse_nest
    winter = bio.winter_death * worse_winter * worse_winter
    fed = 1.0 - bio.hunger_nest * s.starving
    fed_foragers = 1.0 - bio.hunger_foragers * s.starving
    return np.exp(-nest) * fed, np.exp(-foragers) * fed_foragers, np.exp(-winter) * fed

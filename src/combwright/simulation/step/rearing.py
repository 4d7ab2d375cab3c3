"""Laying, the ageing of brood, and what it loses to cold and hunger."""

from typing import Any

import numpy as np

from combwright.simulation.columns import LAYING
from combwright.simulation.step.compiled import compiled
from combwright.simulation.step.warmth import brood_of, spread, winter_reserve

OPEN_LARVA_DAYS = 6.0


@compiled
def wanted(s: Any, in_season: float, tied: float, income: float, bio: Any) -> float:
    """Eggs that the queen would lay today if she had room.

    The season's curve ``in_season``, her potential and age, the nurses that could feed the
    larvae, food, income and pollen each hold it back.
    """
    if s.queen != LAYING:
        return 0.0
    nurses = max(0.0, s.nest + bio.winter_nurse * s.winter - tied)
    food = s.ripe + s.unripe + s.super_ripe
    fed = food * food / (food * food + bio.food_half * bio.food_half)
    lift = 1.0 - bio.income_lift * (1.0 - min(1.0, income / max(s.used, 1.0)))
    without = 0.25 + 0.45 * winter_reserve(s)
    with_pollen = without + (1.0 - without) * s.pollen / (s.pollen + bio.pollen_half)
    years = s.queen_age / 365.0
    vigour = min(1.0, (s.queen_age + 4.0) / 12.0) * (1.0 - 0.12 * max(0.0, years - 1.0))
    slimming = 0.4 if s.swarm_clock >= OPEN_LARVA_DAYS else 1.0
    best = bio.lay_peak * in_season * s.queen_potential * max(0.0, vigour)
    fit = best * fed * lift * with_pollen * nurses / (nurses + bio.bees_half)
    nursed = bio.larvae_per_nurse * nurses / OPEN_LARVA_DAYS
    return min(fit, nursed) * slimming * (1.0 - s.lay_brake)


@compiled
def laid(eggs_wanted: float, room: float, bio: Any) -> float:
    """Eggs laid: the queen finds fewer of the cells the fewer there are."""
    if eggs_wanted <= 0.0:
        return 0.0
    return min(room, eggs_wanted * (1.0 - np.exp(-room / (bio.search * eggs_wanted))))


@compiled
def brood_risk(s: Any, warm_frames: float, bio: Any) -> tuple[float, float]:
    """Daily extra death of brood from cold (outside the warm nest) and from hunger."""
    brood = brood_of(s)
    keepable = 0.95 * warm_frames * s.cells_per_frame
    outside = max(0.0, 1.0 - keepable / brood) if brood > 0.0 else 0.0
    return bio.chill_death * outside, bio.hunger_brood * s.unmet


@compiled
def age_brood(s: Any, new_eggs: float, chill: float, hunger: float, bio: Any) -> float:
    """Age worker brood by a day in place, and give the bees that emerge."""
    cold = 1.0 - chill
    alive_egg = (1.0 - min(1.0, bio.egg_death * s.brood_mortality)) * cold
    alive_larva = (1.0 - min(1.0, bio.larva_death * s.brood_mortality)) * cold * (1.0 - hunger)
    alive_sealed = (1.0 - min(1.0, bio.sealed_death * s.brood_mortality)) * cold
    emerging = s.sealed[11] * alive_sealed
    for day in range(11, 0, -1):
        s.sealed[day] = s.sealed[day - 1] * alive_sealed
    s.sealed[0] = s.larvae[5] * alive_larva
    for day in range(5, 0, -1):
        s.larvae[day] = s.larvae[day - 1] * alive_larva
    s.larvae[0] = s.eggs[2] * alive_egg
    s.eggs[2] = s.eggs[1] * alive_egg
    s.eggs[1] = s.eggs[0] * alive_egg
    s.eggs[0] = new_eggs
    return emerging


@compiled
def drone_eggs(s: Any, new_eggs: float, day_of_year: float, bio: Any) -> float:
    """Drone eggs among those laid: from April to July, by colonies strong enough."""
    in_season = spread(day_of_year, 95.0, 125.0) * (1.0 - spread(day_of_year, 185.0, 215.0))
    return new_eggs * bio.drone_share * in_season * spread(s.nest + s.foragers, 5000.0, 12000.0)


@compiled
def age_drones(s: Any, new_eggs: float, day_of_year: float, bio: Any) -> float:
    """Age drone brood in place (a chain of equal spells) and give the cells sealed today."""
    open_rate = 3.0 / 9.5
    sealed_rate = 5.0 / 14.5
    sealed_today = s.drone_open[2] * open_rate
    emerging = s.drone_sealed[4] * sealed_rate
    for spell in range(4, 0, -1):
        s.drone_sealed[spell] += (s.drone_sealed[spell - 1] - s.drone_sealed[spell]) * sealed_rate
    s.drone_sealed[0] += sealed_today - s.drone_sealed[0] * sealed_rate
    for spell in range(2, 0, -1):
        s.drone_open[spell] += (s.drone_open[spell - 1] - s.drone_open[spell]) * open_rate
    s.drone_open[0] += new_eggs - s.drone_open[0] * open_rate
    thrown_out = 0.10 * spread(day_of_year, 210.0, 240.0) if s.queen == LAYING else 0.0
    s.drones = (s.drones + emerging) * (1.0 - bio.drone_death - thrown_out)
    return sealed_today

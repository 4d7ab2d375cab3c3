"""Laying, the ageing of brood, and what it loses to cold and hunger."""

from typing import Any

import numpy as np

from combwright.science.colony import brood, laying
from combwright.simulation.columns import CAGED, DRONE_LAYER, LAYING
from combwright.simulation.step.adults import hunger
from combwright.simulation.step.compiled import compiled, inlined
from combwright.simulation.step.shapes import YEAR, between, in_season, pass_on, spread
from combwright.simulation.step.warmth import food_of, winter_reserve

alive_next_day = inlined(brood.alive_next_day)
season_share = inlined(laying.season_share)

OPEN_LARVA_DAYS = brood.stage_days("worker").open_larva.value
DRONE_OPEN_RATE = 3.0 / brood.stage_days("drone").sealed_on  # of the spells of ``drone_open``
DRONE_SEALED_RATE = 5.0 / brood.stage_days("drone").sealed.value  # of those of ``drone_sealed``


@inlined
def season(day_of_year: float, bio: Any) -> float:
    """Share of her best laying that the season lets the queen do."""
    return season_share(
        day_of_year,
        bio.season_rise,
        bio.season_rise_days,
        bio.season_fall,
        bio.season_fall_day + bio.autumn_shift,
        bio.season_fall_days,
    )


@compiled
def seasons_of_worlds(seasons: Any, days_of_year: Any, bio: Any) -> None:
    """Work out in place the season's share of her best laying, [world, day]."""
    for world in range(seasons.shape[0]):
        for day in range(seasons.shape[1]):
            seasons[world, day] = season(days_of_year[day], bio[world])


@inlined
def wanted(s: Any, season: float, tied: float, income: float, bio: Any) -> float:
    """Eggs that the queen would lay today if she had room.

    The season's curve ``season``, her potential and age, the nurses that could feed the
    larvae, food, income and pollen each hold it back. A drone layer and laying workers lay a share
    of what she would.
    """
    if s.queen != LAYING and s.queen < DRONE_LAYER:
        return 0.0
    nurses = max(0.0, s.nest + bio.winter_nurse * s.winter - tied)
    fed = 1.0 - hunger(food_of(s), bio.food_half)
    lift = 1.0 - bio.income_lift * (1.0 - min(1.0, income / max(s.used, 1.0)))
    without = bio.without_pollen + bio.without_pollen_winter * winter_reserve(s)
    with_pollen = between(without, 1.0, s.pollen / (s.pollen + bio.pollen_half))
    slimming = bio.slimming if s.swarm_clock >= bio.slims_from else 1.0
    best = bio.lay_peak * season * s.queen_potential * vigour(s.queen_age, bio)
    fit = best * fed * lift * with_pollen * nurses / (nurses + bio.bees_half)
    nursed = bio.larvae_per_nurse * s.rearing * nurses / OPEN_LARVA_DAYS
    share = 1.0 if s.queen == LAYING else only_drones(s.queen, bio)
    return min(fit, nursed) * slimming * (1.0 - s.lay_brake) * share


@inlined
def only_drones(queen: float, bio: Any) -> float:
    """Share of a queen's laying where all the brood is of drones; common practice, no source."""
    return bio.dry_lays if queen == DRONE_LAYER else bio.workers_lay


@inlined
def vigour(queen_age: float, bio: Any) -> float:
    """Share of her best laying that a queen's age leaves her."""
    begun = min(1.0, (queen_age + bio.queen_begins_ahead) / bio.queen_begins_days)
    worn = bio.queen_fade * max(0.0, queen_age / YEAR - 1.0)
    return begun * max(0.0, 1.0 - worn)


@inlined
def laid(eggs_wanted: float, room: float, bio: Any) -> float:
    """Eggs laid: the queen finds fewer of the cells the fewer there are."""
    if eggs_wanted <= 0.0:
        return 0.0
    return min(room, eggs_wanted * (1.0 - np.exp(-room / (bio.search * eggs_wanted))))


@inlined
def brood_risk(s: Any, cells: float, warm_frames: float, bio: Any) -> tuple[float, float]:
    """Daily extra death of brood from cold (outside the warm nest) and from hunger."""
    keepable = bio.keepable * warm_frames * s.cells_per_frame
    outside = max(0.0, 1.0 - keepable / cells) if cells > 0.0 else 0.0
    return bio.chill_death * outside, bio.hunger_brood * s.unmet


@inlined
def age_brood(s: Any, new_eggs: float, chill: float, unfed: float, bio: Any) -> float:
    """Age worker brood by a day in place, and give the bees that emerge."""
    cold = 1.0 - chill
    alive_egg = alive_next_day(bio.egg_death, s.brood_mortality) * cold
    alive_larva = alive_next_day(bio.larva_death, s.brood_mortality) * cold * (1.0 - unfed)
    alive_sealed = alive_next_day(bio.sealed_death, s.brood_mortality) * cold
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


@inlined
def drones_wanted(day_of_year: float, bio: Any) -> float:
    """Tell how much of the season of drones is on: from April to July."""
    return in_season(day_of_year, bio.drone_from, bio.drone_high, bio.drone_less, bio.drone_until)


@inlined
def drones_thrown_out(day_of_year: float, bio: Any) -> float:
    """Share of its drones that a colony with a queen throws out on a day."""
    return bio.drones_out * spread(day_of_year, bio.drones_out_from, bio.drones_out_full)


@inlined
def drone_eggs(s: Any, new_eggs: float, drones_wanted: float, bio: Any) -> float:
    """Drone eggs among those laid: in their season, by colonies strong enough.

    Of a drone layer or laying workers all are, in worker cells.
    """
    if s.queen > CAGED:
        return new_eggs / bio.drone_cell
    strong = spread(s.nest + s.foragers, bio.drone_bees_from, bio.drone_bees_full)
    return new_eggs * bio.drone_share * drones_wanted * strong


@inlined
def age_drones(s: Any, new_eggs: float, thrown_out: float, bio: Any) -> float:
    """Age drone brood in place (a chain of equal spells) and give the cells sealed today."""
    sealed_today = pass_on(s.drone_open, new_eggs, DRONE_OPEN_RATE)
    emerging = pass_on(s.drone_sealed, sealed_today, DRONE_SEALED_RATE)
    unwelcome = thrown_out if s.queen == LAYING else 0.0
    s.drones = (s.drones + emerging) * (1.0 - bio.drone_death - unwelcome)
    return sealed_today

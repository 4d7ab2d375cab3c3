"""The queen and the swarm: loss, cells, mating, laying, and what a swarm takes along."""

from typing import Any

import numpy as np

from combwright.simulation.columns import CELL, LAYING, QUEENLESS, VIRGIN
from combwright.simulation.step.compiled import compiled
from combwright.simulation.step.room import drone_cells, held_below
from combwright.simulation.step.warmth import adults_of, brood_of, spread

SEALED_ON = 8.0  # day from the egg on which a queen cell is sealed
EMERGES_ON = 16.0  # day from the egg on which a virgin emerges
RAISED_FROM = 4.0  # age of the larva that bees choose for an emergency cell
MATURE_ON = 6.0  # days after emergence from which a virgin can mate
TOO_LATE_ON = 28.0  # days after emergence at which an unmated queen is a failure
FLIGHTS_TO_MATE = 1.5  # good mating days that suffice; judgement
LAYS_AFTER = 9.0  # earliest day after emergence on which she lays


@compiled
def swarm_hazard(s: Any, day_of_year: float, above: float, bio: Any) -> float:
    """Daily hazard that the bees start swarm cells.

    No validated trigger is published. Crowding of comb and of bees, the season and the queen's
    age, which reviews agree on, multiply; the size is judgement.
    """
    in_season = spread(day_of_year, 108.0, 135.0) * (1.0 - spread(day_of_year, 190.0, 225.0))
    if in_season == 0.0:
        return 0.0
    held, _ = held_below(s, above, bio)
    full = (brood_of(s) + drone_cells(s) + held) / max(s.drawn, 1.0)
    places = s.bees_per_frame * (s.frames + 6.0 * s.supers)
    crowded = spread(full, bio.swarm_full - 0.15, bio.swarm_full + 0.07)
    bees = spread(adults_of(s) / max(places, 1.0), 0.7, 1.2)
    years = s.queen_age / 365.0
    age = 0.25 + 0.75 * spread(years, 0.3, 1.0) + 0.4 * max(0.0, years - 1.0)
    return bio.swarm_hazard * s.swarm_readiness * in_season * crowded * (0.25 + 0.75 * bees) * age


@compiled
def leave(s: Any, share: float, bio: Any) -> tuple[float, float]:
    """Let a share of the adults leave in place, with full crops. Gives bees and sugar gone."""
    bees = share * adults_of(s)
    s.nest *= 1.0 - share
    s.foragers *= 1.0 - share
    s.winter *= 1.0 - share
    sugar = min(bees * bio.swarm_honey, s.ripe)
    s.ripe -= sugar
    mites = share * s.mites
    s.mites -= mites
    s.swarmed += 1.0
    return bees, sugar


@compiled
def swarming(
    s: Any, day_of_year: float, flight_hours: float, above: float, luck: Any, bio: Any
) -> float:
    """Start, age or finish swarm preparations in place; give the share of bees that leaves."""
    if s.queen != LAYING:
        return 0.0
    if s.swarm_clock == 0.0:
        most = bio.swarm_hazard * s.swarm_readiness * (1.0 + s.queen_age / 365.0)
        if luck[2] < most and luck[2] < 1.0 - np.exp(-swarm_hazard(s, day_of_year, above, bio)):
            s.swarm_clock = 1.0
        return 0.0
    s.swarm_clock += 1.0
    if s.swarm_clock > SEALED_ON and flight_hours >= 3.0 and luck[3] < 0.6:
        s.queen, s.queen_clock, s.swarm_clock = CELL, s.swarm_clock, 0.0
        return bio.swarm_share
    if s.swarm_clock > 20.0:
        s.swarm_clock = 0.0
    return 0.0


@compiled
def queen_day(s: Any, mating_chance: float, luck: Any, bio: Any) -> float:
    """Let the queen's day pass in place; give the share of bees that leaves with a cast."""
    s.queen_clock += 1.0
    if s.queen == LAYING:
        s.queen_age += 1.0
        if luck[4] < bio.queen_loss:
            s.queen, s.queen_clock, s.swarm_clock = QUEENLESS, 0.0, 0.0
        return 0.0
    if s.queen == QUEENLESS and s.larvae[0] + s.larvae[1] > 50.0:
        s.queen, s.queen_clock = CELL, RAISED_FROM
        return 0.0
    if s.queen == CELL and s.queen_clock >= EMERGES_ON:
        s.queen, s.queen_clock, s.mating_flights = VIRGIN, 0.0, 0.0
        cast = s.swarmed > 0.0 and adults_of(s) > 9000.0 and luck[4] < bio.cast_chance
        return 0.4 if cast else 0.0
    if s.queen == VIRGIN:
        if s.queen_clock >= MATURE_ON:
            s.mating_flights += mating_chance
        if s.mating_flights >= FLIGHTS_TO_MATE and s.queen_clock >= LAYS_AFTER:
            s.queen = QUEENLESS if luck[5] < bio.mating_loss else LAYING
            s.queen_clock, s.queen_age = 0.0, 0.0
        elif s.queen_clock > TOO_LATE_ON:
            s.queen, s.queen_clock = QUEENLESS, 0.0
    return 0.0

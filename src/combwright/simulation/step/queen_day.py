"""The queen and the swarm: loss, cells, mating, laying, and what a swarm takes along."""

from typing import Any

import numpy as np

from combwright.science.queens.queen_clock import AGE, CLOCK
from combwright.simulation.columns import (
    CELL,
    DRONE_LAYER,
    LAYING,
    LAYING_WORKERS,
    QUEENLESS,
    VIRGIN,
)
from combwright.simulation.step.compiled import compiled, inlined
from combwright.simulation.step.room import drone_cells, held_below
from combwright.simulation.step.shapes import YEAR, between, in_season, spread
from combwright.simulation.step.warmth import adults_of, brood_of

SEALED_ON = CLOCK["sealed"].value
EMERGES_ON = CLOCK["emerges"].value
RAISED_FROM = AGE["walk-away"].value
MATURE_ON = CLOCK["flies to mate"].value - EMERGES_ON
TOO_LATE_ON = CLOCK["too late"].value - EMERGES_ON


@compiled
def swarm_hazard(s: Any, day_of_year: float, above: float, bio: Any) -> float:
    """Daily hazard that the bees start swarm cells.

    No validated trigger is published. Crowding of comb and of bees, the season and the queen's
    age, which reviews agree on, multiply; the size is judgement.
    """
    when = in_season(day_of_year, bio.swarm_from, bio.swarm_high, bio.swarm_less, bio.swarm_until)
    if when == 0.0:
        return 0.0
    held, _ = held_below(s, above, bio)
    full = (brood_of(s) + drone_cells(s, bio) + held) / max(s.drawn, 1.0)
    places = s.bees_per_frame * (s.frames + bio.swarm_super_frames * s.supers)
    begins, certain = bio.swarm_full - bio.swarm_full_below, bio.swarm_full + bio.swarm_full_above
    crowded = spread(full, begins, certain)
    in_places = adults_of(s) / max(places, 1.0)
    bees = between(
        bio.swarm_loose, 1.0, spread(in_places, bio.swarm_bees_from, bio.swarm_bees_full)
    )
    years = s.queen_age / YEAR
    age = between(bio.swarm_young, 1.0, spread(years, bio.swarm_young_until, 1.0))
    age += bio.swarm_old * max(0.0, years - 1.0)
    return bio.swarm_hazard * s.swarm_readiness * when * crowded * bees * age


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


@inlined
def swarming(s: Any, today: Any, above: float, bio: Any) -> float:
    """Start, age or finish swarm preparations in place; give the share of bees that leaves."""
    if s.queen != LAYING:
        return 0.0
    if s.swarm_clock == 0.0:
        most = bio.swarm_hazard * s.swarm_readiness * (1.0 + s.queen_age / YEAR)
        if today.swarm_starts < most and today.swarm_starts < 1.0 - np.exp(
            -swarm_hazard(s, today.day, above, bio)
        ):
            s.swarm_clock = 1.0
        return 0.0
    s.swarm_clock += 1.0
    ready = s.swarm_clock > SEALED_ON and today.flight >= bio.swarm_hours
    if ready and today.swarm_leaves < bio.swarm_leaves:
        s.queen, s.queen_clock, s.swarm_clock = CELL, s.swarm_clock, 0.0
        return bio.swarm_share
    if s.swarm_clock > bio.swarm_gives_up:
        s.swarm_clock = 0.0
    return 0.0


@inlined
def queen_day(s: Any, today: Any, bio: Any) -> float:
    """Let the queen's day pass in place; give the share of bees that leaves with a cast.

    An old queen is likelier to fail, and likelier to be superseded in the mating season: her
    daughter then lays beside her before she is gone, so that no day is lost. One that runs out of
    sperm, or never mated, lays drones; so do workers that have long been without queen and brood.
    """
    s.queen_clock += 1.0
    if s.queen == LAYING:
        s.queen_age += 1.0
        years = max(0.0, s.queen_age / YEAR - 1.0)
        fails = bio.queen_loss * (1.0 + bio.queen_ages * years)
        if today.queen_lost < fails:
            lost = today.queen_lost < fails * (1.0 - bio.runs_dry)
            s.queen = QUEENLESS if lost else DRONE_LAYER
            s.queen_clock, s.swarm_clock = 0.0, 0.0
        elif today.mating > 0.0 and today.queen_lost > 1.0 - bio.supersedure * years:
            s.queen_age = 0.0
        return 0.0
    if s.queen == QUEENLESS:
        without_a_queen(s, today.mating, bio)
        return 0.0
    if s.queen == CELL and s.queen_clock >= EMERGES_ON:
        s.queen, s.queen_clock, s.mating_flights = VIRGIN, 0.0, 0.0
        left_many = s.swarmed > 0.0 and adults_of(s) > bio.cast_bees
        return bio.cast_share if left_many and today.queen_lost < bio.cast_chance else 0.0
    if s.queen == VIRGIN:
        virgin_day(s, today, bio)
    return 0.0


@compiled
def without_a_queen(s: Any, mating_chance: float, bio: Any) -> None:
    """Raise a queen from young larvae in place; long without any, workers lay in the season."""
    if s.larvae[0] + s.larvae[1] > bio.emergency_larvae:
        s.queen, s.queen_clock = CELL, RAISED_FROM
    elif s.queen_clock > bio.workers_lay_after and mating_chance > 0.0:
        s.queen, s.queen_clock = LAYING_WORKERS, 0.0


@compiled
def virgin_day(s: Any, today: Any, bio: Any) -> None:
    """Let a virgin fly to mate in place, and lay or be lost; unmated too long she lays drones."""
    if s.queen_clock >= MATURE_ON:
        s.mating_flights += today.mating
    if s.mating_flights >= bio.mating_days and s.queen_clock >= bio.lays_after:
        s.queen = QUEENLESS if today.mated < bio.mating_loss else LAYING
        s.queen_clock, s.queen_age = 0.0, 0.0
    elif s.queen_clock > TOO_LATE_ON:
        s.queen = DRONE_LAYER if today.mated < bio.lays_unmated else QUEENLESS
        s.queen_clock = 0.0

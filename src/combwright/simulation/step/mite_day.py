"""Brood against mites: invasion, growth under the cap, fall, and the harm done."""

from typing import Any

import numpy as np

from combwright.science.mites import invasion, natural_fall
from combwright.simulation.step.compiled import inlined
from combwright.simulation.step.rearing import DRONE_SEALED_RATE
from combwright.simulation.step.shapes import in_season, pass_on, spread, sum_of
from combwright.simulation.step.warmth import adults_of, brood_of

invasion_rate = inlined(invasion.invasion_rate)
trapped_share = inlined(invasion.trapped_share)
daily_deaths = inlined(natural_fall.daily_deaths)


@inlined
def hurt_share(mothers: float, cells: float) -> float:
    """Share of cells with at least one mite, mites falling on cells at random."""
    if cells <= 0.0 or mothers <= 0.0:
        return 0.0
    return 1.0 - np.exp(-mothers / cells)


@inlined
def killed_today(share: float, pace: float) -> float:
    """Share of mites that a treatment kills today: faster in the warmth, in which it evaporates."""
    return share if pace == 1.0 else -np.expm1(pace * np.log1p(-share))


@inlined
def age_mites(
    s: Any, worker_sealed: float, drone_sealed: float, arriving: float, luck: float, bio: Any
) -> tuple[float, float, float]:
    """Age the mites by a day in place.

    Mites on bees invade cells about to be sealed at a rate set by those cells and the weight of
    bees; mothers leave with their daughters when the bee emerges, less what dies in the cell and
    soon after.

    Gives the mites that came into being, that died, and that fell where a tray counts them.

    References
    ----------
    .. [1] S. J. Martin, Ecological Modelling 109, 267-281, 1998 (growth; from memory).

    """
    grams = adults_of(s) * bio.bee_g + 1.0
    rate_worker = invasion_rate(worker_sealed, grams, bio.invade_worker) * luck
    rate_drone = invasion_rate(drone_sealed, grams, bio.invade_drone) * luck
    rate = rate_worker + rate_drone
    into_cells = s.mites * trapped_share(rate) if rate > 0.0 else 0.0
    into_drone = into_cells * rate_drone / rate if rate > 0.0 else 0.0

    killed = 0.0
    if s.kill_cells > 0.0:
        in_cells = killed_today(s.kill_cells, s.kill_pace)
        killed = in_cells * (sum_of(s.mites_worker) + sum_of(s.mites_drone))
        s.mites_worker[:] *= 1.0 - in_cells
        s.mites_drone[:] *= 1.0 - in_cells
    from_worker = s.mites_worker[11]
    for day in range(11, 0, -1):
        s.mites_worker[day] = s.mites_worker[day - 1]
    s.mites_worker[0] = into_cells - into_drone
    from_drone = pass_on(s.mites_drone, into_drone, DRONE_SEALED_RATE)

    live = s.mite_growth * (from_worker * bio.leave_worker + from_drone * bio.leave_drone)
    gross_drone = bio.leave_drone + bio.mite_gross_drone
    gross = s.mite_growth * (from_worker * bio.mite_gross + from_drone * gross_drone)
    natural = daily_deaths(brood_of(s), bio.mite_death_winter, bio.mite_death, bio.mite_death_half)
    on_bees = s.mites - into_cells
    dying = on_bees * (1.0 - np.exp(-natural) * (1.0 - killed_today(s.kill_bees, s.kill_pace)))
    s.mites = on_bees - dying + live + arriving
    fallen = dying + gross - live
    born = gross - from_worker - from_drone
    return born, fallen + killed, fallen + bio.killed_fall * killed


@inlined
def mites_around(day_of_year: float, bio: Any) -> float:
    """Share of the pressure of mites from other colonies that is on: some in summer, then most.

    ``invaders`` is the pressure at its height; Frey & Rosenkranz 2014 (doi 10.1603/EC13381) found
    0.7-2.4 a day at low and 2.5-11.2 at high density of colonies.
    """
    autumn = in_season(
        day_of_year, bio.invade_from, bio.invade_full, bio.invade_less, bio.invade_until
    )
    begun = spread(day_of_year, bio.invade_summer_from, bio.invade_summer_full)
    summer = bio.invade_summer * begun * (1.0 - autumn)
    return autumn + summer * (day_of_year < bio.invade_summer_until)


@inlined
def arriving_mites(s: Any, today: Any) -> float:
    """Mites carried in today from other colonies."""
    carried = s.invaders * today.mites_around
    return carried * today.mites_carried if carried > 0.0 else 0.0

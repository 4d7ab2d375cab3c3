"""Plain reference of mites, queen and swarm."""

import math
from collections.abc import Sequence
from typing import Any

from tests.simulation.reference.food import lucky
from tests.simulation.reference.nest import bees, brood, drone_comb, food_below, ramp

from combwright.simulation.biology import Biology

Colony = dict[str, Any]
Luck = Sequence[float]


def hurt_share(mothers: float, cells: float) -> float:
    return 1 - math.exp(-mothers / cells) if cells > 0 else 0.0


def arriving(c: Colony, day: float, luck: float) -> float:
    autumn = ramp(day, 195, 235) * (1 - ramp(day, 290, 320))
    summer = 0.15 * ramp(day, 140, 170) * (1 - autumn) if day < 300 else 0.0
    return float(c["invaders"] * (autumn + summer) * math.exp(0.5 * luck - 0.125))


def age_mites(
    c: Colony, sealed: float, drones_sealed: float, come: float, *, luck: float, bio: Biology
) -> float:
    """Mites enter cells, breed, leave and die; gives those that fall on the tray."""
    grams = bees(c) * bio.bee_g + 1
    worker = bio.invade_worker * sealed / grams * lucky(bio.mite_luck, luck)
    drone = bio.invade_drone * drones_sealed / grams * lucky(bio.mite_luck, luck)
    enter, enter_drone = 0.0, 0.0
    if worker + drone > 0:
        enter = c["mites"] * (1 - math.exp(-(worker + drone)))
        enter_drone = enter * drone / (worker + drone)
    killed = c["kill_cells"] * (sum(c["mites_worker"]) + sum(c["mites_drone"]))
    in_worker = [x * (1 - c["kill_cells"]) for x in c["mites_worker"]]
    in_drone = [x * (1 - c["kill_cells"]) for x in c["mites_drone"]]
    pass_on = [x * 5 / 14.5 for x in in_drone]
    c["mites_worker"] = [enter - enter_drone, *in_worker[:-1]]
    c["mites_drone"] = [
        x + gain - loss
        for x, gain, loss in zip(in_drone, [enter_drone, *pass_on], pass_on, strict=False)
    ]
    from_worker, from_drone = in_worker[-1], pass_on[-1]
    growth = c["mite_growth"]
    live = growth * (from_worker * bio.leave_worker + from_drone * bio.leave_drone)
    gross = growth * (from_worker * bio.mite_gross + from_drone * (bio.leave_drone + 0.5))
    rearing = brood(c) / (brood(c) + 1000)
    natural = (1 - rearing) * bio.mite_death_winter + rearing * bio.mite_death
    stay = c["mites"] - enter
    dying = stay * (1 - math.exp(-natural) * (1 - c["kill_bees"]))
    c["mites"] = stay - dying + live + come
    return float(dying + gross - live + 0.5 * killed)


def swarm_hazard(c: Colony, day: float, above: float, bio: Biology) -> float:
    when = ramp(day, 108, 135) * (1 - ramp(day, 190, 225))
    food, _ = food_below(c, above, bio)
    full = (brood(c) + drone_comb(c) + food) / max(c["drawn"], 1.0)
    comb = ramp(full, bio.swarm_full - 0.15, bio.swarm_full + 0.07)
    places = c["bees_per_frame"] * (c["frames"] + 6 * c["supers"])
    crowd = 0.25 + 0.75 * ramp(bees(c) / max(places, 1.0), 0.7, 1.2)
    years = c["queen_age"] / 365
    age = 0.25 + 0.75 * ramp(years, 0.3, 1.0) + 0.4 * max(0.0, years - 1)
    return float(bio.swarm_hazard * c["swarm_readiness"] * when * comb * crowd * age)


def leave(c: Colony, share: float, bio: Biology) -> None:
    gone = share * bees(c)
    for part in ("nest", "foragers", "winter", "mites"):
        c[part] *= 1 - share
    c["ripe"] -= min(gone * bio.swarm_honey, c["ripe"])
    c["swarmed"] += 1


def swarming(
    c: Colony, day: float, hours: float, above: float, *, luck: Luck, bio: Biology
) -> float:
    if c["queen"] != 3:
        return 0.0
    if c["swarm_clock"] == 0:
        if luck[2] < 1 - math.exp(-swarm_hazard(c, day, above, bio)):
            c["swarm_clock"] = 1.0
        return 0.0
    c["swarm_clock"] += 1
    if c["swarm_clock"] > 8 and hours >= 3 and luck[3] < 0.6:
        c["queen"], c["queen_clock"], c["swarm_clock"] = 1.0, c["swarm_clock"], 0.0
        return bio.swarm_share
    if c["swarm_clock"] > 20:
        c["swarm_clock"] = 0.0
    return 0.0


def queen_day(c: Colony, mating: float, luck: Luck, bio: Biology) -> float:  # noqa: C901 (every case of a queen)
    c["queen_clock"] += 1
    if c["queen"] == 3:
        c["queen_age"] += 1
        if luck[4] < bio.queen_loss:
            c["queen"] = c["queen_clock"] = c["swarm_clock"] = 0.0
        return 0.0
    if c["queen"] == 0:
        if c["larvae"][0] + c["larvae"][1] > 50:
            c["queen"], c["queen_clock"] = 1.0, 4.0
        return 0.0
    if c["queen"] == 1:
        if c["queen_clock"] < 16:
            return 0.0
        c["queen"], c["queen_clock"], c["mating_flights"] = 2.0, 0.0, 0.0
        strong = c["swarmed"] > 0 and bees(c) > 9000
        return 0.4 if strong and luck[4] < bio.cast_chance else 0.0
    if c["queen"] == 2:
        if c["queen_clock"] >= 6:
            c["mating_flights"] += mating
        if c["mating_flights"] >= 1.5 and c["queen_clock"] >= 9:
            c["queen"] = 0.0 if luck[5] < bio.mating_loss else 3.0
            c["queen_clock"] = c["queen_age"] = 0.0
        elif c["queen_clock"] > 28:
            c["queen"] = c["queen_clock"] = 0.0
    return 0.0

"""Plain reference of mites, queen and swarm."""

import math
from collections.abc import Sequence
from typing import Any

from tests.simulation.reference.food import lucky
from tests.simulation.reference.nest import bees, brood, drone_comb, food_below, mixed, ramp

from combwright.simulation.biology import Biology
from combwright.simulation.luck import MATED, QUEEN_LOST, SWARM_LEAVES, SWARM_STARTS

Colony = dict[str, Any]
Luck = Sequence[float]


def hurt_share(mothers: float, cells: float) -> float:
    return 1 - math.exp(-mothers / cells) if cells > 0 and mothers > 0 else 0.0


def arriving(c: Colony, day: float, luck: float, bio: Biology) -> float:
    over = ramp(day, bio.invade_less, bio.invade_until)
    autumn = ramp(day, bio.invade_from, bio.invade_full) * (1 - over)
    summer = 0.0
    if day < bio.invade_summer_until:
        begun = ramp(day, bio.invade_summer_from, bio.invade_summer_full)
        summer = bio.invade_summer * begun * (1 - autumn)
    return float(c["invaders"] * (autumn + summer) * lucky(bio.invade_luck, luck))


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
    pace = c["kill_pace"]
    spared, spared_on_bees = (1 - c["kill_cells"]) ** pace, (1 - c["kill_bees"]) ** pace
    killed = (1 - spared) * (sum(c["mites_worker"]) + sum(c["mites_drone"]))
    in_worker = [x * spared for x in c["mites_worker"]]
    in_drone = [x * spared for x in c["mites_drone"]]
    pass_on = [x * 5 / 14.5 for x in in_drone]
    c["mites_worker"] = [enter - enter_drone, *in_worker[:-1]]
    c["mites_drone"] = [
        x + gain - loss
        for x, gain, loss in zip(in_drone, [enter_drone, *pass_on], pass_on, strict=False)
    ]
    from_worker, from_drone = in_worker[-1], pass_on[-1]
    growth = c["mite_growth"]
    live = growth * (from_worker * bio.leave_worker + from_drone * bio.leave_drone)
    gross = growth * (
        from_worker * bio.mite_gross + from_drone * (bio.leave_drone + bio.mite_gross_drone)
    )
    rearing = brood(c) / (brood(c) + bio.mite_death_half)
    natural = (1 - rearing) * bio.mite_death_winter + rearing * bio.mite_death
    stay = c["mites"] - enter
    dying = stay * (1 - math.exp(-natural) * spared_on_bees)
    c["mites"] = stay - dying + live + come
    return float(dying + gross - live + bio.killed_fall * killed)


def swarm_hazard(c: Colony, day: float, above: float, bio: Biology) -> float:
    over = ramp(day, bio.swarm_less, bio.swarm_until)
    when = ramp(day, bio.swarm_from, bio.swarm_high) * (1 - over)
    food, _ = food_below(c, above, bio)
    full = (brood(c) + drone_comb(c, bio) + food) / max(c["drawn"], 1.0)
    begun, certain = bio.swarm_full - bio.swarm_full_below, bio.swarm_full + bio.swarm_full_above
    comb = ramp(full, begun, certain)
    places = c["bees_per_frame"] * (c["frames"] + bio.swarm_super_frames * c["supers"])
    pressed = ramp(bees(c) / max(places, 1.0), bio.swarm_bees_from, bio.swarm_bees_full)
    crowd = mixed(bio.swarm_loose, 1, pressed)
    years = c["queen_age"] / 365
    age = mixed(bio.swarm_young, 1, ramp(years, bio.swarm_young_until, 1))
    age += bio.swarm_old * max(0.0, years - 1)
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
        if luck[SWARM_STARTS] < 1 - math.exp(-swarm_hazard(c, day, above, bio)):
            c["swarm_clock"] = 1.0
        return 0.0
    c["swarm_clock"] += 1
    if c["swarm_clock"] > 8 and hours >= bio.swarm_hours and luck[SWARM_LEAVES] < bio.swarm_leaves:
        c["queen"], c["queen_clock"], c["swarm_clock"] = 1.0, c["swarm_clock"], 0.0
        return bio.swarm_share
    if c["swarm_clock"] > bio.swarm_gives_up:
        c["swarm_clock"] = 0.0
    return 0.0


def cause(c: Colony, bio: Biology) -> float:
    """What it died of: 1 hunger, 2 no queen, 3 mites, 4 dwindled, 5 robbed."""
    if c["starved"] > bio.starved_of:
        return 5.0 if c["robbed"] > 0 else 1.0
    if c["queen"] != 3:
        return 2.0
    return 3.0 if max(c["hurt_nest"], c["hurt_winter"]) > bio.hurt_of else 4.0


def queen_day(c: Colony, mating: float, luck: Luck, bio: Biology) -> float:  # noqa: C901 (every case of a queen)
    c["queen_clock"] += 1
    if c["queen"] == 3:
        c["queen_age"] += 1
        older = max(0.0, c["queen_age"] / 365 - 1)
        if luck[QUEEN_LOST] < bio.queen_loss * (1 + bio.queen_ages * older):
            gone = (1 - bio.runs_dry) * bio.queen_loss * (1 + bio.queen_ages * older)
            c["queen"] = 0.0 if luck[QUEEN_LOST] < gone else 5.0
            c["queen_clock"] = c["swarm_clock"] = 0.0
        elif mating > 0 and 1 - luck[QUEEN_LOST] < bio.supersedure * older:
            c["queen_age"] = 0.0
        return 0.0
    if c["queen"] == 0:
        if c["larvae"][0] + c["larvae"][1] > bio.emergency_larvae:
            c["queen"], c["queen_clock"] = 1.0, 4.0
        elif c["queen_clock"] > bio.workers_lay_after and mating > 0:
            c["queen"], c["queen_clock"] = 6.0, 0.0
        return 0.0
    if c["queen"] == 1:
        if c["queen_clock"] < 16:
            return 0.0
        c["queen"], c["queen_clock"], c["mating_flights"] = 2.0, 0.0, 0.0
        strong = c["swarmed"] > 0 and bees(c) > bio.cast_bees
        return bio.cast_share if strong and luck[QUEEN_LOST] < bio.cast_chance else 0.0
    if c["queen"] == 2:
        if c["queen_clock"] >= 6:
            c["mating_flights"] += mating
        if c["mating_flights"] >= bio.mating_days and c["queen_clock"] >= bio.lays_after:
            c["queen"] = 0.0 if luck[MATED] < bio.mating_loss else 3.0
            c["queen_clock"] = c["queen_age"] = 0.0
        elif c["queen_clock"] > 28:
            c["queen"] = 5.0 if luck[MATED] < bio.lays_unmated else 0.0
            c["queen_clock"] = 0.0
    return 0.0

"""Plain reference of one colony's warmth, room, brood and bees: slow and obvious.

A colony is a dictionary of plain numbers and lists; nothing here calls the compiled step.
"""

import math
from typing import Any

from combwright.simulation.biology import Biology

Colony = dict[str, Any]


def ramp(value: float, low: float, high: float) -> float:
    """0 at ``low`` and below, 1 at ``high`` and above, straight between."""
    if value <= low:
        return 0.0
    if value >= high:
        return 1.0
    return (value - low) / (high - low)


def mixed(low: float, high: float, share: float) -> float:
    """Mix two values, with this share of the second."""
    return (1 - share) * low + share * high


def bees(c: Colony) -> float:
    return float(c["nest"] + c["foragers"] + c["winter"])


def brood(c: Colony) -> float:
    return float(sum(c["eggs"]) + sum(c["larvae"]) + sum(c["sealed"]))


def winter_part(c: Colony) -> float:
    return c["winter"] / bees(c) if bees(c) > 0 else 0.0


def covered_frames(c: Colony, night_c: float, bio: Biology) -> float:
    cold = 1 - ramp(night_c, bio.contract_full_c, bio.contract_none_c)
    covered = bees(c) / c["bees_per_frame"] * (1 - (1 - bio.contract) * cold)
    return float(min(covered, c["frames"]))


def rest_sugar(rearing: float, mean_c: float, bio: Biology) -> float:
    """Sugar of a bee at rest: tight cluster, loose cluster, brood nest. [g/day]."""
    mild = ramp(mean_c, bio.tight_c, bio.loose_c)
    cluster = (1 - mild) * bio.basal_cluster + mild * bio.basal_loose
    cool = 1 - ramp(mean_c, bio.warm_in_cold_c, bio.warm_all_c)
    on_brood = rearing * (1 - cool * (1 - bio.warm_in_cold))
    return (1 - on_brood) * cluster + on_brood * bio.basal_nest


def warmth(c: Colony, mean_c: float, night_c: float, bio: Biology) -> dict[str, float]:
    n, rearing = bees(c), brood(c) / (brood(c) + bio.core_half)
    covered = covered_frames(c, night_c, bio)
    tight = 1 + (bio.mantle_loose - 1) * ramp(mean_c, bio.tight_c, bio.loose_c)
    mantle_factor = (1 - rearing) * tight + rearing * bio.mantle_brood
    empty = max(0.0, c["frames"] - covered)
    beside = empty / (empty + bio.empty_half)
    mantle_factor *= 1 + bio.draught * rearing * beside
    core_c = (1 - rearing) * bio.cluster_c + rearing * bio.nest_c
    mantle = bio.mantle_w_per_k * (n * bio.bee_g + 1) ** bio.mantle_exponent * mantle_factor
    walls = c["heat_loss"] * (c["loss_base"] + c["loss_per_frame"] * covered)
    in_series = 1 / (1 / mantle + 1 / walls)
    heat_w = in_series * max(0.0, core_c - mean_c)
    at_rest_w = n * rest_sugar(rearing, mean_c, bio) * bio.sugar_j_per_g / 86400
    extra_w = min(max(0.0, heat_w - at_rest_w), n * bio.heat_most)
    curtain = bio.edge_frames * (1 - ramp(night_c, bio.edge_full_c, bio.edge_none_c))
    open_sides = 2 * beside
    night_w = in_series * max(0.0, bio.nest_c - night_c)
    enough = min(1.0, (at_rest_w + n * bio.heat_most) / max(night_w, 1e-9))
    return {
        "frames": max(bio.warm_least * covered, covered - curtain * open_sides) * enough,
        "heat_w": heat_w,
        "sugar": extra_w * 86400 / bio.sugar_j_per_g,
        "tied": extra_w / bio.heater_w + curtain * open_sides * c["bees_per_frame"],
    }


def food_cells(sugar: float, water: float, bio: Biology) -> float:
    """Cells of food that is not ripe: its volume over what is put into a cell."""
    return (sugar / bio.sugar_kg_per_l + water) / (bio.cell_ml * bio.unripe_fill)


def free_above(c: Colony) -> float:
    return float(max(0.0, c["super_drawn"] - c["super_ripe"] / c["sugar_per_cell"]))


def part_above(c: Colony, night_c: float, bio: Biology) -> float:
    """Share of the unripe food that is carried up."""
    if c["supers"] < 1:
        return 0.0
    stored = c["ripe"] / c["sugar_per_cell"] / max(c["drawn"], 1.0)
    arch = mixed(bio.above_without_arch, 1, ramp(stored, bio.arch_begun, bio.arch_done))
    covered = covered_frames(c, night_c, bio) / max(c["frames"], 1.0)
    up = ramp(covered, bio.climb_from, bio.climb_full)
    fits = min(1.0, free_above(c) / max(food_cells(c["unripe"], c["water"], bio), 1.0))
    return bio.above_most * up * arch * fits


def drone_comb(c: Colony, bio: Biology) -> float:
    return bio.drone_cell * float(sum(c["drone_open"]) + sum(c["drone_sealed"]))


def food_below(c: Colony, above: float, bio: Biology) -> tuple[float, float]:
    thin = food_cells(c["unripe"], c["water"], bio) * (1 - above)
    return c["ripe"] / c["sugar_per_cell"] + c["pollen"] / bio.pollen_per_cell + thin, thin


def room(c: Colony, warm_frames: float, above: float, bio: Biology) -> tuple[float, float]:
    """Cells for eggs, and all free cells."""
    taken = brood(c) + drone_comb(c, bio)
    food, thin = food_below(c, above, bio)
    warm = min(c["drawn"], warm_frames * c["cells_per_frame"] * bio.nest_share)
    food_in_nest = max(food - (c["drawn"] - warm), bio.unripe_near * thin)
    below, overhead = c["drawn"] - taken - food, 0.0
    if c["supers"] > 0:
        overhead = free_above(c) - food_cells(c["unripe"], c["water"], bio) * above
    for_eggs = min(max(0.0, below), max(0.0, warm - taken - food_in_nest))
    for_eggs = max(for_eggs, bio.nest_cleared * warm - taken)
    anywhere = max(0.0, below) + max(0.0, overhead)
    return for_eggs, min(anywhere, max(0.0, below + overhead))


def season(day: float, bio: Biology) -> float:
    early = 1 - 1 / (1 + bio.season_rise * math.exp(-2 * day / bio.season_rise_days))
    after = day - bio.season_fall_day - bio.autumn_shift
    late = 1 / (1 + bio.season_fall * math.exp(-2 * after / bio.season_fall_days))
    return 1 - max(early, late)


def eggs_wanted(c: Colony, day: float, tied: float, bio: Biology) -> float:
    if c["queen"] not in (3, 5, 6):
        return 0.0
    nurses = max(0.0, c["nest"] + bio.winter_nurse * c["winter"] - tied)
    food = c["ripe"] + c["unripe"] + c["super_ripe"]
    fed = food**2 / (food**2 + bio.food_half**2)
    paid = min(1.0, c["intake"] / max(c["used"], 1.0))
    lift = 1 - bio.income_lift * (1 - paid)
    bare = bio.without_pollen + bio.without_pollen_winter * winter_part(c)
    pollen = bare + (1 - bare) * c["pollen"] / (c["pollen"] + bio.pollen_half)
    years = c["queen_age"] / 365
    grown = min(1.0, (c["queen_age"] + bio.queen_begins_ahead) / bio.queen_begins_days)
    vigour = grown * (1 - bio.queen_fade * max(0.0, years - 1))
    best = bio.lay_peak * season(day, bio) * c["queen_potential"] * max(0.0, vigour)
    fit = best * fed * lift * pollen * nurses / (nurses + bio.bees_half)
    could_nurse = bio.larvae_per_nurse * c["rearing"] * nurses / 6
    slim = bio.slimming if c["swarm_clock"] >= bio.slims_from else 1.0
    drones_only = {3.0: 1.0, 5.0: bio.dry_lays, 6.0: bio.workers_lay}[float(c["queen"])]
    return float(min(fit, could_nurse) * slim * (1 - c["lay_brake"]) * drones_only)


def eggs_found_room(wanted: float, cells: float, bio: Biology) -> float:
    if wanted <= 0:
        return 0.0
    return min(cells, wanted * (1 - math.exp(-cells / bio.search / wanted)))


def drone_eggs(c: Colony, eggs: float, day: float, bio: Biology) -> float:
    if c["queen"] > 4:
        return eggs / bio.drone_cell
    over = ramp(day, bio.drone_less, bio.drone_until)
    when = ramp(day, bio.drone_from, bio.drone_high) * (1 - over)
    strong = ramp(c["nest"] + c["foragers"], bio.drone_bees_from, bio.drone_bees_full)
    return eggs * bio.drone_share * when * strong


def age_brood(c: Colony, eggs: float, chill: float, hunger: float, bio: Biology) -> float:
    """Shift every day's brood on by a day, less its deaths; gives the bees that emerge."""

    def lives(rate: float) -> float:
        return float((1 - min(1.0, rate * c["brood_mortality"])) * (1 - chill))

    egg, larva, pupa = lives(bio.egg_death), lives(bio.larva_death), lives(bio.sealed_death)
    larva *= 1 - hunger
    hatched, capped = c["eggs"][-1] * egg, c["larvae"][-1] * larva
    emerged = float(c["sealed"][-1] * pupa)
    c["eggs"] = [eggs, *(x * egg for x in c["eggs"][:-1])]
    c["larvae"] = [hatched, *(x * larva for x in c["larvae"][:-1])]
    c["sealed"] = [capped, *(x * pupa for x in c["sealed"][:-1])]
    return emerged


def age_drones(c: Colony, eggs: float, day: float, bio: Biology) -> float:
    """Drones pass through a chain of spells; gives the cells sealed today."""
    grow, mature = 3 / 9.5, 5 / 14.5
    open_out = [x * grow for x in c["drone_open"]]
    sealed_out = [x * mature for x in c["drone_sealed"]]
    c["drone_open"] = [
        x + gain - loss
        for x, gain, loss in zip(c["drone_open"], [eggs, *open_out], open_out, strict=False)
    ]
    c["drone_sealed"] = [
        x + gain - loss
        for x, gain, loss in zip(
            c["drone_sealed"], [open_out[-1], *sealed_out], sealed_out, strict=False
        )
    ]
    unwanted = ramp(day, bio.drones_out_from, bio.drones_out_full)
    evicted = bio.drones_out * unwanted if c["queen"] == 3 else 0.0
    c["drones"] = (c["drones"] + sealed_out[-1]) * (1 - bio.drone_death - evicted)
    return float(open_out[-1])


def larvae_a_nurse(c: Colony, bio: Biology) -> float:
    larvae = sum(c["larvae"]) + bio.drone_larva_pollen * sum(c["drone_open"])
    return float(larvae / max(c["nest"] + c["winter"], 1.0))


def long_lived(load: float, bio: Biology) -> float:
    return float(1 / (1 + (load / bio.long_lived_load) ** bio.long_lived_steepness))


def new_foragers(c: Colony, hours: float, bio: Biology) -> float:
    workers = c["nest"] + c["foragers"]
    if workers <= 0:
        return 0.0
    food = c["ripe"] + c["unripe"] + c["super_ripe"]
    hunger = bio.food_half**2 / (bio.food_half**2 + food**2)
    rate = bio.recruit + bio.recruit_hunger * hunger - bio.inhibit * c["foragers"] / workers
    if rate < 0:
        return float(-min(-rate * c["nest"], bio.turn_back_most * c["foragers"]))
    return float(
        rate * c["nest"] * mixed(bio.recruit_indoors, 1, ramp(hours, 0, bio.recruit_hours))
    )


def ageing_winter_bees(c: Colony, load: float, bio: Biology) -> float:
    return float(c["winter"] * bio.winter_ageing * load / (load + bio.winter_ageing_load))


def daily_survival(
    c: Colony, hours: float, heat_sugar: float, bio: Biology
) -> tuple[float, float, float]:
    work = mixed(bio.nest_death_idle, 1, brood(c) / (brood(c) + bio.nest_death_half))
    hurt_nest = 1 + (bio.hurt_death - 1) * c["hurt_nest"]
    hurt_winter = 1 + (bio.hurt_death - 1) * c["hurt_winter"]
    nest = bio.nest_death * work * hurt_nest
    out = 1 / (1 / hours + 1 / bio.hours_out) if hours > 0 else 0.0
    flying = bio.forager_death * c["forager_mortality"] * out
    idle = bio.forager_death_home * (1 - ramp(hours, 0, bio.home_hours))
    foragers = (flying + idle) * hurt_nest
    worn = 1 + bio.heat_wear * heat_sugar / max(bees(c), 1.0) / bio.basal_cluster
    winter = bio.winter_death * c["forager_mortality"] * worn * hurt_winter**2
    starved, starved_outside = bio.hunger_nest * c["starving"], bio.hunger_foragers * c["starving"]
    return (
        math.exp(-nest) * (1 - starved),
        math.exp(-foragers) * (1 - starved_outside),
        math.exp(-winter) * (1 - starved),
    )


def change_roles(
    c: Colony,
    emerging: float,
    to_winter: float,
    hurt: float,
    *,
    turned: float,
    aged: float,
    rested: float,
    bio: Biology,
) -> None:
    """Bees emerge, forage, rest and age; the hurt among them are counted and carried along."""
    turned, aged = min(turned, c["nest"]), min(aged, c["winter"])
    leave_nest = max(turned, 0.0)
    rested = min(rested, c["nest"] - leave_nest)
    born_winter, born_nest = emerging * to_winter, emerging * (1 - to_winter)
    back_to_nest = (1 - bio.winter_aged_forage) * aged
    hurt_in_nest = (c["nest"] - leave_nest - rested) * c["hurt_nest"]
    hurt_in_nest += born_nest * hurt + back_to_nest * c["hurt_winter"]
    hurt_in_winter = (c["winter"] - aged) * c["hurt_winter"] + born_winter * hurt
    hurt_in_winter += rested * c["hurt_nest"]
    c["nest"] += born_nest - turned + back_to_nest - rested
    c["foragers"] += turned + bio.winter_aged_forage * aged
    c["winter"] += born_winter - aged + rested
    for part, count in (("nest", hurt_in_nest), ("winter", hurt_in_winter)):
        c[f"hurt_{part}"] = min(1.0, max(0.0, count / c[part])) if c[part] > 0 else 0.0

"""Plain reference of a whole day, and of records turned into plain numbers and back."""

import math
from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray
from tests.simulation.reference import food, health, nest

from combwright.simulation.biology import Biology
from combwright.simulation.columns import COLUMNS, STATE
from combwright.simulation.luck import FORAGED, LAID, MITES_CARRIED, MITES_INVADE, ROBBED

Colony = dict[str, Any]


def plain(record: np.void) -> Colony:
    """Turn one record into plain numbers."""
    return {c.name: record[c.name].tolist() for c in COLUMNS}


def record(colony: Colony) -> NDArray[np.void]:
    """Turn plain numbers into an array of one record."""
    made = np.zeros(1, dtype=STATE)
    for name, value in colony.items():
        made[name] = value
    return made


def die(c: Colony) -> None:
    for column in COLUMNS:
        if column.width > 1:
            c[column.name] = [0.0] * column.width
    gone = "nest foragers winter drones mites queen laid wanted room intake gathered used fallen"
    for name in (*gone.split(), "warm_frames", "heat_w", "tied", "unmet", "starving"):
        c[name] = 0.0


def one_day(c: Colony, weather: Sequence[float], luck: Sequence[float], bio: Biology) -> None:  # noqa: PLR0915 (the order of a day)
    """Let one colony live one day, in place."""
    hours, mean_c, max_c, night_c, nectar, pollen, mating, day = weather
    if nest.bees(c) < 1:
        die(c)
        return
    warm = nest.warmth(c, mean_c, night_c, bio)
    above = nest.part_above(c, night_c, bio)
    cells, free = nest.room(c, warm["frames"], above, bio)
    wanted = nest.eggs_wanted(c, day, warm["tied"], bio)
    eggs = nest.eggs_found_room(wanted, cells, bio)
    for_drones = nest.drone_eggs(c, eggs, day, bio)
    brood = nest.brood(c)
    warm_cells = bio.keepable * warm["frames"] * c["cells_per_frame"]
    chill = bio.chill_death * (max(0.0, 1 - warm_cells / brood) if brood > 0 else 0.0)
    hunger = bio.hunger_brood * c["unmet"]
    turned = nest.new_foragers(c, hours, bio)
    load = nest.larvae_a_nurse(c, bio)
    aged = nest.ageing_winter_bees(c, load, bio)
    to_winter = nest.long_lived(load, bio)
    rested = bio.resting * to_winter * c["nest"]
    alive = nest.daily_survival(c, hours, warm["sugar"], bio)
    laid = max(
        0.0, min(eggs * food.lucky(bio.lay_luck, luck[LAID]), cells) - bio.drone_cell * for_drones
    )
    laid = laid if c["queen"] == 3 else 0.0
    free -= max(laid + bio.drone_cell * for_drones, bio.kept_for_eggs * cells)
    sugar_in, water_in, pollen_in = food.gathered(
        c, hours, (nectar, pollen), luck[FORAGED], free, bio=bio
    )
    free -= nest.food_cells(sugar_in, water_in, bio)
    pollen_in = min(pollen_in, max(0.0, free) * bio.pollen_per_cell)
    free -= pollen_in / bio.pollen_per_cell
    fed, fed_water = food.from_feeder(c, mean_c, max_c, sugar_in, free=free, bio=bio)
    needed = food.need(c, hours, mean_c, warm["sugar"], bio)
    pollen_used = min(c["pollen"], food.pollen_need(c, bio))
    below, overhead = food.comb_wanted(c, warm["frames"], bio)
    sealed_today, last_sealed = c["larvae"][5], c["sealed"][11]
    hurt = health.hurt_share(c["mites_worker"][11], last_sealed)

    emerging = nest.age_brood(c, laid, chill, hunger, bio)
    drones_sealed = nest.age_drones(c, for_drones, day, bio)
    whole = emerging * (1 - bio.crippled * hurt)
    nest.change_roles(c, whole, to_winter, hurt, turned=turned, aged=aged, rested=rested, bio=bio)
    bare = bio.bare_sugar * nest.bees(c)
    for part, share in zip(("nest", "foragers", "winter"), alive, strict=True):
        c[part] *= share

    held = c["unripe"] + sugar_in + fed
    c["syrup_share"] = (c["unripe"] * c["syrup_share"] + fed) / held if held > 0 else 0.0
    c["unripe"] += sugar_in + fed
    c["water"] += water_in + fed_water
    c["feeder"] -= fed
    c["feeder_water"] -= fed_water
    c["feeder_warmth"] *= bio.feed_cools
    c["feeder_days"] = c["feeder_days"] + 1 if c["feeder"] > 1 else 0.0
    if food.turns_sour(c, max_c, bio):
        c["sour_days"] += 1
    c["pollen"] += pollen_in - pollen_used
    covered = nest.covered_frames(c, night_c, bio)
    c["far"] = food.far_stores(c, mean_c, max_c, covered, bio=bio)
    eaten = food.eat(c, needed)
    wax = food.eat(c, (below + overhead) * bio.wax_sugar)
    paid = min(1.0, wax / bio.wax_sugar / (below + overhead)) if below + overhead > 0 else 0.0
    food.ripen(c, mean_c, above, bio)
    food.rob(c, day, luck[ROBBED], bio)
    c["drawn"] += below * paid
    c["foundation"] -= below * paid
    c["super_drawn"] += overhead * paid
    c["super_foundation"] -= overhead * paid

    c["kill_pace"] = math.exp(c["kill_per_k"] * (mean_c - bio.kill_at_c))
    come = health.arriving(c, day, luck[MITES_CARRIED], bio)
    fallen = health.age_mites(
        c, sealed_today, drones_sealed, come, luck=luck[MITES_INVADE], bio=bio
    )
    if c["treated_days"] > 0:
        c["treated_days"] = max(0.0, c["treated_days"] - 1)
        if c["treated_days"] <= 0:
            c["kill_bees"] = c["kill_cells"] = c["kill_per_k"] = c["lay_brake"] = 0.0
    gone = health.swarming(c, day, hours, above, luck=luck, bio=bio)
    if gone == 0:
        gone = health.queen_day(c, mating, luck, bio)
    if gone > 0:
        health.leave(c, gone, bio)

    c["wanted"], c["laid"], c["room"] = wanted, laid + for_drones, cells
    c["warm_frames"], c["heat_w"], c["tied"] = warm["frames"], warm["heat_w"], warm["tied"]
    short = c["queen"] == 3 and wanted > bio.wanted_least and cells < bio.short_of_room * wanted
    c["short_of_room_days"] = c["short_of_room_days"] + 1 if short else 0.0
    c["short_of_room_most"] = max(c["short_of_room_most"], c["short_of_room_days"])
    c["intake"], c["gathered"], c["used"] = sugar_in + fed, sugar_in, eaten + wax
    unmet = max(0.0, 1 - eaten / needed) if needed > 0 else 0.0
    c["unmet"] = unmet if unmet > 1e-6 else 0.0
    bare = min(bare, needed)
    c["starving"] = 1 - eaten / bare if eaten < bare * (1 - 1e-6) else 0.0
    c["hungry_days"] += c["unmet"] > bio.hungry_from
    c["starved"] = c["starving"] + bio.hunger_remembered * c["starved"]
    if c["lost_to"] == 0 and nest.bees(c) < bio.lost_bees:
        c["lost_to"] = health.cause(c, bio)
    c["chilled"] += chill * brood
    c["taken_down"] += fed + fed_water
    c["gathered_total"] += sugar_in
    c["laid_total"] += laid
    c["pollen_total"] += pollen_used
    c["used_total"] += eaten + wax
    c["fallen"] = fallen
    c["fallen_total"] += fallen

"""Plain reference of what comes in, what is used and how it ripens."""

import math
from typing import Any

from tests.simulation.reference.nest import bees, brood, mixed, ramp, rest_sugar, winter_part

from combwright.simulation.biology import Biology

Colony = dict[str, Any]


def lucky(sd: float, luck: float) -> float:
    """Give a factor of mean 1 whose logarithm has this standard deviation."""
    return math.exp(sd * luck - sd * sd / 2)


def gathered(
    c: Colony, hours: float, index: tuple[float, float], luck: float, free: float, *, bio: Biology
) -> tuple[float, float, float]:
    """Sugar, its water, and pollen, by the indices of both."""
    nectar, pollen = index
    flown = c["foragers"] * hours * c["forage_success"]
    lack = bio.pollen_enough / (bio.pollen_enough + bio.pollen_lack * c["pollen"])
    share = min(1.0, bio.pollen_foragers * (bio.pollen_least + bio.pollen_most * lack**2))
    yielded = nectar * (1 + bio.nectar_half) / (nectar + bio.nectar_half)
    sugar = flown * (1 - share) * bio.nectar_per_hour * yielded * lucky(bio.daily_luck, luck)
    water_each = (1 - bio.nectar_sugar) / bio.nectar_sugar
    place = max(0.0, free) * bio.cell_ml * bio.unripe_fill / (1 / bio.sugar_kg_per_l + water_each)
    sugar = min(sugar, place)
    return sugar, sugar * water_each, flown * share * bio.pollen_per_hour * pollen


def from_feeder(
    c: Colony, mean_c: float, max_c: float, nectar: float, *, free: float, bio: Biology
) -> tuple[float, float]:
    mass = c["feeder"] + c["feeder_water"]
    if mass <= 0:
        return 0.0, 0.0
    if c["feeder"] / mass >= bio.fondant_from:
        taken = bio.fondant_rate * bees(c)
    else:
        beside_c = (mean_c + max_c + c["feeder_warmth"]) / 2
        rate = bio.take_down * bees(c) * ramp(beside_c, bio.take_cold, bio.take_warm)
        volume = (c["feeder"] / bio.sugar_kg_per_l + c["feeder_water"]) / mass
        place = max(0.0, free * bio.cell_ml * bio.unripe_fill / volume)
        taken = min(rate / (1 + nectar / bio.nectar_before_syrup), place)
    taken = min(taken, mass)
    return c["feeder"] * taken / mass, c["feeder_water"] * taken / mass


def need(c: Colony, hours: float, mean_c: float, heating: float, bio: Biology) -> float:
    rearing = brood(c) / (brood(c) + bio.core_half)
    living = bees(c) * rest_sugar(rearing, mean_c, bio) + c["drones"] * bio.drone_sugar
    larvae = (sum(c["larvae"]) + sum(c["drone_open"])) * (bio.larva_sugar + bio.nurse_sugar) / 6
    flying = c["foragers"] * hours * bio.flight_sugar
    return float(c["consumption"] * (living + larvae + heating + flying))


def pollen_need(c: Colony, bio: Biology) -> float:
    larvae = sum(c["larvae"]) + bio.drone_larva_pollen * sum(c["drone_open"])
    return float(larvae * bio.larva_pollen / 6 * (1 - bio.winter_pollen_saved * winter_part(c)))


def comb_wanted(c: Colony, warm_frames: float, bio: Biology) -> tuple[float, float]:
    surplus = ramp(c["intake"] - c["used"], bio.draw_from, bio.draw_full)
    warm = warm_frames * c["cells_per_frame"] / max(c["drawn"], 1.0)
    crowded = ramp(warm, bio.draw_crowded_from, bio.draw_crowded_full)
    most = bio.draw_rate * c["nest"] * surplus * crowded
    most = min(most, bio.draw_spends * c["unripe"] / bio.wax_sugar)
    below = min(c["foundation"], most)
    above = min(c["super_foundation"], most - below) if c["supers"] >= 1 else 0.0
    return below, above


def far_stores(c: Colony, mean_c: float, max_c: float, covered: float, *, bio: Biology) -> float:
    """Ripe stores out of reach: as before in the cold, beyond the next combs on mild days."""
    if max_c < bio.move_c:
        return float(min(c["far"], c["ripe"]))
    beyond = max(0.0, 1 - (covered + bio.reach_frames) / max(c["frames"], 1.0))
    return float(beyond * (1 - ramp(mean_c, bio.reach_tight_c, bio.reach_loose_c)) * c["ripe"])


def eat(c: Colony, wanted: float) -> float:
    """Unripe first, then ripe, then what is above; gives what could be eaten."""
    thin = min(c["unripe"], wanted)
    if c["unripe"] > 0:
        c["water"] *= 1 - thin / c["unripe"]
    ripe = min(max(0.0, c["ripe"] - c["far"]), wanted - thin)
    above = min(c["super_ripe"], wanted - thin - ripe)
    if c["super_ripe"] > 0:
        c["super_syrup"] *= 1 - above / c["super_ripe"]
    c["unripe"] -= thin
    c["ripe"] -= ripe
    c["super_ripe"] -= above
    return float(thin + ripe + above)


def ripen(c: Colony, mean_c: float, above: float, bio: Biology) -> None:
    if c["unripe"] <= 0:
        return
    excess = c["water"] - bio.ripe_water * c["unripe"]
    air = mixed(bio.dry_cold, 1, ramp(mean_c, bio.dry_cold_c, bio.dry_warm_c))
    wide = ramp(c["tray_open"] + c["entrance"], bio.dry_closed_mm, bio.dry_open_mm)
    openings = mixed(bio.dry_closed, 1, wide)
    can = bio.evaporate * bees(c) * air * openings
    share = bio.ripen_most if excess <= can / bio.ripen_most else can / excess
    if excess <= 0:
        share = min(bio.ripen_most, 1.0)
    done = share * c["unripe"]
    c["super_syrup"] += done * above * c["syrup_share"]
    c["super_ripe"] += done * above
    c["ripe"] += done * (1 - above)
    c["unripe"] -= done
    c["water"] *= 1 - share


def rob(c: Colony, day: float, luck: float, bio: Biology) -> None:
    if bio.rob_from <= day <= bio.rob_until and bees(c) <= bio.rob_strong:
        weak = 1 - bees(c) / bio.rob_strong
        if luck < bio.rob_hazard * min(1.0, c["entrance"] / bio.rob_entrance) * weak:
            c["ripe"] *= 1 - bio.rob_share
            c["robbed"] += 1


def turns_sour(c: Colony, max_c: float, bio: Biology) -> bool:
    """Feed that stands too long for its strength: thin for days, stronger for weeks."""
    if c["feeder"] <= bio.sour_least or max_c <= bio.sour_above_c:
        return False
    sugar = c["feeder"] / (c["feeder"] + c["feeder_water"])
    keeps = (
        bio.sour_after if sugar < bio.keeps_weeks_from
        else bio.sour_after_weeks if sugar < bio.keeps_months_from
        else math.inf
    )  # fmt: skip
    return bool(c["feeder_days"] > keeps)

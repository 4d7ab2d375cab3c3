"""One day in the life of many simulated colonies: the order of processes, written once.

weather and forage -> room and warmth -> laying -> brood ages and survives or not -> emergence ->
recruitment to foraging -> deaths -> intake of nectar and pollen -> take-down of feed ->
consumption -> ripening and cell use -> comb drawing -> mites -> swarm and queen -> what is seen.

What is laid, dies, changes role, comes in, is needed and could be drawn is worked out from the
state as it was in the morning; then it is applied. What follows reads the colony as it has become:
bees eat of what came in today, those alive by evening ripen it, and robbers, mites, swarm and queen
meet what is then left. The balances of bees, sugar, water, comb, mites and brood are checked at the
end of every day; a broken one is reported to the caller, which stops the run.
"""

from typing import Any

import numpy as np

from combwright.simulation.columns import LAYING
from combwright.simulation.step.adults import (
    ageing_winter_bees,
    long_lived_share,
    nursing_load,
    recruitment,
    resting,
    survival,
)
from combwright.simulation.step.balances import BEES, BROOD, broken_balance, mites_of, totals
from combwright.simulation.step.compiled import compiled, inlined
from combwright.simulation.step.feeding import income, take_down, turns_sour
from combwright.simulation.step.mite_day import age_mites, arriving_mites, hurt_share
from combwright.simulation.step.queen_day import leave, queen_day, swarming
from combwright.simulation.step.rearing import (
    age_brood,
    age_drones,
    brood_risk,
    drone_eggs,
    laid,
    wanted,
)
from combwright.simulation.step.remembered import cause_of_loss, lie_dead, note, seen_today
from combwright.simulation.step.roles import mix_adults
from combwright.simulation.step.room import cells_for, room, share_above
from combwright.simulation.step.stores import drawing, eat, need, out_of_reach, pollen_need, ripen
from combwright.simulation.step.today import dawn
from combwright.simulation.step.warmth import adults_of, warmth

DROP_G = 1.0  # sugar in the feeder from which it counts as standing there
ROUNDING = 1e-6  # of a need: a smaller part of it unmet is none


@compiled
def one_day(s: Any, today: Any, before: Any, bio: Any) -> Any:  # noqa: PLR0915 (the order of a day)
    """Let one colony live one day, in place.

    ``before`` is what it holds in the morning, from ``totals``. Gives 0, or the number of the
    broken balance, and what it holds in the evening.
    """
    if before[BEES] < 1.0:
        return lie_dead(s), before

    # from the state as it was in the morning
    brood = before[BROOD]
    warm, heat_w, heat_sugar, tied = warmth(s, brood, today, bio)
    above = share_above(s, today, bio)
    room_cells, free = room(s, brood, warm, above, bio)
    eggs_wanted = wanted(s, today.season, tied, s.intake, bio)
    eggs = laid(eggs_wanted, room_cells, bio)
    drone_laid = drone_eggs(s, eggs, today.drones_wanted, bio)
    chill, hunger = brood_risk(s, brood, warm, bio)
    turned = recruitment(s, today.turning, bio)
    load = nursing_load(s, bio)
    aged = ageing_winter_bees(s, load, bio)
    to_winter = long_lived_share(load, bio)
    rested = resting(s, to_winter, bio)
    live_nest, live_foragers, live_winter = survival(s, brood, today, heat_sugar, bio)
    worker_laid = max(0.0, min(eggs * today.laid, room_cells) - bio.drone_cell * drone_laid)
    worker_laid *= s.queen == LAYING
    free -= max(worker_laid + bio.drone_cell * drone_laid, bio.kept_for_eggs * room_cells)
    sugar_in, water_in, pollen_in = income(s, today, free, bio)
    free -= cells_for(sugar_in, water_in, bio)
    pollen_in = min(pollen_in, max(0.0, free) * bio.pollen_per_cell)
    free -= pollen_in / bio.pollen_per_cell
    fed_sugar, fed_water = take_down(s, today.mean_c, today.max_c, sugar_in, free, bio)
    sugar_need = need(s, brood, today, heat_sugar, bio)
    pollen_used = min(s.pollen, pollen_need(s, bio))
    below, overhead = drawing(s, warm, bio)
    worker_sealed = s.larvae[5]
    last_sealed, last_mothers = s.sealed[11], s.mites_worker[11]

    # brood and drones
    emerging = age_brood(s, worker_laid, chill, hunger, bio)
    drone_sealed = age_drones(s, drone_laid, today.drones_thrown_out, bio)

    # adults
    hurt_now = hurt_share(last_mothers, last_sealed)
    crippled = bio.crippled * hurt_now * emerging
    mix_adults(s, emerging - crippled, to_winter, hurt_now, turned, aged, rested, bio)
    bees_mid = adults_of(s)
    s.nest *= live_nest
    s.foragers *= live_foragers
    s.winter *= live_winter
    dead = bees_mid - adults_of(s)

    # food, from here on with the bees and the food of the evening
    s.syrup_share = blend(s.unripe, s.syrup_share, sugar_in, fed_sugar)
    s.unripe += sugar_in + fed_sugar
    s.water += water_in + fed_water
    s.feeder -= fed_sugar
    s.feeder_water -= fed_water
    s.feeder_warmth *= bio.feed_cools
    s.feeder_days = s.feeder_days + 1.0 if s.feeder > DROP_G else 0.0
    s.sour_days += turns_sour(s, today.max_c, bio)
    s.pollen += pollen_in - pollen_used
    s.far = out_of_reach(s, today, bio)
    eaten, water_eaten = eat(s, sugar_need)
    wax, water_wax = eat(s, (below + overhead) * bio.wax_sugar)
    paid = wax / bio.wax_sugar / (below + overhead) if below + overhead > 0.0 else 0.0
    below, overhead = below * min(1.0, paid), overhead * min(1.0, paid)
    driven_off = ripen(s, today.drying, above, bio)
    robbed = rob(s, today.day, today.robbed, bio)
    s.drawn += below
    s.foundation -= below
    s.super_drawn += overhead
    s.super_foundation -= overhead

    # mites
    by_warmth = s.kill_per_k * (today.mean_c - bio.kill_at_c)
    s.kill_pace = np.exp(by_warmth) if by_warmth != 0.0 else 1.0
    arriving = arriving_mites(s, today)
    born, died, fallen = age_mites(
        s, worker_sealed, drone_sealed, arriving, today.mites_invade, bio
    )
    if s.treated_days > 0.0:
        s.treated_days = max(0.0, s.treated_days - 1.0)
        if s.treated_days <= 0.0:
            s.kill_bees = s.kill_cells = s.kill_per_k = s.lay_brake = 0.0

    # swarm and queen
    gone, carried, mites_gone = 0.0, 0.0, 0.0
    share = swarming(s, today, above, bio)
    if share == 0.0:
        share = queen_day(s, today, bio)
    if share > 0.0:
        mites_staying = mites_of(s)
        gone, carried = leave(s, share, bio)
        mites_gone = mites_staying - mites_of(s)

    # what is seen and remembered
    note(s, eggs_wanted, worker_laid + drone_laid, room_cells, warm, heat_w, tied, bio)
    s.intake = sugar_in + fed_sugar
    s.gathered = sugar_in
    s.used = eaten + wax
    s.unmet = max(0.0, 1.0 - eaten / sugar_need) if sugar_need > 0.0 else 0.0
    s.unmet *= s.unmet > ROUNDING
    bare = min(bio.bare_sugar * bees_mid, sugar_need)
    s.starving = 1.0 - eaten / bare if eaten < bare * (1.0 - ROUNDING) else 0.0
    s.hungry_days += s.unmet > bio.hungry_from
    s.starved = s.starving + bio.hunger_remembered * s.starved
    if s.lost_to == 0.0 and adults_of(s) < bio.lost_bees:
        s.lost_to = cause_of_loss(s, bio)
    s.chilled += chill * brood
    s.taken_down += fed_sugar + fed_water
    s.gathered_total += sugar_in
    s.laid_total += worker_laid
    s.pollen_total += pollen_used
    s.used_total += eaten + wax
    s.fallen = fallen
    s.fallen_total += fallen

    after = totals(s)
    broken = broken_balance(
        before,
        after,
        bees=emerging - crippled - dead - gone,
        sugar=sugar_in - eaten - wax - robbed - carried,
        water_at_most=water_in - water_eaten - water_wax - driven_off,
        mites=born + arriving - died - mites_gone,
        brood_at_most=worker_laid - emerging,
    )
    return broken, after


@inlined
def blend(held: float, share: float, nectar: float, fed: float) -> float:
    """Share of fed sugar in the unripe food after today's income."""
    total = held + nectar + fed
    return (held * share + fed) / total if total > 0.0 else 0.0


@inlined
def rob(s: Any, day_of_year: float, luck: float, bio: Any) -> float:
    """Let robbers take stores in place from a weak colony with a wide entrance in autumn."""
    weak = 1.0 - adults_of(s) / bio.rob_strong
    if day_of_year < bio.rob_from or day_of_year > bio.rob_until or weak < 0.0:
        return 0.0
    hazard = bio.rob_hazard * min(1.0, s.entrance / bio.rob_entrance) * weak
    if luck >= hazard:
        return 0.0
    taken = bio.rob_share * s.ripe
    s.ripe -= taken
    s.robbed += 1.0
    return taken


@compiled
def live(
    colonies: Any, weather: Any, luck: Any, seasons: Any, bio: Any, days: Any, trace: Any
) -> int:
    """Let every colony live through the days of its scenario, in place.

    Lane ``i`` lives in scenario ``i % scenarios`` of the weather, [scenario, day, column], and has
    the luck of ``i % members``, [member, day, process]; ``bio`` is [world], and a colony lives in
    the world that its column names, or in the first where that is not among them. ``seasons`` is
    what a season lets a queen do, [world, day]; ``days`` is room for the days of one member, and
    ``trace`` for the quantities ``TRACED``, [day, lane, quantity]; it may have no days. Gives 0, or
    the number of a broken balance plus 10 times the lane.
    """
    lanes, scenarios, members = colonies.shape[0], weather.shape[0], luck.shape[0]
    apart = members if members % scenarios == 0 else lanes  # those so far apart share their days
    for first in range(min(apart, lanes)):
        known = -1
        for lane in range(first, lanes, apart):
            s = colonies[lane]
            world = int(s.world) if s.world < len(bio) else 0
            held = totals(s)
            for day in range(weather.shape[1]):
                if world != known:
                    dawn(
                        days[day],
                        weather[lane % scenarios, day],
                        luck[lane % members, day],
                        seasons[world, day],
                        bio[world],
                    )
                broken, held = one_day(s, days[day], held, bio[world])
                if broken != 0:
                    return broken + 10 * lane
                if trace.shape[0] > 0:
                    seen_today(s, trace[day, lane])
            known = world
    return 0

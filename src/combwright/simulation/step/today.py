"""What a day means to every colony that lives through it in one world: worked out once for all.

Candidates tried side by side differ in what was done to them, not in weather, luck or world.
"""

from typing import Any, Final

import numpy as np

from combwright.simulation.luck import (
    FORAGED,
    LAID,
    MATED,
    MITES_CARRIED,
    MITES_INVADE,
    QUEEN_LOST,
    ROBBED,
    SWARM_LEAVES,
    SWARM_STARTS,
)
from combwright.simulation.step.adults import hours_out, idle_death, turning
from combwright.simulation.step.compiled import compiled, inlined
from combwright.simulation.step.feeding import nectar_yield
from combwright.simulation.step.mite_day import mites_around
from combwright.simulation.step.rearing import drones_thrown_out, drones_wanted
from combwright.simulation.step.shapes import lucky
from combwright.simulation.step.stores import drying, held_tight
from combwright.simulation.step.warmth import (
    basal_clustered,
    drawn_together,
    edge_lost,
    loosened,
    on_brood,
)
from combwright.weather.conditions import (
    DAY,
    FLIGHT,
    MATING,
    MAX_C,
    MEAN_C,
    NECTAR,
    NIGHT_C,
    POLLEN,
)

TODAY: Final = np.dtype(
    [
        (name, np.float64)
        for name in (
            # the weather and the season
            *("day", "flight", "mean_c", "max_c", "night_c", "pollen", "mating", "season"),
            # what these do to any colony
            *("nectar_yield", "drawn_together", "loosened", "edge_lost", "held_tight", "drying"),
            *("basal_clustered", "on_brood", "turning", "hours_out", "idle_death"),
            *("drones_wanted", "drones_thrown_out", "mites_around"),
            # luck: factors of what is laid, gathered and carried, and what happens by chance
            *("laid", "foraged", "mites_invade", "mites_carried"),
            *("swarm_starts", "swarm_leaves", "queen_lost", "mated", "robbed"),
        )
    ]
)


@inlined
def dawn(today: Any, weather: Any, luck: Any, season: float, bio: Any) -> None:
    """Work out a day in place, for one member's luck and world."""
    day, flight, mean_c, night_c = weather[DAY], weather[FLIGHT], weather[MEAN_C], weather[NIGHT_C]
    today.day, today.flight, today.season = day, flight, season
    today.mean_c, today.max_c, today.night_c = mean_c, weather[MAX_C], night_c
    today.pollen, today.mating = weather[POLLEN], weather[MATING]
    today.nectar_yield = nectar_yield(weather[NECTAR], bio)
    today.drawn_together = drawn_together(night_c, bio)
    today.loosened = loosened(mean_c, bio)
    today.edge_lost = edge_lost(night_c, bio)
    today.held_tight = held_tight(mean_c, bio)
    today.drying = drying(mean_c, bio)
    today.basal_clustered = basal_clustered(mean_c, bio)
    today.on_brood = on_brood(mean_c, bio)
    today.turning = turning(flight, bio)
    today.hours_out = hours_out(flight, bio)
    today.idle_death = idle_death(flight, bio)
    today.drones_wanted = drones_wanted(day, bio)
    today.drones_thrown_out = drones_thrown_out(day, bio)
    today.mites_around = mites_around(day, bio)
    today.laid = lucky(bio.lay_luck, luck[LAID])
    today.foraged = lucky(bio.daily_luck, luck[FORAGED])
    today.mites_invade = lucky(bio.mite_luck, luck[MITES_INVADE])
    today.mites_carried = lucky(bio.invade_luck, luck[MITES_CARRIED])
    today.swarm_starts, today.swarm_leaves = luck[SWARM_STARTS], luck[SWARM_LEAVES]
    today.queen_lost, today.mated, today.robbed = luck[QUEEN_LOST], luck[MATED], luck[ROBBED]


@compiled
def days_of_members(
    days: Any, weather: Any, luck: Any, seasons: Any, world_of: Any, bio: Any
) -> None:
    """Work out in place the days of members that live in a world each, [member, day]."""
    for member in range(days.shape[0]):
        world = int(world_of[member]) if world_of[member] < len(bio) else 0
        for day in range(days.shape[1]):
            dawn(
                days[member, day],
                weather[member % weather.shape[0], day],
                luck[member % luck.shape[0], day],
                seasons[world, day],
                bio[world],
            )

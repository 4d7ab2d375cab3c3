"""How long bees live and what ends their days, in a summer colony in balance."""

from functools import cache
from typing import Any

import numpy as np

from combwright.evidence.simulated_colonies import MEMBERS, ON, SEED, colonies, even_days
from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.columns import LAYING
from combwright.simulation.luck import luck
from combwright.simulation.run import run

DAYS = 90


@cache
def in_balance() -> dict[str, float]:
    """Give the share that dies before foraging, and the mean life of a worker. [days]."""
    made: Any = colonies(24000.0, 20000.0)
    made["swarm_readiness"] = 0.0
    even = even_days(DAYS, day=170, mean_c=18.0, hours=7.0, nectar=0.4)
    even[0, :, 7] = 170.0  # the season stands still
    chance = luck(SEED, "trial", ON, DAYS, MEMBERS)
    for day in range(DAYS - 1):
        run(made, even[:, day : day + 1], chance[:, day : day + 1])
        made["ripe"], made["pollen"] = 8000.0, 800.0
    lays = made["queen"] == LAYING
    emerging = made["sealed"][lays, 11].copy()
    other = made.copy()
    last = slice(DAYS - 1, DAYS)
    run(made, even[:, last], chance[:, last])
    run(other, even[:, last], chance[:, last], worlds=(BIOLOGY._replace(nest_death=0.0),))
    bees = observe.adults(made)[lays]
    died_at_home = observe.adults(other)[lays] - bees
    return {
        "before_foraging": float(np.median(died_at_home / emerging)),
        "days": float(np.median(bees / emerging)),
    }

"""Mites of simulated colonies under even conditions: growth, fall, winter, re-invasion."""

import numpy as np
from scipy.special import wrightomega

from combwright.evidence.simulated_colonies import MEMBERS, ON, SEED, colonies, even_days, live
from combwright.science.mites.invasion import invasion_rate, trapped_share
from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.columns import CAGED
from combwright.simulation.hands import actions
from combwright.simulation.luck import luck
from combwright.simulation.run import run


def growth_rate(invasion: float, leaving: float, sealed_days: float, death: float) -> float:
    r"""Steady growth of mites under constant conditions, in closed form.

    The rate :math:`r` solves :math:`a R e^{-r S} = a + m + r`. With
    :math:`\omega` of :math:`z = \ln(S a R) + S (a + m)`, for which
    :math:`\omega + \ln \omega = z`, that is :math:`r = \omega / S - a - m`.

    Examples
    --------
    >>> round(growth_rate(0.2, 1.5, 12.0, 0.006), 4)
    0.0226

    """
    z = np.log(sealed_days * invasion * leaving) + sealed_days * (invasion + death)
    return float(np.real(wrightomega(z)) / sealed_days - invasion - death)


def steady_growth() -> dict[str, float]:
    """Growth in a steady brood nest against the closed form at the same invasion and losses."""
    made = colonies(24000.0, 21000.0)
    made["mites"], made["swarm_readiness"] = 30.0, 0.0
    days, seen = 80, []
    even = even_days(days, day=150, mean_c=17.0, hours=6.0, nectar=0.4)
    even[0, :, 7] = 150.0  # the season stands still
    chance = luck(SEED, "trial", ON, days, MEMBERS)
    biology = BIOLOGY._replace(drone_share=0.0, mite_luck=0.0)
    rates = []
    for day in range(days):
        sealed_tomorrow = float(np.median(made["larvae"][:, 5]))
        grams = float(np.median(observe.adults(made))) * BIOLOGY.bee_g
        rates.append(invasion_rate(sealed_tomorrow, grams, BIOLOGY.invade_worker))
        run(made, even[:, day : day + 1], chance[:, day : day + 1], worlds=(biology,))
        made["ripe"], made["pollen"] = 8000.0, 800.0
        seen.append(float(np.median(observe.mites(made))))
    half = days // 2
    grown = float(np.log(seen[-1] / seen[half - 1]) / half)
    closed = growth_rate(
        float(np.mean(rates[half:])), BIOLOGY.leave_worker, 12.0, BIOLOGY.mite_death
    )
    return {
        "growth": grown,
        "closed_form": closed,
        "difference": grown - closed,
        "on_bees": float(np.median(made["mites"] / observe.mites(made))),
    }


def broodless_loss(days: int) -> float:
    """Share of the mites lost in a broodless winter of so many days."""
    made = colonies(14000.0, 0.0, stores_kg=18.0)
    made["winter"], made["nest"], made["foragers"] = 14000.0, 0.0, 0.0
    made["queen"], made["mites"] = CAGED, 500.0
    live(made, even_days(days, day=330, mean_c=4.0)[:, :35])
    for _ in range((days - 35) // 35 + 1):
        live(made, even_days(35, day=5, mean_c=4.0))
    passed = 35 + 35 * ((days - 35) // 35 + 1)
    return float(1.0 - np.median(observe.mites(made) / 500.0) ** (days / passed))


def mites_per_fallen(day: int, brood: float) -> float:
    """Mites in a colony for each that falls in a day, in a steady nest, before re-invasion."""
    made = colonies(18000.0 if brood else 13000.0, brood)
    made["mites"] = 400.0
    made["queen"] = made["queen"] if brood else CAGED
    fallen = []
    mean_c = 16.0 if brood else 5.0
    for now in range(40):
        live(
            made,
            even_days(
                1, day=day + now - 40, mean_c=mean_c, hours=5.0 if brood else 0.0, nectar=0.4
            ),
        )
        made["ripe"], made["pollen"] = 8000.0, 800.0
        fallen.append(float(np.median(made["fallen"])))
    return float(np.median(observe.mites(made))) / float(np.mean(fallen[-7:]))


def left_after(substance: str, brood: float, days: int) -> float:
    """Share of the mites left so many days after a treatment began."""
    made = colonies(15000.0, brood)
    made["mites"] = 1000.0
    if brood:
        live(made, even_days(20, day=200, mean_c=16.0, hours=5.0, nectar=0.4))
    else:
        made["queen"] = CAGED
    before = observe.mites(made).copy()
    actions.treat(made, substance)
    live(made, even_days(days, day=225 if brood else 350, mean_c=15.0 if brood else 5.0))
    return float(np.median(observe.mites(made) / before))


def trapped_by_drones(cells: float, grams: float) -> float:
    """Share of the mites on bees that a day's sealing of so many drone cells takes."""
    return trapped_share(invasion_rate(cells, grams, BIOLOGY.invade_drone))


def drone_preference() -> float:
    """How many times as often a drone cell is entered as a worker cell."""
    return BIOLOGY.invade_drone / BIOLOGY.invade_worker


def carried_in(pressure: float) -> float:
    """Mites carried into a colony from the end of July to mid November at this pressure."""
    made = colonies(15000.0, 0.0)
    made["queen"], made["invaders"] = CAGED, pressure
    biology = BIOLOGY._replace(mite_death=0.0, mite_death_winter=0.0)
    run(
        made,
        even_days(105, day=212, mean_c=12.0, hours=3.0, nectar=0.3),
        luck(SEED, "trial", ON, 105, MEMBERS),
        worlds=(biology,),
    )
    return float(np.median(observe.mites(made)))

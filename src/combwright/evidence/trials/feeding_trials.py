"""What food does: syrup that becomes stores or pollen, and what a cold week costs."""

import numpy as np

from combwright.evidence.simulated_colonies import colonies, even_days, live
from combwright.simulation import observe
from combwright.simulation.hands import actions

SYRUP = 0.5  # sugar by mass of 1:1
WEEKS, PORTION_G = 3, 3500.0


def gained_of_syrup() -> float:
    """Weight that a colony gains of thin syrup fed in April, as a share of the syrup's weight."""
    weights = []
    for fed in (True, False):
        made = colonies(12000.0, 9000.0, stores_kg=6.0)
        for week in range(WEEKS):
            if fed:
                actions.feed(made, PORTION_G, SYRUP)
            live(made, even_days(7, day=100 + 7 * week, mean_c=10.5, hours=2.5, nectar=0.15))
        weights.append(float(np.median(observe.weight_kg(made, 0.0))))
    return 1000.0 * (weights[0] - weights[1]) / (WEEKS * PORTION_G)


def pollen_gathered(litres_a_day: float) -> float:
    """Pollen that a colony brings in in a fortnight, with so much syrup of 55 % a day. [g]."""
    made = colonies(20000.0, 15000.0, stores_kg=6.0)
    before = made["pollen"].copy()
    for day in range(14):
        actions.feed(made, 1260.0 * litres_a_day, 0.55)
        live(made, even_days(1, day=130 + day, mean_c=15.0, hours=5.0, nectar=0.15))
    return float(np.median(made["pollen"] + made["pollen_total"] - before))


def syrup_brings_pollen() -> bool:
    """Tell whether a litre of syrup a day makes a colony gather more pollen."""
    return pollen_gathered(1.0) > pollen_gathered(0.0)


def a_week_without_income() -> float:
    """Honey that a colony at full brood uses in a week of May without flight. [kg]."""
    made = colonies(20000.0, 24000.0)
    live(made, even_days(7, day=145, mean_c=11.0, hours=0.0, nectar=0.0))
    return float(np.median(made["used_total"])) / 1000.0 / observe.SUGAR_IN_HONEY

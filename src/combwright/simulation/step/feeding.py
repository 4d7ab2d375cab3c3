"""What comes in: nectar, pollen, syrup and fondant from the feeder."""

from typing import Any

from combwright.simulation.step.compiled import inlined
from combwright.simulation.step.shapes import spread
from combwright.simulation.step.warmth import adults_of


@inlined
def nectar_yield(nectar: float, bio: Any) -> float:
    """Give the nectar of a forager's hour, against that of the district's best day.

    It yields less than in proportion as more flowers: scouts lead bees to the best.
    """
    return nectar * (1.0 + bio.nectar_half) / (nectar + bio.nectar_half)


@inlined
def income(s: Any, today: Any, free: float, bio: Any) -> tuple[float, float, float]:
    """Sugar and water of nectar, and pollen, brought in today.

    Nectar is limited by the cells that are free to take it.
    """
    hours = s.foragers * today.flight * s.forage_success
    lack = bio.pollen_enough / (bio.pollen_enough + bio.pollen_lack * s.pollen)
    eager = bio.pollen_least + bio.pollen_most * lack * lack
    for_pollen = min(1.0, bio.pollen_foragers * eager)
    gathered_pollen = hours * for_pollen * bio.pollen_per_hour * today.pollen
    offered = hours * (1.0 - for_pollen) * bio.nectar_per_hour * today.nectar_yield
    sugar = offered * today.foraged
    water_per_sugar = (1.0 - bio.nectar_sugar) / bio.nectar_sugar
    ml_per_sugar = 1.0 / bio.sugar_kg_per_l + water_per_sugar
    most = max(0.0, free) * bio.cell_ml * bio.unripe_fill / ml_per_sugar
    sugar = min(sugar, most)
    return sugar, sugar * water_per_sugar, gathered_pollen


@inlined
def take_down(
    s: Any, mean_c: float, max_c: float, gathered: float, free: float, bio: Any
) -> tuple[float, float]:
    """Sugar and water taken from the feeder today.

    Bees take syrup at a rate that grows with their number and the warmth near the feeder, leave
    it for good nectar, and stop when no cell is free.
    """
    sugar, water = s.feeder, s.feeder_water
    mass = sugar + water
    if mass <= 0.0:
        return 0.0, 0.0
    bees = adults_of(s)
    if sugar / mass >= bio.fondant_from:
        taken = min(mass, bio.fondant_rate * bees)
        return sugar * taken / mass, water * taken / mass
    near_feeder_c = 0.5 * (mean_c + max_c) + 0.5 * s.feeder_warmth
    warm = spread(near_feeder_c, bio.take_cold, bio.take_warm)
    rate = bio.take_down * bees * warm / (1.0 + gathered / bio.nectar_before_syrup)
    ml_per_g = (sugar / bio.sugar_kg_per_l + water) / mass
    most = max(0.0, free * bio.cell_ml * bio.unripe_fill / ml_per_g)
    taken = min(mass, rate, most)
    return sugar * taken / mass, water * taken / mass


@inlined
def turns_sour(s: Any, max_c: float, bio: Any) -> bool:
    """Tell whether feed stands in the warm for longer than its strength keeps."""
    if s.feeder <= bio.sour_least or max_c <= bio.sour_above_c:
        return False
    sugar = s.feeder / (s.feeder + s.feeder_water)
    if sugar < bio.keeps_weeks_from:
        return s.feeder_days > bio.sour_after
    return sugar < bio.keeps_months_from and s.feeder_days > bio.sour_after_weeks

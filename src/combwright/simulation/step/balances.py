"""Nothing is lost or made but through a named process: the sums that must agree every day."""

from typing import Any

from combwright.simulation.step.compiled import inlined
from combwright.simulation.step.shapes import sum_of
from combwright.simulation.step.warmth import adults_of, brood_of

CLOSE = 1e-7  # relative error allowed; rounding alone stays far below it
BEES, SUGAR, WATER, COMB, MITES, BROOD = range(6)


@inlined
def sugar_of(s: Any) -> float:
    """Sugar in the hive and its feeder. [g]."""
    return s.ripe + s.super_ripe + s.unripe + s.feeder


@inlined
def mites_of(s: Any) -> float:
    """Mites on bees and in cells."""
    return s.mites + sum_of(s.mites_worker) + sum_of(s.mites_drone)


@inlined
def totals(s: Any) -> tuple[float, float, float, float, float, float]:
    """Bees, sugar [g], unripe water [g], comb [cells], mites and brood of a colony."""
    water = s.water + s.feeder_water
    comb = s.drawn + s.foundation + s.super_drawn + s.super_foundation
    return adults_of(s), sugar_of(s), water, comb, mites_of(s), brood_of(s)


@inlined
def off(before: float, change: float, after: float) -> bool:
    """Tell whether a balance is broken."""
    return not abs(before + change - after) <= CLOSE * (1.0 + abs(before) + abs(after))


@inlined
def above(before: float, most: float, after: float) -> bool:
    """Tell whether more is there than can be."""
    return not after <= before + most + CLOSE * (1.0 + abs(before) + abs(after))


@inlined
def broken_balance(  # noqa: PLR0911 (one return a balance)
    before: Any,
    after: Any,
    bees: float,
    sugar: float,
    water_at_most: float,
    mites: float,
    brood_at_most: float,
) -> int:
    """Give 0, or one more than the place of the sum that does not agree.

    Water that is bound in ripe stores and brood that dies have no counter of their own: of them
    only that nothing is made is checked.
    """
    if off(before[BEES], bees, after[BEES]):
        return BEES + 1
    if off(before[SUGAR], sugar, after[SUGAR]):
        return SUGAR + 1
    if above(before[WATER], water_at_most, after[WATER]):
        return WATER + 1
    if off(before[COMB], 0.0, after[COMB]):
        return COMB + 1
    if off(before[MITES], mites, after[MITES]):
        return MITES + 1
    if above(before[BROOD], brood_at_most, after[BROOD]):
        return BROOD + 1
    return 0

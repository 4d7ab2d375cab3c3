"""Which batch of syrup a keeper means, from whatever is known of it."""

from dataclasses import dataclass

from combwright.science.syrup.recipes import (
    Recipe,
    by_litres,
    by_pounds_and_pints,
    by_sugar,
    by_water,
)
from combwright.science.syrup.strength import sugar_fraction_of_ratio, water_kg
from combwright.terms.errors import CombwrightError
from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

WEAKEST_PERCENT, STRONGEST_PERCENT = 20.0, 75.0
HOTTEST_C = 50.0  # warmer syrup is not measured for feeding; it is Fahrenheit


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the keeper knows: a strength and one amount, or sugar and water.

    Examples
    --------
    >>> round(recipe_for(Wanted(ratio=2.0, sugar_kg=10.0)).water_kg, 3)
    5.0

    """

    ratio: float | None = None
    percent: float | None = None
    sugar_kg: float | None = None
    water_kg: float | None = None
    water_l: float | None = None
    litres: float | None = None
    pounds: float | None = None
    pints: float | None = None
    at_c: float = 20.0

    @property
    def imperial(self) -> bool:
        """Whether pounds or pints were given."""
        return self.pounds is not None or self.pints is not None

    def names(self, *fields: str) -> list[str]:
        """Name those of some fields that were given."""
        return [field for field in fields if getattr(self, field) is not None]


def recipe_for(wanted: Wanted) -> Recipe:
    """Give sugar and water of the batch, or say what is missing or too much."""
    celsius(wanted.at_c, "The temperature of the syrup", 0.0, HOTTEST_C)
    if wanted.imperial:
        recipe = _imperial(wanted)
    elif wanted.names("ratio", "percent"):
        recipe = _of_strength(wanted, _strength(wanted))
    else:
        recipe = _of_sugar_and_water(wanted)
    within(
        100.0 * recipe.sugar_fraction,
        WEAKEST_PERCENT,
        STRONGEST_PERCENT,
        "The sugar in syrup",
        "%",
        remedy="Syrup for bees lies between 1:1 and 2:1 by weight; stronger is candy.",
    )
    return recipe


def _strength(wanted: Wanted) -> float:
    if wanted.ratio is not None and wanted.percent is not None:
        raise CombwrightError("The strength is given twice.", remedy="Keep --ratio or --percent.")
    if wanted.ratio is not None:
        advice = "A ratio is sugar to water by weight: 1, 1.5, or 2 for 2:1."
        if WEAKEST_PERCENT <= wanted.ratio <= 100.0:  # noqa: PLR2004  # whole percents
            advice = f"If that is a percentage, use --percent {wanted.ratio:g}."
        return float(
            sugar_fraction_of_ratio(within(wanted.ratio, 0.25, 3.0, "The ratio", remedy=advice))
        )
    percent = wanted.percent or 0.0
    advice = f"If that is a fraction, write {100 * percent:g}." if 0 < percent < 1 else ""
    share = within(percent, WEAKEST_PERCENT, STRONGEST_PERCENT, "The sugar", "%", remedy=advice)
    return float(share) / 100.0


def _of_strength(wanted: Wanted, strength: float) -> Recipe:
    given = wanted.names("sugar_kg", "water_kg", "water_l", "litres")
    if len(given) != 1:
        raise CombwrightError(
            "With the strength, one amount is needed and no more.",
            remedy="Give one of --sugar-kg, --water-kg, --water-l and --litres (of syrup).",
        )
    if wanted.litres is not None:
        return by_litres(litres=wanted.litres, sugar_fraction=strength, at_c=wanted.at_c)
    if wanted.sugar_kg is not None:
        return by_sugar(sugar_kg=wanted.sugar_kg, sugar_fraction=strength, at_c=wanted.at_c)
    return by_water(water_kg=_water_kg(wanted), sugar_fraction=strength, at_c=wanted.at_c)


def _of_sugar_and_water(wanted: Wanted) -> Recipe:
    given = wanted.names("sugar_kg", "water_kg", "water_l", "litres")
    if given not in (["sugar_kg", "water_kg"], ["sugar_kg", "water_l"]):
        raise CombwrightError(
            "The strength is not known.",
            remedy="Give --ratio 2 (sugar to water by weight) and one amount, or both sugar and "
            "water, such as --sugar-kg 10 --water-l 5.",
        )
    sugar = float(within(wanted.sugar_kg or 0.0, 1e-3, 1e5, "The sugar", "kg"))
    return Recipe(sugar, _water_kg(wanted), wanted.at_c)


def _water_kg(wanted: Wanted) -> float:
    if wanted.water_l is not None:
        litres = within(wanted.water_l, 1e-3, 1e5, "The water", "L")
        return float(water_kg(litres))
    return float(within(wanted.water_kg or 0.0, 1e-3, 1e5, "The water", "kg"))


def _imperial(wanted: Wanted) -> Recipe:
    others = wanted.names("ratio", "percent", "sugar_kg", "water_kg", "water_l", "litres")
    if wanted.pounds is None or wanted.pints is None or others:
        raise CombwrightError(
            "The imperial form needs both pounds of sugar and pints of water, and nothing else.",
            remedy="For example --pounds 2 --pints 1 (imperial pints of 568 ml).",
        )
    return by_pounds_and_pints(
        pounds=float(within(wanted.pounds, 1e-3, 1e5, "The sugar", "lb")),
        pints=float(within(wanted.pints, 1e-3, 1e5, "The water", "pints")),
        at_c=wanted.at_c,
    )

"""How much sugar and water to take, and what they make."""

from dataclasses import dataclass

from combwright.science.syrup.fed_sugar import stores_kg
from combwright.science.syrup.strength import (
    KG_PER_POUND,
    LITRES_PER_IMPERIAL_PINT,
    density_kg_per_l,
    fraction_within,
    sugar_fraction,
    volume_l,
    water_kg,
)
from combwright.terms.ranges import within


@dataclass(frozen=True, slots=True)
class Recipe:
    """Sugar and water that are mixed, and the temperature at which the syrup is measured.

    Examples
    --------
    >>> recipe = Recipe(sugar_kg=2.0, water_kg=1.0)
    >>> round(recipe.syrup_l, 2), round(recipe.sugar_fraction, 3)
    (2.26, 0.667)

    """

    sugar_kg: float
    water_kg: float
    at_c: float = 20.0

    @property
    def sugar_fraction(self) -> float:
        """Sugar by mass. [kg/kg]."""
        return float(sugar_fraction(self.sugar_kg, self.water_kg))

    @property
    def syrup_kg(self) -> float:
        """Mass of the syrup. [kg]."""
        return self.sugar_kg + self.water_kg

    @property
    def syrup_l(self) -> float:
        """Volume of the syrup. [L]."""
        return float(volume_l(self.sugar_kg, self.water_kg, self.at_c))

    @property
    def density_kg_per_l(self) -> float:
        """Density of the syrup. [kg/L]."""
        return float(density_kg_per_l(self.sugar_fraction, self.at_c))

    @property
    def water_l(self) -> float:
        """Volume of the water when it is measured at 20 °C. [L]."""
        return self.water_kg / float(water_kg(1.0))

    @property
    def stores_kg(self) -> float:
        """Stores that bees can make of it, by the usual divisor of 0.8. [kg]."""
        return float(stores_kg(self.sugar_kg))

    @property
    def stores_kg_per_l(self) -> float:
        """Stores from a litre of the syrup. [kg/L]."""
        return self.stores_kg / self.syrup_l


def by_sugar(*, sugar_kg: float, sugar_fraction: float, at_c: float = 20.0) -> Recipe:
    """Give the recipe of a strength that uses so much sugar.

    Examples
    --------
    >>> by_sugar(sugar_kg=10.0, sugar_fraction=0.5).water_kg
    10.0

    """
    sugar = float(within(sugar_kg, 1e-6, 1e5, "The sugar", "kg"))
    strength = float(fraction_within(sugar_fraction, 0.05))
    return Recipe(sugar, sugar * (1.0 - strength) / strength, at_c)


def by_water(*, water_kg: float, sugar_fraction: float, at_c: float = 20.0) -> Recipe:
    """Give the recipe of a strength that uses so much water.

    Examples
    --------
    >>> by_water(water_kg=3.0, sugar_fraction=0.625).sugar_kg
    5.0

    """
    water = float(within(water_kg, 1e-6, 1e5, "The water", "kg"))
    strength = float(fraction_within(sugar_fraction, 0.05))
    return Recipe(water * strength / (1.0 - strength), water, at_c)


def by_litres(*, litres: float, sugar_fraction: float, at_c: float = 20.0) -> Recipe:
    """Give the recipe of a strength that makes so many litres of syrup.

    Examples
    --------
    >>> round(by_litres(litres=10.0, sugar_fraction=0.6).sugar_kg, 2)
    7.72

    """
    syrup = float(within(litres, 1e-6, 1e5, "The syrup", "L"))
    strength = float(fraction_within(sugar_fraction, 0.05))
    mass = syrup * float(density_kg_per_l(strength, at_c))
    return Recipe(mass * strength, mass * (1.0 - strength), at_c)


def by_litres_of_water(*, sugar_kg: float, water_l: float, at_c: float = 20.0) -> Recipe:
    """Give the recipe of sugar by the kilogram and water by the litre, measured at 20 °C.

    Examples
    --------
    >>> round(by_litres_of_water(sugar_kg=1.0, water_l=1.0).syrup_l, 3)
    1.625

    """
    return Recipe(sugar_kg, float(water_kg(water_l)), at_c)


def by_pounds_and_pints(*, pounds: float, pints: float, at_c: float = 20.0) -> Recipe:
    """Give the recipe of sugar by the pound and water by the imperial pint of 568 ml.

    Examples
    --------
    >>> round(by_pounds_and_pints(pounds=2.0, pints=1.0).sugar_fraction, 3)
    0.615

    """
    water_l = pints * LITRES_PER_IMPERIAL_PINT
    return by_litres_of_water(sugar_kg=pounds * KG_PER_POUND, water_l=water_l, at_c=at_c)

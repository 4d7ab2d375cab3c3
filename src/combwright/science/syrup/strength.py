"""Syrup: how strong, how dense, how much it makes.

Two unit traps stand in the names here. A *ratio* is always kilograms of sugar to kilograms of
water. Litres are always asked for as litres: a litre of water is close to a kilogram, a litre of
syrup is not. Pounds to imperial pints go through `recipes.by_pounds_and_pints`, since
"two pounds to the pint" is 61.5 % sugar and not the 66.7 % of two to one by weight.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.syrup.water import water_density_kg_per_m3
from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

KG_PER_POUND = 0.45359237  # by definition
LITRES_PER_IMPERIAL_PINT = 0.56826125  # by definition


def fraction_within(
    sugar_fraction: ArrayLike, low: float = 0.0, high: float = 0.85
) -> NDArray[np.float64]:
    """Give sugar fractions that lie in a range, else say what they look like."""
    most = float(np.max(np.asarray(sugar_fraction, dtype=np.float64), initial=-np.inf))
    remedy = (
        f"If that is a percentage, write {most / 100.0:g}."
        if 1.0 < most <= 100.0  # noqa: PLR2004  # whole percents
        else "Give kilograms of sugar per kilogram of syrup."
    )
    return within(sugar_fraction, low, high, "The sugar fraction", remedy=remedy)


def sugar_fraction(sugar_kg: ArrayLike, water_kg: ArrayLike) -> NDArray[np.float64]:
    """Sugar in a syrup by mass, *m_s / (m_s + m_w)*.

    ``water_kg``: water, in kilograms and not in litres of syrup [kg].

    Examples
    --------
    >>> float(sugar_fraction(5, 3))
    0.625

    """
    sugar = within(sugar_kg, 0.0, 1e6, "The sugar", "kg")
    water = within(water_kg, 1e-9, 1e6, "The water", "kg", remedy="Syrup needs some water.")
    return np.asarray(sugar / (sugar + water), dtype=np.float64)


def sugar_fraction_of_ratio(ratio: ArrayLike) -> NDArray[np.float64]:
    """Sugar in a syrup mixed as kilograms of sugar to one kilogram of water.

    ``ratio``: sugar to water by weight, 0 to 5 [kg/kg].

    Examples
    --------
    >>> float(sugar_fraction_of_ratio(1))
    0.5

    """
    remedy = "A ratio is sugar to water by weight, such as 1, 1.5 or 2 (for 2:1)."
    return sugar_fraction(within(ratio, 0.0, 5.0, "The ratio", remedy=remedy), 1.0)


def water_kg(litres: ArrayLike, temperature_c: ArrayLike = 20.0) -> NDArray[np.float64]:
    """Mass of litres of water.

    Examples
    --------
    >>> float(water_kg(1).round(4))
    0.9982

    """
    density = water_density_kg_per_m3(temperature_c) / 1000.0
    return np.asarray(within(litres, 0.0, 1e6, "The water", "L") * density, dtype=np.float64)


def density_kg_per_l(
    sugar_fraction: ArrayLike, temperature_c: ArrayLike = 20.0
) -> NDArray[np.float64]:
    r"""Density of a sucrose solution.

    .. math:: \rho = \rho_w(t) + \sum_i b_i w^i + q \sum_i c_i w^i + q^2 \sum_i d_i w^i
       + q^3 \sum_i e_i w^i + q^4 \sum_i f_i w^i, \quad q = (t - 20) / 100

    References
    ----------
    .. [1] ICUMSA method SPS-4, and Z. Bubnik, P. Kadlec, D. Urban and M. Bruhns, *Sugar
       Technologists Manual*, Bartens, 1995. Coefficients from memory; up to 50 % at 20 °C
       confirmed by tables that were read, above 50 % and at other temperatures from memory alone.

    Examples
    --------
    >>> float(density_kg_per_l(0.5).round(4))
    1.2297

    """
    w = fraction_within(sugar_fraction)
    t = celsius(temperature_c, "The temperature of syrup", 0.0, 80.0)
    q = (t - 20.0) / 100.0
    terms = (
        (0.0, 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890),
        (0.0, -46.2720, -7.1720, 1.1597, 5.1126, 17.5254),
        (0.0, 59.7712, 7.2491, 12.3630, -35.4791),
        (0.0, -47.2207, -21.6977, 27.6301),
        (0.0, 18.3184, 12.3081),
    )
    added = sum(
        q**power * np.polynomial.polynomial.polyval(w, factors)
        for power, factors in enumerate(terms)
    )
    return np.asarray((water_density_kg_per_m3(t) + added) / 1000.0, dtype=np.float64)


def volume_l(
    sugar_kg: ArrayLike, water_kg: ArrayLike, temperature_c: ArrayLike = 20.0
) -> NDArray[np.float64]:
    """Volume of the syrup that sugar and water make: about 0.63 L for each kilogram of sugar.

    Examples
    --------
    >>> float(volume_l(1, 1).round(3))
    1.626

    """
    density = density_kg_per_l(sugar_fraction(sugar_kg, water_kg), temperature_c)
    mass = np.asarray(sugar_kg, dtype=np.float64) + np.asarray(water_kg, dtype=np.float64)
    return np.asarray(mass / density, dtype=np.float64)

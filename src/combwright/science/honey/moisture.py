"""Honey: water from what a refractometer shows, density, water activity."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.syrup.sucrose import index_of_brix
from combwright.science.syrup.water import water_density_kg_per_m3
from combwright.terms.data_files import parameter
from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

DRIEST, WETTEST = 11.0, 30.0  # percent of water; the published table runs from 13 to 25
LOWEST_INDEX, HIGHEST_INDEX = 1.46, 1.515
INDEX_PER_K = parameter("science/honey", "index_per_k")
WATER_PERCENT = np.arange(13.0, 22.0)
GRAVITY_20_20 = np.array([1.4457, 1.4404, 1.4350, 1.4295, 1.4237, 1.4171, 1.4101, 1.4027, 1.3950])


def looks_like(refractive_index: ArrayLike) -> str:
    """Say what a number that cannot be the index of honey looks like.

    Examples
    --------
    >>> looks_like(18)
    'That looks like percent of water; give it as the water instead.'

    """
    numbers = np.atleast_1d(np.asarray(refractive_index, dtype=np.float64))
    outside = numbers[(numbers < LOWEST_INDEX) | (numbers > HIGHEST_INDEX)]
    number = float(outside[0]) if outside.size else 0.0
    for low, high, what in (
        (1.32, 1.345, "That is the index of water: wipe the prism dry and measure honey again."),
        (1.345, 1.465, "That is the index of syrup or nectar, not of honey."),
        (10.0, 30.0, "That looks like percent of water; give it as the water instead."),
        (50.0, 95.0, "That looks like a Brix reading; give it as Brix instead."),
    ):
        if low <= number < high:
            return what
    return "The scale of the instrument may be marked nD; honey reads about 1.49."


def index_at_20_c(
    refractive_index: ArrayLike, temperature_c: ArrayLike = 20.0
) -> NDArray[np.float64]:
    r"""Refractive index as it would be at 20 °C.

    .. math:: n_{20} = n_t + 0.00023 (t - 20)

    ``refractive_index``: index as read, against air at 589 nm. ``temperature_c``: temperature of
    the prism and the honey on it, 10 to 40 [°C].

    References
    ----------
    .. [1] S. Bogdanov, *The Book of Honey*, chapter 4 (International Honey Commission method);
       read.

    Examples
    --------
    >>> float(index_at_20_c(1.4915, 25).round(5))
    1.49265

    """
    t = celsius(temperature_c, "The temperature of a reading", 10.0, 40.0)
    n = np.asarray(refractive_index, dtype=np.float64)
    return np.asarray(n + INDEX_PER_K.value * (t - 20.0), dtype=np.float64)


def water_percent_of_index(
    refractive_index: ArrayLike, temperature_c: ArrayLike = 20.0
) -> NDArray[np.float64]:
    r"""Water in honey from its refractive index. [g per 100 g].

    .. math:: W = \frac{-0.26810 - \log_{10}(n_{20} - 1)}{0.002243}

    ``refractive_index``: index as read, 1.465 to 1.510 once brought to 20 °C.

    References
    ----------
    .. [1] E. B. Wedmore, "The accurate determination of the water content of honeys",
       Bee World 36, 197-206, 1955, fitted to H. D. Chataway's table of 1932; table read in
       Bogdanov, *The Book of Honey*, and in a note of an instrument maker.

    Notes
    -----
    Widely copied texts print the constant as 1.73190. That is the old notation of logarithms
    with a bar over the 1 (bar-1.73190 = -0.26810); taken literally it gives 910 % of water.
    The table covers 13 to 25 %; outside it the formula is extrapolated.

    Examples
    --------
    >>> float(water_percent_of_index(1.4915).round(1))
    18.0

    """
    read = within(
        refractive_index,
        LOWEST_INDEX,
        HIGHEST_INDEX,
        "The refractive index of honey",
        remedy=looks_like(refractive_index),
    )
    n = within(
        index_at_20_c(read, temperature_c),
        1.465,
        1.510,
        "The refractive index at 20 °C",
        remedy="The table for honey ends near there; check the instrument with a known oil.",
    )
    return np.asarray((-0.26810 - np.log10(n - 1.0)) / 0.002243, dtype=np.float64)


def water_percent_read_at(
    water_percent: ArrayLike, temperature_c: ArrayLike
) -> NDArray[np.float64]:
    """Water in honey from an instrument that shows water for 20 °C, read at another warmth.

    The reading is turned back into the index that it stands for, and that brought to 20 °C.

    ``water_percent``: as read, without correction [g per 100 g]. ``temperature_c``: of the prism
    and the honey on it, 10 to 40 [°C].

    References
    ----------
    .. [1] E. B. Wedmore, as in `water_percent_of_index`, solved for the index.

    Examples
    --------
    >>> float(water_percent_read_at(18.0, 20)), float(water_percent_read_at(18.0, 25).round(1))
    (18.0, 17.5)

    """
    index = 1.0 + 10.0 ** (-0.26810 - 0.002243 * water_within(water_percent, 11.0, WETTEST))
    return np.asarray(water_percent_of_index(index, temperature_c).round(9), dtype=np.float64)


def water_within(
    water_percent: ArrayLike, low: float = DRIEST, high: float = WETTEST
) -> NDArray[np.float64]:
    """Give water contents that honey can have, else say what the number looks like."""
    most = float(np.max(np.asarray(water_percent, dtype=np.float64), initial=0.0))
    if 0.0 < most < 1.0:
        remedy = f"If that is a fraction, write {100.0 * most:g}."
    elif 60.0 <= most <= 90.0:  # noqa: PLR2004  # where solids and Brix of honey lie
        remedy = "That looks like Brix or solids; give it as Brix instead."
    else:
        remedy = "Honey holds about 14 to 22 grams of water per 100 g."
    return within(water_percent, low, high, "The water in honey", "%", remedy=remedy)


def water_percent_of_brix(brix: ArrayLike, temperature_c: ArrayLike = 20.0) -> NDArray[np.float64]:
    """Water in honey from a refractometer that is scaled for sugar syrup. [g per 100 g].

    The reading is turned back into the index that it stands for, and that into water. Water and
    Brix do not add up to 100 but to about 98.3, since honey bends light more than sucrose does.

    ``brix``: reading on a scale made for 20 °C, 70 to 88 [g sucrose per 100 g]. ``temperature_c``:
    temperature of the reading, 10 to 40; 20 if the instrument corrects by itself [°C].

    Examples
    --------
    >>> float(water_percent_of_brix(80.28).round(1))
    18.0

    """
    remedy = "Brix is grams per 100 g; ripe honey reads about 78 to 84."
    if 10.0 <= float(np.max(np.asarray(brix, dtype=np.float64), initial=0.0)) <= WETTEST:  # noqa: PLR2004
        remedy = "That looks like percent of water; give it as the water instead."
    reading = within(brix, 70.0, 88.0, "The Brix reading of honey", remedy=remedy)
    return water_percent_of_index(index_of_brix(reading), temperature_c)


def gravity_20_20(water_percent: ArrayLike) -> NDArray[np.float64]:
    """Density of honey at 20 °C over that of water at 20 °C, from a table.

    ``water_percent``: water, 12 to 25; the table runs from 13 to 21 and is carried on straight [g
    per 100 g].

    References
    ----------
    .. [1] J. W. White, in *Honey: A Comprehensive Survey* (E. Crane, ed.), 1975, table of
       specific gravity; from memory, the values at 17 and 18 % confirmed by pages that were read.

    Examples
    --------
    >>> float(gravity_20_20(18).round(3))
    1.417

    """
    water = water_within(water_percent, 12.0, 25.0)
    last = len(WATER_PERCENT) - 2
    row = np.clip(np.floor(water - WATER_PERCENT[0]).astype(np.int64), 0, last)
    rise = np.diff(GRAVITY_20_20)[row]
    return np.asarray(GRAVITY_20_20[row] + rise * (water - WATER_PERCENT[row]), dtype=np.float64)


def density_kg_per_l(water_percent: ArrayLike) -> NDArray[np.float64]:
    """Density of honey at 20 °C; it is not that of sucrose syrup of equal solids.

    References
    ----------
    .. [1] Specific gravity 20/20 °C as in `gravity_20_20`, times the density of water at 20 °C.

    Examples
    --------
    >>> float(density_kg_per_l(18).round(3))
    1.415

    """
    water = water_density_kg_per_m3(20.0) / 1000.0
    return np.asarray(gravity_20_20(water_percent) * water, dtype=np.float64)


def water_activity(water_percent: ArrayLike) -> NDArray[np.float64]:
    r"""Water activity of liquid honey near 20 °C; set honey has more.

    .. math:: a_w = 0.248 + 0.0175 W

    References
    ----------
    .. [1] R. Perez and others, 2009, doi:10.1007/s11947-009-0193-z; coefficients from memory.

    Examples
    --------
    >>> float(water_activity(18).round(3))
    0.563

    """
    water = water_within(water_percent, 13.0, 25.0)
    return np.asarray(0.248 + 0.0175 * water, dtype=np.float64)

"""Sucrose solutions as instruments see them: viscosity, and the refractive index of a Brix."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.syrup.inverse import inverse
from combwright.science.syrup.strength import fraction_within
from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

BRIX_OF_INDEX = (-99127.4536, 318417.95, -413145.80, 270177.93, -88885.21, 11758.74)


def viscosity_mpa_s(
    sugar_fraction: ArrayLike, temperature_c: ArrayLike = 20.0
) -> NDArray[np.float64]:
    r"""Viscosity of a sucrose solution, good to about 5 %.

    .. math:: \log_{10} \eta = 22.46 N - 0.114 + \phi (1.1 + 43.1 N^{1.25}), \quad
       N = \frac{100 w}{1900 - 1800 w}, \quad \phi = \frac{30 - t}{91 + t}

    References
    ----------
    .. [1] J. Genotelle, Industries alimentaires et agricoles 95, 747-755, 1978, as given by
       Mathlouthi and Reiser, *Sucrose: Properties and Applications*, 1995; from memory.

    Examples
    --------
    >>> float(viscosity_mpa_s(0.6, 20).round(1))
    59.7

    """
    w = fraction_within(sugar_fraction)
    t = celsius(temperature_c, "The temperature of syrup", 0.0, 80.0)
    n = 100.0 * w / (1900.0 - 1800.0 * w)
    phi = (30.0 - t) / (91.0 + t)
    power = 22.46 * n - 0.114 + phi * (1.1 + 43.1 * n**1.25)
    return np.asarray(10.0**power, dtype=np.float64)


def index_of_brix(brix: ArrayLike) -> NDArray[np.float64]:
    """Refractive index at 20 °C of a Brix reading: the ICUMSA polynomial read backwards.

    References
    ----------
    .. [1] Fit to the ICUMSA table of refractive indices; coefficients read second-hand
       (an encyclopaedia page on Brix tables).

    Examples
    --------
    >>> float(index_of_brix(80.3).round(4))
    1.4916

    """
    wanted = within(brix, 0.0, 95.0, "The Brix reading", remedy="Brix is grams per 100 g.")
    return inverse(
        lambda n: np.asarray(np.polynomial.polynomial.polyval(n, BRIX_OF_INDEX)),
        wanted,
        1.3325,
        1.54,
    )

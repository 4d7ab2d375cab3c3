"""Water: its density."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.temperatures import celsius


def water_density_kg_per_m3(temperature_c: ArrayLike) -> NDArray[np.float64]:
    r"""Density of air-free water at one atmosphere.

    .. math:: \rho = \frac{999.83952 + 16.945176 t - 7.9870401 \cdot 10^{-3} t^2
       - 46.170461 \cdot 10^{-6} t^3 + 105.56302 \cdot 10^{-9} t^4
       - 280.54253 \cdot 10^{-12} t^5}{1 + 16.879850 \cdot 10^{-3} t}

    References
    ----------
    .. [1] G. S. Kell, "Density, thermal expansivity, and compressibility of liquid water from
       0 to 150 °C", J. Chem. Eng. Data 20, 97-105, 1975, doi:10.1021/je60064a005; from memory,
       confirmed against IAPWS-95 (CoolProp) in the tests.

    Examples
    --------
    >>> float(water_density_kg_per_m3(20).round(2))
    998.2

    """
    t = celsius(temperature_c, "The temperature of water", 0.0, 100.0)
    powers = np.polynomial.polynomial.polyval(
        t,
        (999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12),
    )
    return np.asarray(powers / (1.0 + 16.879850e-3 * t), dtype=np.float64)

"""Warm syrup in a feeder: how fast it cools, with and without a cushion."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

LUMPED_BELOW = 0.1  # Biot number below which a body has one temperature; usual textbook limit


def syrup_heat_capacity_kj_per_kg_k(
    sugar_fraction: ArrayLike, temperature_c: ArrayLike = 20.0
) -> NDArray[np.float64]:
    r"""Heat capacity of a pure sucrose solution.

    .. math:: c = 4.1868 - 0.0297 B + 4.6 \cdot 10^{-3} B + 7.5 \cdot 10^{-5} B t

    with B in percent by mass.

    References
    ----------
    .. [1] Z. Bubník et al., Sugar Technologists Manual (1995), at 100 % purity. From memory.

    Examples
    --------
    >>> float(syrup_heat_capacity_kj_per_kg_k(0.6).round(2))
    2.77

    """
    percent = 100 * within(sugar_fraction, 0, 0.85, "The sugar fraction")
    t = celsius(temperature_c, "The syrup", 0, 100)
    return 4.1868 - 0.0297 * percent + 4.6e-3 * percent + 7.5e-5 * percent * t


def feeder_loss_w_per_k(
    area_m2: ArrayLike, surface_w_per_m2_k: ArrayLike = 10.0, cushion_m2_k_per_w: ArrayLike = 0.0
) -> NDArray[np.float64]:
    r"""Conductance from syrup to the air round its feeder.

    .. math:: G = \frac{A}{1/h + R}

    ``area_m2``: surface of the feeder that looks at the air [m²]. ``surface_w_per_m2_k``:
    convection and radiation together: 8 to 10 in still air [W/(m² K)]. ``cushion_m2_k_per_w``:
    resistance of what is laid over and round it [m² K/W].

    References
    ----------
    .. [1] Resistances in series; the surface coefficient by ISO 6946 annex C. From memory.

    Examples
    --------
    >>> float(feeder_loss_w_per_k(0.1))
    1.0

    """
    area = within(area_m2, 0, 2, "The feeder's surface", "m²")
    surface = within(surface_w_per_m2_k, 1, 100, "The surface coefficient", "W/(m² K)")
    return area / (1 / surface + within(cushion_m2_k_per_w, 0, 20, "The cushion", "m² K/W"))


def syrup_temperature_c(
    hours: ArrayLike,
    *,
    start_c: ArrayLike,
    outside_c: ArrayLike,
    syrup_kg: ArrayLike,
    heat_capacity_kj_per_kg_k: ArrayLike,
    loss_w_per_k: ArrayLike,
    hive_c: ArrayLike = 20.0,
    to_hive_w_per_k: ArrayLike = 0.0,
) -> NDArray[np.float64]:
    r"""Temperature of syrup that has stood for some hours.

    .. math:: T = T_e + (T_0 - T_e) e^{-t (G_o + G_h) / (m c)}, \quad
       T_e = \frac{G_o T_o + G_h T_h}{G_o + G_h}

    ``start_c``, ``outside_c``, ``hive_c``: temperatures of the syrup at first, of the air, and
    below the crown board [°C]. ``loss_w_per_k``, ``to_hive_w_per_k``: conductance to the air and to
    the hive below [W/K].

    Notes
    -----
    One temperature for all the syrup: look at ``biot_number``; thick syrup lags inside.

    References
    ----------
    .. [1] Newton's law of cooling for a lump.

    Examples
    --------
    >>> warm = {"start_c": 40, "outside_c": 5, "syrup_kg": 2, "heat_capacity_kj_per_kg_k": 2.8}
    >>> float(syrup_temperature_c(3, **warm, loss_w_per_k=0.6).round(1))
    16.0

    """
    time = within(hours, 0, 2000, "The time", "h") * 3600
    first = celsius(start_c, "The syrup at first", 0, 80)
    air = celsius(outside_c, "The outside", -40, 45)
    hive = celsius(hive_c, "The hive below", -20, 40)
    out = within(loss_w_per_k, 0, 100, "The feeder's loss", "W/K")
    down = within(to_hive_w_per_k, 0, 100, "The conductance to the hive", "W/K")
    total = np.maximum(out + down, 1e-12)
    settled = (out * air + down * hive) / total
    mass = within(syrup_kg, 0.01, 60, "The syrup", "kg", remedy="Kilograms are meant, not litres.")
    capacity = within(heat_capacity_kj_per_kg_k, 1, 5, "The heat capacity", "kJ/(kg K)")
    return np.asarray(
        settled + (first - settled) * np.exp(-time * total / (1000 * mass * capacity))
    )


def biot_number(
    transfer_w_per_m2_k: ArrayLike, depth_mm: ArrayLike, conductivity_w_per_m_k: ArrayLike = 0.42
) -> NDArray[np.float64]:
    r"""Whether a body cools as one lump: resistance inside over that at its surface.

    .. math:: Bi = U L / \lambda

    Below 0.1 one temperature is a fair picture. [-]

    ``transfer_w_per_m2_k``: from the surface outwards, cushion included [W/(m² K)].
    ``conductivity_w_per_m_k``: of the body; 60 % sucrose 0.42, unmoved [W/(m K)].

    References
    ----------
    .. [1] F. P. Incropera et al., Fundamentals of Heat and Mass Transfer. From memory.

    Examples
    --------
    >>> float(biot_number(10, 25).round(2))
    0.6

    """
    transfer = within(transfer_w_per_m2_k, 0.01, 200, "The transfer", "W/(m² K)")
    depth = within(depth_mm, 0.1, 500, "The depth", "mm") / 1000
    return transfer * depth / within(conductivity_w_per_m_k, 0.01, 500, "The conductivity", "W/mK")

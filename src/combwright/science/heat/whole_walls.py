"""Whole walls: layers between standard surfaces, and layers bridged by wood (ISO 6946)."""

from collections.abc import Sequence

import numpy as np

from combwright.science.heat.surfaces import layer_resistance, transmittance
from combwright.terms.ranges import within


def wall_transmittance(
    layers: Sequence[tuple[float, float]], *, inner: float = 0.13, outer: float = 0.04
) -> float:
    """Thermal transmittance of a wall of solid layers with standard surfaces.

    Parameters
    ----------
    layers
        Thickness and conductivity of each. [mm], [W/(m K)]
    inner, outer
        Resistances of the surfaces. [m² K/W]

    Returns
    -------
    float
        U-value. [W/(m² K)]

    References
    ----------
    .. [1] ISO 6946:2017. From memory.

    Examples
    --------
    >>> round(wall_transmittance([(40, 0.036)]), 4)
    0.7806

    """
    solid = [layer_resistance(mm, conductivity) for mm, conductivity in layers]
    return float(transmittance([inner, *solid, outer]))


def bridged_transmittance(
    shares: Sequence[float], layers: Sequence[Sequence[float]]
) -> tuple[float, float, float]:
    r"""Transmittance of a wall whose layers are bridged, such as by rails or a frame of wood.

    The mean of two limits: heat that runs straight through each section,
    :math:`1/R' = \sum f_q / R_q`, and layers that share it evenly,
    :math:`R'' = \sum_j 1 / \sum_q (f_q / R_{qj})`.

    Parameters
    ----------
    shares
        Share of the area that each section takes; they make 1. [-]
    layers
        For each section the resistances of its layers and surfaces in order. [m² K/W]

    Returns
    -------
    tuple[float, float, float]
        U-value by the mean resistance, by the upper and by the lower limit. [W/(m² K)]

    References
    ----------
    .. [1] ISO 6946:2017, 6.7.2. From memory.

    Examples
    --------
    >>> [round(u, 3) for u in bridged_transmittance([0.2, 0.8], [[0.13, 0.5], [0.13, 1.0]])]
    [1.032, 1.025, 1.038]

    """
    f = within(shares, 0, 1, "A share of the area")
    within(f.sum(), 1 - 1e-9, 1 + 1e-9, "The sum of the shares")
    r = within(layers, 1e-6, 100, "The resistance of a layer", "m² K/W")
    upper = 1 / np.sum(f / r.sum(axis=1))
    lower = np.sum(1 / np.sum(f[:, None] / r, axis=0))
    mean = (upper + lower) / 2
    return float(1 / mean), float(1 / upper), float(1 / lower)

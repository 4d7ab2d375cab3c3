"""Heat through walls: surfaces, layers of air and solid layers (ISO 6946).

Directions are those of the heat: ``up`` through a crown board, ``down`` through a floor,
``horizontal`` through a side wall.
"""

from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

Direction = Literal["horizontal", "up", "down"]

STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m² K⁴), CODATA 2018, exact
ZERO_CELSIUS_K = 273.15
CONVECTION_INSIDE = {"horizontal": 2.5, "up": 5.0, "down": 0.7}  # W/(m² K), ISO 6946 annex C
AIR_LAYER_LEAST = {"horizontal": 1.25, "up": 1.95}  # W/(m² K), ISO 6946 annex D
EMISSIVITY = 0.9  # of wood, plastic, wax: the standard's value where none is known


def radiative_coefficient(temperature_c: ArrayLike) -> NDArray[np.float64]:
    r"""Heat exchanged by radiation between black surfaces of nearly the same temperature.

    .. math:: h_{r0} = 4 \sigma T^3

    The unit is W/(m² K).

    References
    ----------
    .. [1] ISO 6946:2017, annex C. Formula from memory; 5.15 at 10 °C computed.

    Examples
    --------
    >>> float(radiative_coefficient(10).round(2))
    5.15

    """
    kelvin = celsius(temperature_c, "The temperature", -60, 80) + ZERO_CELSIUS_K
    return 4 * STEFAN_BOLTZMANN * kelvin**3


def inner_surface_resistance(
    direction: Direction, temperature_c: ArrayLike = 20.0
) -> NDArray[np.float64]:
    r"""Resistance between still air and an inner surface.

    .. math:: R_{si} = \frac{1}{h_{ci} + \epsilon h_{r0}}

    It is 0.13, 0.10 and 0.17 for horizontal, up and down. [m² K/W]

    References
    ----------
    .. [1] ISO 6946:2017, table 7 (read, second-hand) and annex C (from memory).

    Examples
    --------
    >>> float(inner_surface_resistance("horizontal").round(2))
    0.13

    """
    return 1 / (CONVECTION_INSIDE[direction] + EMISSIVITY * radiative_coefficient(temperature_c))


def outer_surface_resistance(
    wind_m_s: ArrayLike = 4.0, temperature_c: ArrayLike = 10.0
) -> NDArray[np.float64]:
    r"""Resistance between an outer surface and the air.

    .. math:: R_{se} = \frac{1}{4 + 4 v + \epsilon h_{r0}}

    It is 0.04 at 4 m/s. [m² K/W]

    References
    ----------
    .. [1] ISO 6946:2017, table 7 (read, second-hand) and annex C (from memory).

    Examples
    --------
    >>> float(outer_surface_resistance(4).round(3))
    0.041

    """
    wind = within(wind_m_s, 0, 60, "The wind", "m/s")
    return 1 / (4 + 4 * wind + EMISSIVITY * radiative_coefficient(temperature_c))


def air_layer_resistance(
    thickness_mm: ArrayLike,
    direction: Direction,
    *,
    emissivities: tuple[float, float] = (EMISSIVITY, EMISSIVITY),
    temperature_c: ArrayLike = 10.0,
) -> NDArray[np.float64]:
    r"""Resistance of a closed layer of air. [m² K/W].

    .. math:: R = \frac{1}{h_a + E h_{r0}}, \quad E = \frac{1}{1/\epsilon_1 + 1/\epsilon_2 - 1}

    with :math:`h_a = \max(1.25, 0.025/d)` horizontal, :math:`\max(1.95, 0.025/d)` up,
    :math:`\max(0.12 d^{-0.44}, 0.025/d)` down; d in metres.

    ``emissivities``: of the two faces; foil about 0.05 when clean, 0.2 to 0.9 when dusty or
    propolised [-].

    Notes
    -----
    Valid for layers thinner than 0.3 m and a difference of up to 5 K over the layer.

    References
    ----------
    .. [1] ISO 6946:2017, annex D and table 8. From memory; every entry of the table is
       reproduced, and a 13 mm layer agrees with an Australian industry table (read) to 2 %.

    Examples
    --------
    >>> float(air_layer_resistance(25, "up").round(2))
    0.16

    """
    metres = within(thickness_mm, 0.5, 300, "The thickness", "mm") / 1000
    first, second = (within(e, 0.01, 1, "The emissivity") for e in emissivities)
    between = 1 / (1 / first + 1 / second - 1)
    least = 0.12 * metres**-0.44 if direction == "down" else AIR_LAYER_LEAST[direction]
    convection = np.maximum(least, 0.025 / metres)
    return 1 / (convection + between * radiative_coefficient(temperature_c))


def layer_resistance(
    thickness_mm: ArrayLike, conductivity_w_per_m_k: ArrayLike
) -> NDArray[np.float64]:
    r"""Resistance of a solid layer. [m² K/W].

    .. math:: R = d / \lambda

    References
    ----------
    .. [1] ISO 6946:2017, 6.7.1. From memory.

    Examples
    --------
    >>> float(layer_resistance(19, 0.13).round(4))
    0.1462

    """
    metres = within(thickness_mm, 0, 1000, "The thickness", "mm") / 1000
    return metres / within(conductivity_w_per_m_k, 0.01, 500, "The conductivity", "W/(m K)")

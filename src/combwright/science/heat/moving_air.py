"""Heat that moves with air, along combs and from a lump: flow by buoyancy, fins, cooling."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.heat.surfaces import ZERO_CELSIUS_K
from combwright.terms.ranges import within
from combwright.terms.temperatures import celsius

GRAVITY = 9.80665  # m/s², standard
AIR_HEAT_J_PER_M3_K = 1.2 * 1005.0  # density and heat capacity of air at 20 °C


def openings_in_series(first_cm2: ArrayLike, second_cm2: ArrayLike) -> NDArray[np.float64]:
    r"""Area of one opening that lets through what two in series do. [cm²].

    .. math:: A = (A_1^{-2} + A_2^{-2})^{-1/2}

    References
    ----------
    .. [1] ASHRAE Handbook of Fundamentals, ventilation chapter. From memory.

    Examples
    --------
    >>> float(openings_in_series(20, 20).round(2))
    14.14

    """
    first = within(first_cm2, 0, 5000, "The first opening", "cm²")
    second = within(second_cm2, 0, 5000, "The second opening", "cm²")
    both = np.hypot(first, second)
    return np.divide(first * second, both, out=np.zeros_like(both), where=both > 0)


def stack_flow_l_per_s(
    opening_cm2: ArrayLike,
    height_m: ArrayLike,
    inside_c: ArrayLike,
    outside_c: ArrayLike,
    discharge: ArrayLike = 0.6,
) -> NDArray[np.float64]:
    r"""Flow of air that buoyancy drives through a low and a high opening.

    .. math:: Q = C_d A \sqrt{2 g h (T_i - T_o) / T_i}

    None flows when it is not warmer inside.

    ``opening_cm2``: area of the opening, or of two in series [cm²]. ``height_m``: from the middle
    of the flow's lower opening to the upper one [m].

    References
    ----------
    .. [1] ASHRAE Handbook of Fundamentals, ventilation chapter, eq. 37 (read, second-hand).

    Examples
    --------
    >>> float(stack_flow_l_per_s(20, 0.25, 20, 5).round(3))
    0.601

    """
    area = within(opening_cm2, 0, 5000, "The opening", "cm²") / 1e4
    height = within(height_m, 0, 5, "The height", "m")
    inside = celsius(inside_c, "The temperature inside", -40, 50) + ZERO_CELSIUS_K
    outside = celsius(outside_c, "The temperature outside", -40, 50) + ZERO_CELSIUS_K
    lift = np.maximum(inside - outside, 0) / inside
    share = within(discharge, 0, 1, "The discharge coefficient")
    return 1000 * share * area * np.sqrt(2 * GRAVITY * height * lift)


def exchange_flow_l_per_s(
    width_mm: ArrayLike, height_mm: ArrayLike, inside_c: ArrayLike, outside_c: ArrayLike
) -> NDArray[np.float64]:
    r"""Flow both ways through one upright opening: warm air out above, cold in below.

    .. math:: Q = \frac{C_d}{3} A \sqrt{g H \Delta T / T}

    References
    ----------
    .. [1] W. G. Brown and K. R. Solvason, Int. J. Heat Mass Transfer 5:859 (1962),
       doi 10.1016/0017-9310(62)90184-9. From memory.

    Examples
    --------
    >>> float(exchange_flow_l_per_s(100, 22, 15, 5).round(3))
    0.038

    """
    wide = within(width_mm, 0, 2000, "The width", "mm") / 1000
    high = within(height_mm, 0, 1000, "The height", "mm") / 1000
    inside = celsius(inside_c, "The temperature inside", -40, 50) + ZERO_CELSIUS_K
    outside = celsius(outside_c, "The temperature outside", -40, 50) + ZERO_CELSIUS_K
    lift = np.maximum(inside - outside, 0) / ((inside + outside) / 2)
    return 1000 * 0.6 / 3 * wide * high * np.sqrt(GRAVITY * high * lift)


def air_conductance(flow_l_per_s: ArrayLike) -> NDArray[np.float64]:
    r"""Heat that a flow of air carries off for each degree it is warmed. [W/K].

    .. math:: G = \rho c_p Q

    References
    ----------
    .. [1] Air at 20 °C: 1.2 kg/m³ and 1005 J/(kg K). From memory; CoolProp agrees to 1 %.

    Examples
    --------
    >>> float(air_conductance(1).round(3))
    1.206

    """
    return within(flow_l_per_s, 0, 1000, "The flow of air", "L/s") * (AIR_HEAT_J_PER_M3_K / 1000)


def in_series(first: ArrayLike, second: ArrayLike) -> NDArray[np.float64]:
    """Conductance of two one after the other; none when either lets nothing through. [W/K].

    References
    ----------
    .. [1] Resistances in series add.

    Examples
    --------
    >>> float(in_series(1, 1))
    0.5

    """
    one = within(first, 0, 1e6, "The first conductance", "W/K")
    two = within(second, 0, 1e6, "The second conductance", "W/K")
    total = one + two
    return np.divide(one * two, total, out=np.zeros_like(total), where=total > 0)


def fin_conductance(
    length_m: ArrayLike,
    along_w_m_per_k: ArrayLike,
    sideways_w_per_m_k: ArrayLike,
    end_w_per_k: ArrayLike,
) -> NDArray[np.float64]:
    r"""Conductance into a strip that leaks along its length and at its end.

    .. math:: G = G_c \frac{G_e + G_c \tanh mL}{G_c + G_e \tanh mL},
       \quad G_c = \sqrt{k g}, \quad m = \sqrt{g / k}

    Here the strip is the combs without bees between the nest and the wall or board.

    It leads from the near end to the outside. [W/K]

    ``sideways_w_per_m_k``: loss to the outside for each metre [W/(m K)]. ``end_w_per_k``: loss at
    the far end [W/K].

    References
    ----------
    .. [1] F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, fins of uniform
       cross-section, convective tip. From memory; the limits of no length and of great length
       are tested.

    Examples
    --------
    >>> float(fin_conductance(0.0, 0.02, 1.0, 0.4))
    0.4

    """
    length = within(length_m, 0, 5, "The length", "m")
    along = within(along_w_m_per_k, 1e-9, 1e3, "The conductance along", "W m/K")
    sideways = within(sideways_w_per_m_k, 1e-9, 1e3, "The loss along the way", "W/(m K)")
    end = within(end_w_per_k, 0, 1e6, "The loss at the end", "W/K")
    own = np.sqrt(along * sideways)
    bend = np.tanh(length * np.sqrt(sideways / along))
    return np.asarray(own * (end + own * bend) / (own + end * bend))

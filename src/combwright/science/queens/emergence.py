"""When a queen emerges, by the warmth of her cell."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.queens.queen_clock import AGE, Start
from combwright.terms.data_files import parameter
from combwright.terms.ranges import within

EMERGES_AFTER_H = parameter("science/queens", "emerges_after_h")
NEST_C = parameter("science/queens", "nest_c")
LATER_PER_K_H = parameter("science/queens", "later_per_k_h")
HOURS_A_DAY = 24.0


def emergence_h(brood_c: ArrayLike = NEST_C.value) -> NDArray[np.float64]:
    r"""Hours from the egg to the emerged queen.

    .. math:: t = 385 + 10.8\,(34.5 - T)

    ``brood_c``: mean warmth of the cell while it is sealed, 32 to 35 °C. [°C]

    References
    ----------
    .. [1] D. Chuda-Mickiewicz, J. Samborski, Acta Sci. Pol. Zootechnica 14(4), 25-32, 2015: 385 h
       at 34.5 °C and 412 h at 32 °C (read); the line between them is ours.

    Examples
    --------
    >>> round(float(emergence_h(33.5)), 1)
    395.8

    """
    t = within(brood_c, 32, 35, "The warmth of the cell", "°C")
    return np.asarray(EMERGES_AFTER_H.value + LATER_PER_K_H.value * (NEST_C.value - t))


def emergence_window_h(
    start: Start = "graft", brood_c: float = NEST_C.value
) -> tuple[float, float]:
    """Hours from day 0 to the first and to the last queen of a batch.

    They differ by what is not known of the age on day 0: a larva of 12 to 24 hours.

    Examples
    --------
    >>> emergence_window_h("graft"), tuple(round(h) for h in emergence_window_h("graft", 32.0))
    ((289.0, 301.0), (316, 328))

    """
    hours, age = float(emergence_h(brood_c)), AGE[start]
    return hours - HOURS_A_DAY * age.high, hours - HOURS_A_DAY * age.low

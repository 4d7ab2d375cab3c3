"""Weather for mating flights."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.data_files import parameter
from combwright.terms.ranges import within

NO_FLIGHT_BELOW_C = parameter("science/queens", "no_flight_below_c")
FULL_FLIGHT_ABOVE_C = parameter("science/queens", "full_flight_above_c")
DRY_BELOW_MM = parameter("science/queens", "dry_below_mm")


def flight_chance(
    temperature_c: ArrayLike,
    rain_mm: ArrayLike = 0.0,
    sun: ArrayLike = 1.0,
    calm: ArrayLike = 1.0,
) -> NDArray[np.float64]:
    r"""Chance that a virgin can make a mating flight on a day.

    .. math:: p = \mathrm{clip}\bigl((T - 16)/4,\, 0,\, 1\bigr)\; s_{sun}\, s_{wind}\, [rain < 1]

    ``temperature_c``: air temperature in the early afternoon, about 14 h [°C]. ``sun``, ``calm``:
    factors for sunshine and for lack of wind, 0 to 1.

    Notes
    -----
    No mating curve has been published. The ramp is an assumption of ours, between the trade's
    16-18 °C for local strains and the 20 °C of [1]_.

    References
    ----------
    .. [1] COLOSS BEEBOOK, behaviour chapter, section 13.2 (read): above 20 °C, some blue sky,
       little wind.

    Examples
    --------
    >>> flight_chance([15, 18, 22], rain_mm=0).tolist()
    [0.0, 0.5, 1.0]

    """
    t = within(temperature_c, -60, 55, "The temperature", "°C", remedy="Is it in Fahrenheit?")
    width = FULL_FLIGHT_ABOVE_C.value - NO_FLIGHT_BELOW_C.value
    warm = np.clip((t - NO_FLIGHT_BELOW_C.value) / width, 0, 1)
    dry = within(rain_mm, 0, 1000, "The rain", "mm") < DRY_BELOW_MM.value
    factors = within(sun, 0, 1, "The sun factor") * within(calm, 0, 1, "The calm factor")
    return np.asarray(warm * dry * factors)

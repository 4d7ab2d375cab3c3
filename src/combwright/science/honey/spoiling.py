"""Whether honey ferments."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.honey.moisture import water_within
from combwright.terms.ranges import within

WATER_STEPS = np.array([17.0, 18.0, 19.0, 20.0])
YEASTS_ALLOWED = np.array([np.inf, 1000.0, 10.0, 1.0, 0.0])


def yeasts_allowed_per_g(water_percent: ArrayLike) -> NDArray[np.float64]:
    """Count of yeasts that honey must stay below to keep for a year without fermenting.

    Any count is safe up to 17.0 % (infinity), below 1000 per gram up to 18.0 %, below 10 up to
    19.0 %, below 1 up to 20.0 %, and none above.

    ``water_percent``: water, 11 to 30, taken to one decimal as the table does [g per 100 g].

    References
    ----------
    .. [1] A. G. Lochhead, "Factors concerned with the fermentation of honey", Zentralblatt für
       Bakteriologie II 88, 296-302, 1933; table read second-hand.

    Examples
    --------
    >>> float(yeasts_allowed_per_g(18.5))
    10.0

    """
    water = np.round(water_within(water_percent), 1)
    return np.asarray(YEASTS_ALLOWED[np.searchsorted(WATER_STEPS, water)], dtype=np.float64)


def ferments(water_percent: ArrayLike, yeasts_per_g: ArrayLike) -> NDArray[np.bool_]:
    """Whether honey is at risk of fermenting.

    Examples
    --------
    >>> bool(ferments(18.5, 50)), bool(ferments(17.0, 1e6))
    (True, False)

    """
    yeasts = within(yeasts_per_g, 0.0, 1e9, "The count of yeasts", "per gram")
    return np.asarray(yeasts >= yeasts_allowed_per_g(water_percent), dtype=np.bool_)

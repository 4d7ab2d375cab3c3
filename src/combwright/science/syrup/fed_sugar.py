"""What fed sugar becomes: stores."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.data_files import parameter
from combwright.terms.ranges import within

INVERSION_GAIN = parameter("science/syrup", "inversion_gain")
STORES_SUGAR = parameter("science/syrup", "stores_sugar")


def stores_kg(
    sugar_kg: ArrayLike, stores_sugar: ArrayLike = STORES_SUGAR.value, *, inverted: bool = False
) -> NDArray[np.float64]:
    """Sealed stores that bees can make of fed sugar, before what they burn to do it.

    ``stores_sugar``: sugar in the finished stores, 0.75 to 0.87 [kg/kg]. ``inverted``: whether the
    water that sucrose takes up when it inverts is counted as sugar. The usual rule leaves it out,
    which roughly pays for what the bees burn.

    Examples
    --------
    >>> float(stores_kg(1))
    1.25

    """
    sugar = within(sugar_kg, 0.0, 1e6, "The sugar", "kg")
    share = within(stores_sugar, 0.75, 0.87, "The sugar in stores")
    gain = INVERSION_GAIN.value if inverted else 1.0
    return np.asarray(sugar * gain / share, dtype=np.float64)

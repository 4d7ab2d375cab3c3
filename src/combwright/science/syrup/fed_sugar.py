"""What fed sugar becomes: stores."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

INVERSION_GAIN = Parameter(
    1.0526,
    "kg/kg",
    1.0526,
    1.0527,
    "Sucrose takes up one water to invert: 360.3 / 342.3",
    "computed",
)
STORES_SUGAR = Parameter(
    0.8, "share", 0.79, 0.83, "Sealed stores hold 0.8 sugar; the usual divisor", "common practice"
)


def stores_kg(
    sugar_kg: ArrayLike, stores_sugar: ArrayLike = STORES_SUGAR.value, *, inverted: bool = False
) -> NDArray[np.float64]:
    """Sealed stores that bees can make of fed sugar, before what they burn to do it.

    Parameters
    ----------
    stores_sugar
        Sugar in the finished stores, 0.75 to 0.87. [kg/kg]
    inverted
        Whether the water that sucrose takes up when it inverts is counted as sugar. The usual
        rule leaves it out, which roughly pays for what the bees burn.

    Examples
    --------
    >>> float(stores_kg(1))
    1.25

    """
    sugar = within(sugar_kg, 0.0, 1e6, "The sugar", "kg")
    share = within(stores_sugar, 0.75, 0.87, "The sugar in stores")
    gain = INVERSION_GAIN.value if inverted else 1.0
    return np.asarray(sugar * gain / share, dtype=np.float64)

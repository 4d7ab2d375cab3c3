"""Two ways to count the same: frames filled or combs with brood, frames covered or seams.

Who counts combs with any brood in them counts more than the frames that they would fill; who
counts seams, more than the frames that are covered. What is counted is turned from one into the
other by a curve, with an error of its own; how a keeper differs from the curve is learned.
"""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.numbers import row

Floats = NDArray[np.float64]
# The other way of counting, by the field of a visit that holds frames.
OTHER: Final = {"frames_of_bees": "seams_of_bees", "frames_of_brood": "combs_with_brood"}
CURVE: Final = {
    "seams_of_bees": row("seams_of_covered"),
    "combs_with_brood": row("combs_of_filled"),
}


def counted(name: str, frames: Floats) -> Floats:
    """Give what is counted the other way where so many frames are covered or filled.

    Examples
    --------
    >>> counted("combs_with_brood", np.array([1.0, 5.0])).tolist()
    [3.0, 7.2]

    """
    curve = CURVE[name]
    return np.asarray(np.interp(frames, list(curve), list(curve.values())))


def in_frames(name: str, seen: float) -> float:
    """Give the frames covered or filled where so much was counted the other way.

    Examples
    --------
    >>> in_frames("seams_of_bees", 6.0)
    5.0

    """
    curve = CURVE[name]
    return float(np.interp(seen, list(curve.values()), list(curve)))

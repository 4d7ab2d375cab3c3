"""How well a treatment worked, from two counts of one colony."""

import numpy as np

from combwright.terms.ranges import within


def efficacy_without_control(before: float, after: float, rate: float, days: float) -> float:
    r"""Efficacy from two counts of one colony, less the growth to be expected. [%].

    .. math:: 100 \left(1 - \frac{M_a}{M_b e^{rt}}\right)

    ``before``, ``after``: mites before and after, by the same method [mites]. ``rate``: growth to
    be expected without treatment [per day].

    References
    ----------
    .. [1] Exponential growth, computed.

    Examples
    --------
    >>> efficacy_without_control(100, 10, 0.0, 30)
    90.0

    """
    start = within(before, 1e-9, 1e7, "Mites before")
    growth = within(rate, -1, 1, "The growth rate", "per day") * within(days, 0, 400, "The time")
    return float(100 * (1 - within(after, 0, 1e7, "Mites after") / (start * np.exp(growth))))

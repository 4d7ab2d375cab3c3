"""Sunshine as a normal quantity that cannot fall below none or rise above all of the daylight."""

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr

Floats = NDArray[np.float64]


def censored(mean: Floats, sd: Floats, most: Floats) -> tuple[Floats, Floats]:
    """Give mean and standard deviation of a normal quantity cut off at 0 and at ``most``.

    Examples
    --------
    >>> [float(v.round(3)) for v in censored(np.array(0.0), np.array(1.0), np.array(100.0))]
    [0.399, 0.584]

    """
    low, high = -mean / sd, (most - mean) / sd
    inside = ndtr(high) - ndtr(low)
    at_low, at_high = _density(low), _density(high)
    above = 1 - ndtr(high)
    first = mean * inside + sd * (at_low - at_high) + most * above
    second = (
        (mean**2 + sd**2) * inside
        + sd * mean * (at_low - at_high)
        + sd * (0 * at_low - most * at_high)
        + most**2 * above
    )
    return first, np.sqrt(np.maximum(second - first**2, 1e-12))


def uncensored(mean: Floats, sd: Floats, most: Floats) -> tuple[Floats, Floats]:
    """Find the normal quantity that has the given mean and deviation once it is cut off.

    Sunless days are then as common as a normal quantity makes them, and means and deviations of
    the station are met. Found by repeated correction.

    Examples
    --------
    >>> found = uncensored(np.array(4.3), np.array(3.5), np.array(15.6))
    >>> [float(v.round(3)) for v in censored(*found, np.array(15.6))]
    [4.3, 3.5]

    """
    inner_mean, inner_sd = np.array(mean), np.array(sd)
    for _ in range(200):
        got_mean, got_sd = censored(inner_mean, inner_sd, most)
        inner_mean = inner_mean + (mean - got_mean)
        inner_sd = inner_sd * sd / got_sd
    return inner_mean, inner_sd


def _density(at: Floats) -> Floats:
    return np.asarray(np.exp(-0.5 * at**2) / np.sqrt(2 * np.pi))

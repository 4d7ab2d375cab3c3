"""Weights of ensemble members, kept as logarithms, and resampling."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Weights:
    """Weights of members, kept as logarithms so that they never underflow."""

    log: Floats

    @classmethod
    def even(cls, count: int) -> "Weights":
        """Every member counts the same."""
        return cls(np.full(count, -np.log(count)))

    def times(self, log_likelihood: Floats) -> "Weights":
        """Multiply by a likelihood; the sum of the result is the evidence."""
        return Weights(self.log + log_likelihood)

    @cached_property
    def log_sum(self) -> float:
        """Logarithm of the sum of the weights."""
        top = float(self.log.max())
        if not np.isfinite(top):
            return -np.inf
        return top + float(np.log(np.exp(self.log - top).sum()))

    @cached_property
    def normal(self) -> Floats:
        """Weights that sum to one; even ones where nothing explains what was seen."""
        if not np.isfinite(self.log_sum):
            return np.full(len(self.log), 1.0 / len(self.log))
        return np.asarray(np.exp(self.log - self.log_sum))

    @property
    def effective(self) -> float:
        """How many evenly weighted members would say as much (Kong, Liu & Wong 1994)."""
        return float(1.0 / np.square(self.normal).sum())


def systematic(weights: Floats, count: int, position: float) -> NDArray[np.intp]:
    """Pick ancestors by systematic resampling.

    Parameters
    ----------
    weights
        Weights that sum to one, [member].
    count
        How many to pick.
    position
        One uniform number in [0, 1).

    References
    ----------
    .. [1] N. Chopin and O. Papaspiliopoulos, "An Introduction to Sequential Monte Carlo",
       Springer, 2020, ch. 9 (from memory).

    Examples
    --------
    >>> systematic(np.array([0.1, 0.2, 0.3, 0.4]), 4, 0.5).tolist()
    [1, 2, 3, 3]

    """
    points = (position + np.arange(count)) / count
    ladder = np.cumsum(weights)
    ladder[-1] = 1.0
    return np.minimum(np.searchsorted(ladder, points), len(weights) - 1)


def quantiles(values: Floats, weights: Floats, shares: tuple[float, ...]) -> list[float]:
    """Quantiles of weighted values.

    Examples
    --------
    >>> quantiles(np.array([1.0, 2.0, 3.0]), np.array([0.2, 0.6, 0.2]), (0.5,))
    [2.0]

    """
    order = np.argsort(values, kind="stable")
    ladder = np.cumsum(weights[order]) - 0.5 * weights[order]
    return [float(np.interp(share, ladder, values[order])) for share in shares]

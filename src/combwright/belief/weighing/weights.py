"""Weights of ensemble members, kept as logarithms, and resampling."""

from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
HALVINGS: Final = 10  # to a thousandth of the note
LEAST_PART: Final = 1e-3  # of a note that is taken in at once, so that it comes to an end


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

    The weights sum to one; ``position`` is one uniform number in [0, 1).

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


@dataclass(frozen=True)
class Picked:
    """Whom a note left: ancestors among those offered, their weights, and the evidence."""

    ancestors: NDArray[np.intp]
    weights: Floats
    log_evidence: float


def pick(log_prior: Floats, log_likelihood: Floats, count: int, position: float) -> Picked:
    """Weigh those offered by what was seen, and resample: one step of a bootstrap filter.

    The prior weights sum to one, [offered]; they alone pick where nothing explains what was seen.

    References
    ----------
    .. [1] N. Gordon, D. Salmond and A. Smith, IEE Proc. F 140, 107-113, 1993,
       doi:10.1049/ip-f-2.1993.0015 (from memory).

    Examples
    --------
    >>> even = Weights.even(2).log
    >>> pick(even, np.log(np.array([0.2, 0.6])), 4, 0.5).ancestors.tolist()
    [0, 1, 1, 1]

    """
    heard = np.where(np.isnan(log_likelihood), -np.inf, log_likelihood)
    weights = Weights(log_prior).times(heard)
    evidence = weights.log_sum
    if not np.isfinite(evidence):
        weights = Weights(log_prior)
    ancestors = systematic(weights.normal, count, position)
    return Picked(ancestors, weights.normal, evidence)


def gentle_share(log_prior: Floats, log_likelihood: Floats, least: float) -> float:
    """Find the largest share of a note that leaves as many effective members as are wanted.

    It is the power of the likelihood, 0 to 1, bisected to about a thousandth.

    References
    ----------
    .. [1] A. Jasra, D. Stephens, A. Doucet and T. Tsagaris, Scand. J. Stat. 38, 1-22, 2011,
       doi:10.1111/j.1467-9469.2010.00723.x (adaptive tempering; from memory).

    """
    prior = Weights(log_prior)

    def effective(share: float) -> float:
        return prior.times(share * log_likelihood).effective

    if effective(1.0) >= least:
        return 1.0
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if effective(middle) >= least else (low, middle)
    return max(low, LEAST_PART)


def moved_apart(
    values: Floats, shrink: float, rng: np.random.Generator, *, wider: float = 0.0
) -> Floats:
    r"""Move members apart after resampling, so that means and covariances stay what they were.

    .. math:: x' = a x + (1 - a) \bar x + \sqrt{1 + w - a^2}\, S^{1/2} \epsilon

    Quantities are [member, quantity]; *a* (``shrink``) lies just below 1, *w* (``wider``) is the
    share by which variances grow after all.

    References
    ----------
    .. [1] J. Liu and M. West, in "Sequential Monte Carlo Methods in Practice", Springer, 2001,
       doi:10.1007/978-1-4757-3437-9_10 (kernel shrinkage; from memory).

    """
    middle = values.mean(axis=0)
    apart = values - middle
    variances, axes = np.linalg.eigh(apart.T @ apart / len(values))
    root = axes * np.sqrt(np.maximum(variances, 0.0))
    jitter = rng.standard_normal(values.shape) @ root.T
    return np.asarray(middle + shrink * apart + np.sqrt(1.0 + wider - shrink**2) * jitter)


def quantiles(values: Floats, weights: Floats, shares: tuple[float, ...]) -> list[float]:
    """Quantiles of weighted values.

    Examples
    --------
    >>> quantiles(np.array([1.0, 2.0, 3.0]), np.array([0.2, 0.6, 0.2]), (0.5,))
    [2.0]

    """
    order = np.argsort(values, kind="stable")
    ladder = np.cumsum(weights[order]) - 0.5 * weights[order]
    found: list[float] = np.interp(shares, ladder, values[order]).tolist()
    return found

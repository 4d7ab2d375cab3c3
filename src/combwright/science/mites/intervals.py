"""Exact intervals of counts, worked out without SciPy so that a count is answered in a blink."""

from collections.abc import Callable
from dataclasses import dataclass
from math import exp, lgamma, log, sqrt
from statistics import NormalDist

from combwright.terms.ranges import within

_HALVINGS = 60
_EXACT_UP_TO = 1000  # above, the cube-root approximation is right to a hundred-thousandth


@dataclass(frozen=True, slots=True)
class Estimate:
    """A count, share or number of mites, and the range it may lie in."""

    low: float
    mid: float
    high: float

    def holds(self, number: float) -> bool:
        """Tell whether a number lies within the range."""
        return self.low <= number <= self.high


def _solve(rising: Callable[[float], float], target: float, high: float) -> float:
    """Find where a rising function meets a target, by halving."""
    low = 0.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if rising(middle) < target:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _poisson_above(count: int, mean: float) -> float:
    """Chance of more than ``count`` events."""
    if mean == 0:
        return 0.0
    logs = (k * log(mean) - mean - lgamma(k + 1) for k in range(count + 1))
    return 1 - sum(exp(each) for each in logs)


def _cube_root_limit(count: int, z: float) -> float:
    return float(count * (1 - 1 / (9 * count) + z / (3 * sqrt(count))) ** 3)


def poisson_interval(count: int, level: float = 0.95) -> Estimate:
    r"""Exact interval of the mean behind a count of rare things.

    .. math::
       P(X \ge n \mid \mu_{low}) = \tfrac{\alpha}{2}, \qquad
       P(X \le n \mid \mu_{high}) = \tfrac{\alpha}{2}

    ``count``: what was counted :math:`n` [-]. ``level``: coverage :math:`1 - \alpha` [-].

    Notes
    -----
    Counts above 1000 use the cube-root limits of Wilson and Hilferty.

    References
    ----------
    .. [1] F. Garwood, Biometrika 28:437-442, 1936 (from memory); checked against the
       chi-squared quantiles of SciPy in the tests.
    .. [2] E. B. Wilson and M. M. Hilferty, PNAS 17:684-688, 1931 (from memory).

    Examples
    --------
    >>> limits = poisson_interval(6)
    >>> round(limits.low, 2), round(limits.high, 2)
    (2.2, 13.06)

    """
    n = int(within(count, 0, 1e7, "The count"))
    tail = (1 - float(within(level, 0.5, 0.999, "The level", remedy="Give 95 % as 0.95."))) / 2
    if n > _EXACT_UP_TO:
        z = NormalDist().inv_cdf(1 - tail)
        return Estimate(_cube_root_limit(n, -z), float(n), _cube_root_limit(n + 1, z))
    top = n + 20 + 8 * sqrt(n + 1)
    low = _solve(lambda mean: _poisson_above(n - 1, mean), tail, top) if n else 0.0
    return Estimate(low, float(n), _solve(lambda mean: _poisson_above(n, mean), 1 - tail, top))

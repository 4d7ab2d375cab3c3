"""Our filter's own steps on linear Gaussian toys, whose answers are known exactly.

References
----------
.. [1] J. Durbin and S. J. Koopman, "Time Series Analysis by State Space Methods", 2nd ed., Oxford,
   2012 (Nile; variances from memory). All values computed with plain numpy, filterpy and particles.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief.weighing.weights import Weights, pick

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Linear:
    """State x' = F x + N(0, Q), note y = H x + N(0, R), start N(m, P)."""

    step: Floats
    noise: Floats
    look: Floats
    error: float
    middle: Floats
    spread: Floats
    seen: Floats
    moves_first: bool = False  # whether the state moves before the first note


@dataclass(frozen=True)
class Found:
    """Evidence, and mean and covariance after each note."""

    log_evidence: float
    means: Floats
    covariances: Floats


def bootstrap(toy: Linear, members: int, seed: int) -> Found:
    """Follow a toy with the step that the colonies' belief is made of."""
    rng = np.random.default_rng(seed)
    x = rng.multivariate_normal(toy.middle, toy.spread, members)
    zero = np.zeros(len(toy.middle))
    evidence, means, covariances = 0.0, [], []
    for number, y in enumerate(toy.seen):
        if number or toy.moves_first:
            x = x @ toy.step.T + rng.multivariate_normal(zero, toy.noise, members)
        misfit = y - x @ toy.look
        log_likelihood = -0.5 * misfit**2 / toy.error - 0.5 * np.log(2 * np.pi * toy.error)
        if np.isnan(y):
            log_likelihood = np.zeros(members)
        picked = pick(Weights.even(members).log, log_likelihood, members, float(rng.random()))
        evidence += picked.log_evidence
        means.append(picked.weights @ x)
        covariances.append(np.cov(x.T, aweights=picked.weights, ddof=0).reshape(len(zero), -1))
        x = x[picked.ancestors]
    return Found(evidence, np.array(means), np.array(covariances))


def one(value: float) -> Floats:
    """Give a matrix of one number."""
    return np.array([[value]])


AR1: Final = Linear(
    one(0.9),
    one(0.25),
    np.array([1.0]),
    0.16,
    np.array([0.0]),
    one(0.25 / 0.19),
    np.array([0.5, -0.3, 1.2, 0.8, 2.1, 1.4, 0.9, 1.7, 2.4, 1.1]),
)
TREND: Final = Linear(
    np.array([[1.0, 1.0], [0.0, 1.0]]),
    np.diag([0.04, 0.01]),
    np.array([1.0, 0.0]),
    0.09,
    np.array([20.0, 0.0]),
    np.diag([1.0, 0.25]),
    np.array([20.0, 20.4, np.nan, 21.5, 21.9, 23.0, 23.1, np.nan, 23.9, 23.6]),
)

# Annual flow of the Nile at Aswan 1871-1970, in 1e8 m³: Cobb 1978; Durbin & Koopman 2012.
NILE_SEEN: Final = """
1120 1160 963 1210 1160 1160 813 1230 1370 1140 995 935 1110 994 1020 960 1180 799 958 1140 1100
1210 1150 1250 1260 1220 1030 1100 774 840 874 694 940 833 701 916 692 1020 1050 969 831 726 456
824 702 1120 1100 832 764 821 768 845 864 862 698 845 744 796 1040 759 781 865 845 944 984 897 822
1010 771 676 649 846 812 742 801 1040 860 874 848 890 744 749 838 1050 918 986 797 923 975 815 1020
906 901 1170 912 746 919 718 714 740
"""
NILE: Final = Linear(
    one(1.0),
    one(1469.1),
    np.array([1.0]),
    15099.0,
    np.array([1120.0]),
    one(15099.0),
    np.array([float(word) for word in NILE_SEEN.split()][1:]),
    moves_first=True,
)
TOYS: Final = {"ar1": AR1, "trend with gaps": TREND, "nile": NILE}


def mean_log_evidence(toy: str, members: int, runs: int) -> float:
    """Logarithm of the mean evidence of some runs, which is unbiased before the logarithm.

    Examples
    --------
    >>> abs(mean_log_evidence("ar1", 1000, 20) + 12.975316) < 0.15
    True

    """
    logs = np.array([bootstrap(TOYS[toy], members, seed).log_evidence for seed in range(runs)])
    return float(logs.max() + np.log(np.exp(logs - logs.max()).mean()))


def last_mean(toy: str, members: int, runs: int) -> float:
    """Mean of the first quantity after the last note, over some runs."""
    return float(np.mean([bootstrap(TOYS[toy], members, n).means[-1, 0] for n in range(runs)]))

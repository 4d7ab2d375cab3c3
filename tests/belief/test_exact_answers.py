"""The steps of our filter against the Kalman filter, which is exact for these toys.

Sources: filterpy 2 (R. Labbe); values computed with plain numpy, filterpy and particles, which
agree to all digits; Nile: J. Durbin and S. J. Koopman, "Time Series Analysis by State Space
Methods", 2012 (variances from memory, likelihood computed).
"""

import numpy as np
import pytest
from filterpy.kalman import KalmanFilter

from combwright.evidence.filtering import AR1, NILE, TOYS, TREND, Found, Linear, bootstrap

EVIDENCE = {"ar1": -12.975316355252586, "trend with gaps": -6.84610680240, "nile": -632.5456251156}


def kalman(toy: Linear) -> Found:
    """Follow a toy exactly."""
    exact = KalmanFilter(dim_x=len(toy.middle), dim_z=1)
    exact.x, exact.P = toy.middle.reshape(-1, 1).copy(), toy.spread.copy()
    exact.F, exact.Q = toy.step, toy.noise
    exact.H, exact.R = toy.look.reshape(1, -1), np.array([[toy.error]])
    evidence, means, covariances = 0.0, [], []
    for number, y in enumerate(toy.seen):
        if number or toy.moves_first:
            exact.predict()
        if not np.isnan(y):
            exact.update(y)
            evidence += float(exact.log_likelihood)
        means.append(exact.x.ravel().copy())
        covariances.append(exact.P.copy())
    return Found(evidence, np.array(means), np.array(covariances))


def test_the_nile_is_copied_right() -> None:
    assert len(NILE.seen) == 99
    assert NILE.seen.sum() + 1120 == 91935


@pytest.mark.parametrize("name", TOYS)
def test_filterpy_gives_the_published_evidence(name: str) -> None:
    assert kalman(TOYS[name]).log_evidence == pytest.approx(EVIDENCE[name], abs=1e-9)


def test_filterpy_gives_the_published_moments() -> None:
    first = [0.445792, -0.086520, 0.791200, 0.771761, 1.648437]
    last = [1.426859, 1.023440, 1.449728, 2.048085, 1.338824]
    assert kalman(AR1).means[:, 0] == pytest.approx([*first, *last], abs=1e-6)
    assert kalman(NILE).means[-1, 0] == pytest.approx(798.3702926083641)
    assert kalman(NILE).covariances[-1, 0, 0] == pytest.approx(4032.157941808477)


@pytest.mark.parametrize("name", TOYS)
def test_our_evidence_agrees(name: str) -> None:
    exact = kalman(TOYS[name]).log_evidence
    found = np.array([bootstrap(TOYS[name], 1000, seed).log_evidence for seed in range(50)])
    assert abs(found - exact).max() < 4.5 * found.std()
    mean = found.max() + np.log(np.exp(found - found.max()).mean())  # unbiased without the log
    assert mean == pytest.approx(exact, abs=0.1)


@pytest.mark.parametrize("name", TOYS)
def test_our_moments_agree(name: str) -> None:
    exact, runs = kalman(TOYS[name]), [bootstrap(TOYS[name], 2000, seed) for seed in range(20)]
    sds = np.sqrt(np.einsum("tii->ti", exact.covariances))
    means = np.array([run.means for run in runs])
    error = means.std(axis=0) / np.sqrt(len(runs))
    assert (abs(means.mean(axis=0) - exact.means) < 5 * error + 0.01 * sds).all()
    spreads = np.mean([run.covariances for run in runs], axis=0)
    assert np.einsum("tii->ti", spreads) == pytest.approx(sds**2, rel=0.06)


def test_a_missing_value_carries_no_information() -> None:
    gaps = np.isnan(TREND.seen)
    before, after = np.flatnonzero(gaps) - 1, np.flatnonzero(gaps)
    spreads = bootstrap(TREND, 4000, 3).covariances[:, 0, 0]
    assert (spreads[after] > spreads[before]).all()


@pytest.mark.parametrize("narrow", [1.0, 0.7])
def test_ranks_are_flat_and_a_belief_too_sure_of_itself_is_found_out(narrow: float) -> None:
    """Simulation-based calibration of the conjugate normal, with its negative control."""
    rng = np.random.default_rng(1)
    sims, draws, bins = 1000, 99, 20
    truth = rng.standard_normal(sims)
    seen = truth[:, None] + rng.standard_normal((sims, 5))
    middle, sd = seen.sum(axis=1) / 6.0, 6.0**-0.5
    posterior = middle[:, None] + narrow * sd * rng.standard_normal((sims, draws))
    counts = np.bincount((posterior < truth[:, None]).sum(axis=1) // 5, minlength=bins)
    flat = ((counts - sims / bins) ** 2 / (sims / bins)).sum() < 36.191  # 1 %, 19 degrees
    assert flat == (narrow == 1.0)

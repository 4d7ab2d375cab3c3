import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import chi2

from combwright.science.mites.intervals import poisson_interval


@given(st.integers(0, 1000), st.sampled_from([0.8, 0.95, 0.99]))
def test_poisson_limits_are_the_chi_squared_quantiles(count: int, level: float) -> None:
    limits, tail = poisson_interval(count, level), (1 - level) / 2
    low = chi2.ppf(tail, 2 * count) / 2 if count else 0.0
    assert limits.low == pytest.approx(low, rel=1e-9)
    assert limits.high == pytest.approx(chi2.ppf(1 - tail, 2 * count + 2) / 2, rel=1e-9)


@given(st.integers(1001, 50_000))
def test_limits_of_large_counts(count: int) -> None:
    limits = poisson_interval(count)
    assert limits.low == pytest.approx(chi2.ppf(0.025, 2 * count) / 2, rel=1e-5)
    assert limits.high == pytest.approx(chi2.ppf(0.975, 2 * count + 2) / 2, rel=1e-5)


@given(st.integers(0, 3000))
def test_a_count_lies_in_its_interval(count: int) -> None:
    limits = poisson_interval(count)
    assert limits.low <= limits.mid <= limits.high
    assert poisson_interval(count + 1).high > limits.high

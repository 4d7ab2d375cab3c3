import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.heat.cluster import mantle_w_per_k

Grams = st.floats(5, 4000)


# Southwick 1985, doi 10.1007/BF00692937: grams of bees and watts on a night at 2 °C (equation
# read, units from memory), at a core 19 K warmer.
@pytest.mark.parametrize(
    ("grams", "watts"), [(50, 1.0), (100, 1.5), (500, 3.4), (1000, 4.9), (1200, 5.35)]
)
def test_heat_of_the_published_clusters(grams: float, watts: float) -> None:
    assert 19.0 * mantle_w_per_k(grams) == pytest.approx(watts, rel=0.03)


def test_the_constant_follows_from_the_oxygen() -> None:
    assert pytest.approx(0.0070, rel=0.003) == 22.69 * 21.1 / 3600 / 19


@given(Grams, Grams)
def test_a_large_cluster_loses_more_but_less_a_gram(one: float, other: float) -> None:
    small, large = sorted((one, other))
    assert mantle_w_per_k(small) <= mantle_w_per_k(large)
    assert mantle_w_per_k(large) / large <= mantle_w_per_k(small) / small * (1 + 1e-12)

"""The 2011 model of Khoury, Myerscough and Barron, PLoS ONE 6:e18491."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from combwright.science.foraging.recruitment import (
    PUBLISHED,
    Recruitment,
    balance,
    critical_death_rate,
    rates,
)
from combwright.terms.errors import OutOfRangeError

# Balance worked out apart from this code with the published constants:
# death rate, foragers per hive bee, foragers, hive bees, age at first foraging, adult life.
BALANCES = [
    (0.08, 0.4081, 17_175, 42_089, 30.63, 43.13),
    (0.10, 0.3912, 12_408, 31_721, 25.56, 35.56),
    (0.12, 0.3759, 9_290, 24_717, 22.17, 30.50),
    (0.154, 0.3529, 5_944, 16_841, 18.40, 24.89),
    (0.20, 0.3267, 3_352, 10_261, 15.31, 20.31),
    (0.24, 0.3072, 1_988, 6_470, 13.56, 17.73),
    (0.28, 0.2903, 1_069, 3_682, 12.30, 15.88),
    (0.30, 0.2826, 718, 2_542, 11.80, 15.13),
    (0.34, 0.2684, 168, 626, 10.96, 13.90),
]


@pytest.mark.parametrize("published", BALANCES)
def test_balance(published: tuple[float, ...]) -> None:
    m, ratio, foragers, hive, age, life = published
    ours = balance(m)
    assert ours.foragers == pytest.approx(foragers, abs=0.6)
    assert ours.hive_bees == pytest.approx(hive, abs=0.6)
    assert ours.foragers / ours.hive_bees == pytest.approx(ratio, abs=6e-5)
    assert ours.first_foraging_days == pytest.approx(age, abs=0.006)
    assert ours.adult_life_days == pytest.approx(life, abs=0.006)


def test_critical_death_rate_is_that_of_the_paper() -> None:  # about 0.355, from memory
    assert critical_death_rate() == pytest.approx(0.355, abs=0.0005)
    assert balance(critical_death_rate() - 1e-4).foragers > 0
    assert balance(critical_death_rate() + 1e-4).foragers == 0


@given(st.floats(0.02, 0.354))
def test_nothing_changes_in_balance(m: float) -> None:
    at = balance(m)
    changes = rates(at.hive_bees, at.foragers, m)
    assert max(abs(float(change)) for change in changes) < 1e-6 * PUBLISHED.laying


@given(st.floats(500, 4000), st.floats(10_000, 40_000), st.floats(0.1, 0.6), st.floats(0.3, 1.5))
def test_the_critical_rate_parts_life_from_death(
    laying: float, half: float, recruitment: float, inhibition: float
) -> None:
    assume(laying / half < 0.9 * recruitment)
    model = Recruitment(laying, half, recruitment, inhibition)
    critical = critical_death_rate(model)
    assume(0.01 < critical < 9)
    assert balance(0.999 * critical, model).foragers > 0
    assert balance(1.001 * critical, model).foragers == 0


def test_no_critical_rate_without_enough_recruitment() -> None:
    with pytest.raises(OutOfRangeError, match="Laying over bees"):
        critical_death_rate(Recruitment(laying=4000, half_eclosion_bees=10_000))


@given(st.floats(0.02, 0.35), st.floats(0.001, 0.3))
def test_more_deaths_fewer_bees_and_earlier_foraging(m: float, more: float) -> None:
    calm, hard = balance(m), balance(m + more)
    assert hard.hive_bees < calm.hive_bees
    assert hard.first_foraging_days < calm.first_foraging_days

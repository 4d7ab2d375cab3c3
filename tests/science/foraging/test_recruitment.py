"""The 2011 model of Khoury, Myerscough and Barron, PLoS ONE 6:e18491."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from combwright.science.foraging.recruitment import (
    PUBLISHED,
    Floats,
    Recruitment,
    balance,
    critical_death_rate,
    rates,
)
from combwright.science.foraging.recruitment_days import daily_steps, days_until_below, trajectory
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
# From 16 000 hive bees and 8000 foragers, Runge-Kutta apart from this code: hive bees, foragers.
COURSES = [
    (0.24, 10, 15_070, 4_736),
    (0.24, 50, 10_010, 3_108),
    (0.30, 100, 4_707, 1_341),
    (0.36, 200, 1_349, 356),
    (0.40, 10, 12_155, 3_170),
    (0.50, 200, 105, 24),
]
# A university's coursework, rounded at each step: L 1000, w 80, m 0.4, from one bee of each kind.
COURSEWORK = [
    (1, 26, 0),
    (2, 265, 6),
    (3, 975, 65),
    (4, 1706, 237),
    (5, 2396, 413),
    (6, 3034, 583),
    (7, 3621, 742),
    (8, 4160, 889),
    (9, 4654, 1024),
    (10, 5106, 1148),
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


@pytest.mark.parametrize(("m", "day", "hive", "foragers"), COURSES)
def test_course_of_a_colony(m: float, day: float, hive: int, foragers: int) -> None:
    bees = trajectory(16_000, 8_000, day, m)
    assert (bees.hive_bees, bees.foragers) == pytest.approx((hive, foragers), abs=0.6)


@pytest.mark.parametrize("m", [0.15, 0.24, 0.40])
def test_course_agrees_with_runge_kutta_of_our_own(m: float) -> None:
    state, h = np.array([16_000.0, 8_000.0]), 0.05

    def change(bees: Floats) -> Floats:
        return np.array(rates(bees[0], bees[1], m))

    for _ in range(int(60 / h)):
        k1 = change(state)
        k2 = change(state + h / 2 * k1)
        k3 = change(state + h / 2 * k2)
        k4 = change(state + h * k3)
        state = state + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
    bees = trajectory(16_000, 8_000, 60, m)
    assert (bees.hive_bees, bees.foragers) == pytest.approx(tuple(state), rel=1e-6)


# Days apart from this code: 10 000 bees on day 23.5 and 43.3, 1000 bees on day 183 and 322.
@pytest.mark.parametrize(
    ("bees", "m", "day"), [(1e4, 0.40, 24), (1e4, 0.30, 44), (1e3, 0.40, 183), (1e3, 0.36, 322)]
)
def test_day_of_decline(bees: float, m: float, day: int) -> None:
    assert days_until_below(bees, 16_000, 8_000, m) == pytest.approx(day, abs=1)


def test_a_lasting_colony_never_falls_below() -> None:
    assert days_until_below(1000, 16_000, 8_000, 0.24) is None


@pytest.mark.parametrize(("day", "hive", "foragers"), COURSEWORK)
def test_whole_day_steps_of_the_coursework(day: int, hive: int, foragers: int) -> None:
    bees = daily_steps(1, 1, day, 0.4, laying=1000, half_eclosion_bees=80)
    assert bees.hive_bees == pytest.approx(hive, abs=1 + 0.002 * hive)
    assert bees.foragers == pytest.approx(foragers, abs=1 + 0.002 * foragers)


def test_a_colony_without_bees_stays_without() -> None:
    bees = trajectory(0, 0, 100, 0.2)
    assert (bees.hive_bees, bees.foragers) == (0, 0)

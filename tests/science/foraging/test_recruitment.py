"""The model of Khoury, Myerscough and Barron, PLoS ONE 6:e18491 and 8:e59084."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.foraging.recruitment import hunger, turning_share

# Balance of the 2011 model, worked out apart from this code with the published constants: death
# rate, foragers, nest bees, age at first foraging.
BALANCES = [
    (0.08, 17_175, 42_089, 30.63),
    (0.10, 12_408, 31_721, 25.56),
    (0.12, 9_290, 24_717, 22.17),
    (0.154, 5_944, 16_841, 18.40),
    (0.20, 3_352, 10_261, 15.31),
    (0.24, 1_988, 6_470, 13.56),
    (0.28, 1_069, 3_682, 12.30),
    (0.30, 718, 2_542, 11.80),
    (0.34, 168, 626, 10.96),
]
Bees = st.floats(1, 50_000)


@pytest.mark.parametrize(("death_rate", "foragers", "nest", "age"), BALANCES)
def test_in_balance_as_many_turn_as_die(
    death_rate: float, foragers: float, nest: float, age: float
) -> None:
    turning = turning_share(nest, foragers)
    assert turning * nest == pytest.approx(death_rate * foragers, rel=0.02)
    assert 1 / turning == pytest.approx(age, rel=0.005)


# Steps of a day of the 2011 model as a university's coursework rounds them: recruitment 0.25,
# inhibition 0.75, death rate 0.4: nest bees and foragers, and the foragers a day later.
@pytest.mark.parametrize(
    ("nest", "foragers", "after"), [(26, 0, 6), (2396, 413, 583), (3621, 742, 889)]
)
def test_a_day_of_the_coursework(nest: float, foragers: float, after: float) -> None:
    assert 0.6 * foragers + turning_share(nest, foragers) * nest == pytest.approx(after, abs=2)


@given(Bees, Bees, st.floats(1, 10))
def test_foragers_hold_others_back(nest: float, foragers: float, more: float) -> None:
    assert turning_share(nest, foragers * more) <= turning_share(nest, foragers)


@given(Bees, Bees)
def test_it_lies_between_all_foragers_and_none(nest: float, foragers: float) -> None:
    assert -0.5 <= turning_share(nest, foragers) <= 0.25


@given(st.floats(0, 50_000), st.floats(0, 50_000), st.floats(1, 2000))
def test_more_food_never_makes_hungrier(one: float, other: float, half: float) -> None:
    little, much = sorted((one, other))
    assert 0 <= hunger(much, half) <= hunger(little, half) <= 1


@given(st.floats(1, 2000))
def test_hunger_is_half_at_half(half: float) -> None:
    assert hunger(half, half) == pytest.approx(0.5)

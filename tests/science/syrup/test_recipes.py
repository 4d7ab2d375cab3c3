import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.syrup.fed_sugar import stores_kg
from combwright.science.syrup.recipes import (
    by_litres,
    by_litres_of_water,
    by_pounds_and_pints,
    by_sugar,
    by_water,
)
from combwright.terms.errors import OutOfRangeError

STRENGTHS = st.floats(0.2, 0.75)
AMOUNTS = st.floats(0.1, 1000.0)


@given(STRENGTHS, AMOUNTS, st.floats(0.0, 40.0))
def test_every_way_to_ask_gives_the_same_batch(
    strength: float, litres: float, celsius: float
) -> None:
    wanted = by_litres(litres=litres, sugar_fraction=strength, at_c=celsius)
    assert wanted.syrup_l == pytest.approx(litres)
    assert wanted.sugar_fraction == pytest.approx(strength)
    same = by_sugar(sugar_kg=wanted.sugar_kg, sugar_fraction=strength)
    assert same.water_kg == pytest.approx(wanted.water_kg)
    also = by_water(water_kg=wanted.water_kg, sugar_fraction=strength)
    assert also.sugar_kg == pytest.approx(wanted.sugar_kg)
    third = by_litres_of_water(sugar_kg=wanted.sugar_kg, water_l=wanted.water_l)
    assert third.water_kg == pytest.approx(wanted.water_kg)


def test_two_pounds_to_the_pint_make_two_pints() -> None:
    made = by_pounds_and_pints(pounds=2.0, pints=1.0).syrup_l / 0.56826125
    assert made == pytest.approx(2.0, abs=0.01)  # worked out apart: 1.138 L


def test_wetter_stores_weigh_more() -> None:
    assert stores_kg(1.0, 0.80) > stores_kg(1.0, 0.82)


@pytest.mark.parametrize("sugar", [-1.0, float("nan"), float("inf")])
def test_impossible_amounts_are_refused(sugar: float) -> None:
    with pytest.raises(OutOfRangeError, match="The sugar cannot be"):
        stores_kg(sugar)
    with pytest.raises(OutOfRangeError, match="The sugar cannot be"):
        by_sugar(sugar_kg=sugar, sugar_fraction=0.5)

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.honey.ripening import (
    nectar_kg,
    ripening_heat_mj,
    share_of_sugar_burned,
    water_given_off_kg,
    water_to_evaporate_kg,
)
from combwright.terms.errors import OutOfRangeError

SUGARS = st.floats(0.1, 0.75)
WATERS = st.floats(14.0, 22.0)


@given(st.floats(0.1, 1000.0), SUGARS, WATERS)
def test_sugar_and_mass_are_conserved(honey: float, sugar: float, water: float) -> None:
    nectar = float(nectar_kg(honey, sugar, water))
    assert nectar * sugar == pytest.approx(honey * (1 - water / 100))
    assert nectar - float(water_to_evaporate_kg(honey, sugar, water)) == pytest.approx(honey)


@given(st.floats(0.1, 0.7), st.floats(0.001, 0.05))
def test_stronger_nectar_costs_less(sugar: float, more: float) -> None:
    assert share_of_sugar_burned(sugar + more) < share_of_sugar_burned(sugar)


def test_ripening_syrup_of_two_to_one_costs_almost_nothing() -> None:
    assert 0.0 < float(share_of_sugar_burned(2 / 3)) < 0.05


def test_heat_agrees_with_iapws() -> None:
    heat = PropsSI("H", "T", 307.15, "Q", 1, "Water") - PropsSI("H", "T", 307.15, "Q", 0, "Water")
    assert float(ripening_heat_mj(30.0)) == pytest.approx(30.0 * heat / 1e6, rel=1e-3)


def test_a_percentage_is_not_a_fraction() -> None:
    with pytest.raises(OutOfRangeError, match=r"write 0\.2"):
        nectar_kg(1.0, 20.0)


@given(st.floats(0.1, 100.0), WATERS)
def test_eaten_honey_gives_off_what_it_held_and_more(honey: float, water: float) -> None:
    assert honey * water / 100 < water_given_off_kg(honey, water) < honey

"""Heat and food against field studies and the energy of sugar."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.heat import burnt_food
from combwright.terms.errors import OutOfRangeError

# Southwick 1985, equation read, 21.1 J/mL: kg, W.
CLUSTERS = [(0.5, 3.4), (1.0, 4.9), (1.2, 5.35)]
# Honey of 13.4 kJ/g: W, g a day.
WATTS = [(5, 32.2), (10, 64.5), (15, 96.7), (25, 161.2), (40, 257.9)]


@pytest.mark.parametrize(("kg", "watts"), CLUSTERS)
def test_clusters_agree_with_southwick(kg: float, watts: float) -> None:
    assert burnt_food.cluster_watts(kg) == pytest.approx(watts, rel=0.03)


@pytest.mark.parametrize(("watts", "grams"), WATTS)
def test_watts_burn_honey(watts: float, grams: float) -> None:
    assert burnt_food.food_g_per_day(watts) == pytest.approx(grams, abs=0.5)


def test_three_unrelated_sources_agree_on_a_winter_cluster() -> None:
    grams = float(burnt_food.food_g_per_day(burnt_food.cluster_watts(2.0)))
    assert 33 <= grams <= 50  # Czech hives on scales: 1 to 1.5 kg a month (read)
    assert grams == pytest.approx(39, abs=13)  # Norrström et al. 2021, south-west Sweden (read)


def test_scale_hives_agree_with_their_own_watts() -> None:
    assert burnt_food.watts_of_food(1.0, 30) == pytest.approx(5.25, abs=0.05)
    assert burnt_food.watts_of_food(1.5, 30) == pytest.approx(7.87, abs=0.05)


@given(st.floats(0.01, 3.9), st.floats(0.01, 0.1))
def test_a_bigger_cluster_makes_more_heat_but_less_for_each_bee(kg: float, more: float) -> None:
    small, large = burnt_food.cluster_watts(kg), burnt_food.cluster_watts(kg + more)
    assert large > small
    assert large / (kg + more) < small / kg


@given(st.floats(0, 400), st.floats(0.4, 1), st.floats(1, 30))
def test_watts_and_food_make_a_round_trip(watts: float, fraction: float, days: float) -> None:
    kilograms = burnt_food.food_g_per_day(watts, 16.5 * fraction) * days / 1000
    back = burnt_food.watts_of_food(kilograms, days, sugar_fraction=fraction, kj_per_g=16.5)
    assert back == pytest.approx(watts)


@given(st.floats(0, 400), st.floats(0.05, 1))
def test_syrup_holds_the_sugar(watts: float, fraction: float) -> None:
    sugar = burnt_food.food_g_per_day(watts, burnt_food.SUGAR_KJ_PER_G.value)
    assert burnt_food.syrup_g_per_day(watts, fraction) * fraction == pytest.approx(float(sugar))


def test_wooden_hives_fall_in_mitchells_class() -> None:
    assert burnt_food.bees_per_conductance(1.6, 2.4) < 0.8


def test_percent_as_a_share_is_recognised() -> None:
    with pytest.raises(OutOfRangeError, match=r"0\.6 for 60 %"):
        burnt_food.syrup_g_per_day(10, 60)
    with pytest.raises(OutOfRangeError, match="8 000 to 9 000 bees"):
        burnt_food.cluster_watts(12_000)

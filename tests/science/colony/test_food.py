import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.colony.food import (
    HARBO_WINTER,
    larva_food_mg,
    pollen_kg,
    ripening,
    winter_honey_g_per_day,
    winter_honey_mg_per_bee,
)
from combwright.terms.errors import OutOfRangeError

# Mass and energy balance at 2.42 MJ/kg water and 13 MJ/kg honey, done by hand:
# nectar sugar, kg nectar, kg water, MJ, share. Mitchell 2019 gives the first row's masses.
NECTAR = [
    (0.2, 4.00, 3.00, 7.3, 0.56),
    (0.3, 2.67, 1.67, 4.0, 0.31),
    (0.4, 2.00, 1.00, 2.4, 0.19),
    (0.5, 1.60, 0.60, 1.5, 0.11),
    (0.6, 1.33, 0.33, 0.8, 0.06),
]


@pytest.mark.parametrize(("sugar", "nectar", "water", "energy", "share"), NECTAR)
def test_ripening(sugar: float, nectar: float, water: float, energy: float, share: float) -> None:
    made = ripening(sugar)
    assert made.nectar_kg == pytest.approx(nectar, abs=0.005)
    assert made.water_out_kg == pytest.approx(water, abs=0.005)
    assert made.energy_mj == pytest.approx(energy, abs=0.05)
    assert made.energy_share == pytest.approx(share, abs=0.005)


@given(st.floats(0.05, 0.8), st.floats(0.8, 0.9))
def test_sugar_is_kept_and_water_goes(nectar_sugar: float, honey_sugar: float) -> None:
    made = ripening(nectar_sugar, honey_sugar)
    assert made.nectar_kg * nectar_sugar == pytest.approx(honey_sugar)
    assert made.nectar_kg - made.water_out_kg == pytest.approx(1)
    assert made.water_out_kg >= -1e-12


@given(st.floats(0.05, 0.79), st.floats(0.001, 0.4))
def test_sweeter_nectar_costs_less(sugar: float, more: float) -> None:
    sweeter = min(0.8, sugar + more)
    assert ripening(sweeter).energy_share < ripening(sugar).energy_share


def test_a_percentage_is_refused_as_a_fraction() -> None:
    with pytest.raises(OutOfRangeError, match=r"cannot be 40.*Give 40 % as 0\.4"):
        ripening(40)


# Seeley 2019: 20 kg; McLellan 1978: 30 kg; Hrassnigg & Crailsheim 2005: 125 to 187.5 mg a bee.
@pytest.mark.parametrize(("mg", "kg"), [(125, 20.6), (187.5, 30.9)])
def test_pollen_of_a_year(mg: float, kg: float) -> None:
    assert pollen_kg(164_500, mg) == pytest.approx(kg, abs=0.1)


def test_a_larva_in_the_model_of_khoury() -> None:
    assert larva_food_mg(0.018, 9) == pytest.approx(162)


# Harbo 1983: mg of honey a bee a day, with its standard deviation.
@pytest.mark.parametrize(("bees", "mg", "deviation"), HARBO_WINTER)
def test_winter_clusters_of_harbo(bees: float, mg: float, deviation: float) -> None:
    assert winter_honey_mg_per_bee(bees) == pytest.approx(mg, abs=deviation)


@given(st.floats(100, 100_000), st.floats(1, 3))
def test_a_larger_cluster_eats_less_a_bee_and_more_in_all(bees: float, factor: float) -> None:
    more = min(bees * factor, 100_000)
    assert winter_honey_mg_per_bee(more) <= winter_honey_mg_per_bee(bees) + 1e-12
    assert winter_honey_g_per_day(more) >= winter_honey_g_per_day(bees) * (1 - 1e-12)

"""Heat and food against field studies and the energy of sugar."""

import pytest

from combwright.science.heat import burnt_food

# Honey of 13.4 kJ/g: W, g a day.
WATTS = [(5, 32.2), (10, 64.5), (15, 96.7), (25, 161.2), (40, 257.9)]


@pytest.mark.parametrize(("watts", "grams"), WATTS)
def test_watts_burn_honey(watts: float, grams: float) -> None:
    assert burnt_food.food_g_per_day(watts) == pytest.approx(grams, abs=0.5)


def test_wooden_hives_fall_in_mitchells_class() -> None:
    assert burnt_food.bees_per_conductance(1.6, 2.4) < 0.8

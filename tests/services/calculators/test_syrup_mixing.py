import json
from dataclasses import asdict

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.services.calculators.syrup_batch import Wanted, recipe_for
from combwright.services.calculators.syrup_mixing import mix

RATIOS = st.floats(0.3, 2.9)


@given(RATIOS, st.floats(0.1, 500.0), st.floats(0.0, 50.0))
def test_the_answer_adds_up(ratio: float, litres: float, celsius: float) -> None:
    told = mix(Wanted(ratio=ratio, litres=litres, at_c=celsius))
    assert told.syrup_l == pytest.approx(litres, abs=0.001)
    assert told.sugar_kg + told.water_kg == pytest.approx(told.syrup_kg, abs=0.002)
    assert told.density_kg_per_l == pytest.approx(told.syrup_kg / litres, rel=0.02)
    json.dumps(asdict(told), allow_nan=False)


@given(RATIOS)
def test_only_syrup_that_can_crystallise_is_said_to(ratio: float) -> None:
    told = mix(Wanted(ratio=ratio, sugar_kg=1.0))
    warned = any("crystallises below" in sentence for sentence in told.warnings)
    assert warned is (told.crystallises_below_c is not None) is (ratio / (1 + ratio) > 0.64447)


@pytest.mark.parametrize(
    ("celsius", "said"),
    [(30.0, "about as thick as"), (20.0, "twice as thick as"), (40.0, "thinner")],
)
def test_thickness_is_told_against_warm_syrup(celsius: float, said: str) -> None:
    assert said in mix(Wanted(ratio=2.0, litres=1.0, at_c=celsius)).thickness


def test_a_batch_is_the_same_by_weight_and_by_volume_of_its_water() -> None:
    by_litre = recipe_for(Wanted(ratio=1.5, water_l=2.0))
    by_kilogram = recipe_for(Wanted(ratio=1.5, water_kg=by_litre.water_kg))
    assert by_litre.sugar_kg == pytest.approx(by_kilogram.sugar_kg)

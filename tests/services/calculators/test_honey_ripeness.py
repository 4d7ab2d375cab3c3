import json
from dataclasses import asdict

from hypothesis import given
from hypothesis import strategies as st

from combwright.services.calculators.honey_ripeness import Reading, ripeness


@given(st.floats(11.0, 30.0), st.sampled_from(["general", "heather", "baker", "baker-heather"]))
def test_every_honey_gets_a_whole_answer(water: float, kind: str) -> None:
    told = ripeness(Reading(water=water, kind=kind))
    assert told.legal is (told.water_percent <= told.limit_percent)
    assert ("illegal" in told.says) is not told.legal
    assert any("infants" in sentence for sentence in told.cautions)
    json.dumps(asdict(told), allow_nan=False)


@given(st.floats(1.467, 1.508), st.floats(15.0, 25.0))
def test_every_reading_gets_a_whole_answer(index: float, celsius: float) -> None:
    told = ripeness(Reading(index=index, at_c=celsius))
    assert 10.0 < told.water_percent < 30.0
    json.dumps(asdict(told), allow_nan=False)

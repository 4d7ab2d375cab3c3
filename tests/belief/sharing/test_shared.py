"""What neighbours share: versions of the year, and the eye of the keeper."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation.samples import usual

from combwright.belief.sharing.pooling import NOTHING, Pooled
from combwright.belief.sharing.shared import EYE_SPREAD, EYES, NEW_YEARS, draw_shared, renew


@given(st.integers(1, 200), st.integers(1, 30), st.integers(0, 99))
def test_versions_of_the_year_are_shared_out_evenly(members: int, versions: int, seed: int) -> None:
    drawn = draw_shared(members, versions, np.random.default_rng(seed))
    counts = np.bincount(drawn["year"], minlength=versions)
    assert len(counts) == versions
    assert counts.max() - counts.min() <= 1


def test_the_eye_is_as_uncertain_as_said_and_as_neighbours_taught() -> None:
    rng = np.random.default_rng(2)
    plain = draw_shared(20_000, 5, rng)
    taught = draw_shared(20_000, 5, rng, middle={"bees_eye": 0.1}, spread={"bees_eye": 0.02})
    for eye, spread in EYES.items():
        assert plain[eye].mean() == pytest.approx(0.0, abs=0.003)
        assert plain[eye].std() == pytest.approx(spread.value, rel=0.03)
    assert taught["bees_eye"].mean() == pytest.approx(0.1, abs=0.001)
    assert taught["bees_eye"].std() == pytest.approx(0.02, rel=0.03)
    assert taught["brood_eye"].std() == pytest.approx(EYE_SPREAD.value, rel=0.03)


def test_one_in_ten_takes_up_another_year_and_keeps_its_eye() -> None:
    drawn = draw_shared(20_000, 10, np.random.default_rng(3))
    before = drawn.copy()
    renew(drawn, 10, np.random.default_rng(4))
    changed = (drawn["year"] != before["year"]).mean()
    assert changed == pytest.approx(NEW_YEARS * 9 / 10, abs=0.01)  # a tenth come back to their own
    assert set(drawn["year"]) == set(range(10))
    for eye in EYES:
        assert (drawn[eye] == before[eye]).all()


def test_a_lesson_on_the_flow_multiplies_what_colonies_bring_in() -> None:
    colonies = usual(members=20)
    before = colonies["forage_success"].copy()
    NOTHING.teach(colonies)
    assert (colonies["forage_success"] == before).all()
    Pooled({"forage_success": 0.2}).teach(colonies)
    assert colonies["forage_success"] == pytest.approx(before * np.exp(0.2))


def test_lessons_are_told_apart_by_what_they_say_and_not_by_their_order() -> None:
    one = Pooled({"a": 0.1, "b": 0.2}, {"a": 0.05})
    assert one.key == Pooled({"b": 0.2, "a": 0.1}, {"a": 0.05}).key
    assert one.key != Pooled({"a": 0.1, "b": 0.25}, {"a": 0.05}).key
    assert one.key != Pooled({"a": 0.1, "b": 0.2}).key

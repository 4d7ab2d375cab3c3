import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.belief.sharing.pooling import NOTHING, STEP, common_part, pool, rounded
from combwright.belief.sharing.shared import EYE_SPREAD, EYES


def exact(said: list[tuple[float, float]], own: float, shared: float) -> tuple[float, float]:
    """The same by the joint normal distribution: condition the common part on all estimates."""
    precision = 1.0 / shared**2 + sum(1.0 / (own**2 + sd**2) for _, sd in said)
    pull = sum(value / (own**2 + sd**2) for value, sd in said)
    return pull / precision, precision**-0.5


@given(st.lists(st.tuples(st.floats(-1, 1), st.floats(0.05, 0.5)), min_size=1, max_size=20))
def test_the_common_part_is_the_exact_one(said: list[tuple[float, float]]) -> None:
    own, shared = 0.3, 0.2
    beliefs = []
    for value, sd in said:  # what a colony believes that saw `value` with error `sd`
        precision = 1.0 / own**2 + 1.0 / sd**2
        beliefs.append((value / sd**2 / precision, precision**-0.5))
    means, sds = zip(*beliefs, strict=True)
    found = common_part(means, sds, own=own, common=shared)
    assert found == pytest.approx(exact(said, own, shared), abs=1e-6)


def test_colonies_that_learned_nothing_teach_nothing() -> None:
    middle, sd = common_part([0.2] * 9, [0.3] * 9, own=0.3, common=0.2)
    assert middle == 0.0
    assert sd == pytest.approx(0.2)


def test_few_colonies_are_left_alone() -> None:
    assert pool([{"forage_success": (0.5, 0.1)}]) is NOTHING


def test_many_colonies_reveal_the_keepers_eye() -> None:
    rng = np.random.default_rng(2)
    moments = []
    for _ in range(30):
        sd = 0.06
        said = rng.normal(0.1, (1 / (1 / sd**2 - 1 / EYE_SPREAD.value**2)) ** 0.5)
        mean = said * (1 - sd**2 / EYE_SPREAD.value**2)
        each = {"forage_success": (0.0, 0.29), **dict.fromkeys(EYES, (float(mean), sd))}
        moments.append(each)
    lessons = pool(moments)
    assert lessons.middle["bees_eye"] == pytest.approx(0.1, abs=STEP)
    assert lessons.spread["bees_eye"] < EYE_SPREAD.value


@given(st.floats(-2, 2))
def test_rounding_is_coarse_and_never_minus_zero(value: float) -> None:
    assert abs(rounded(value) - value) <= STEP / 2 + 1e-9
    assert str(rounded(-1e-9)) == "0.0"


def test_what_all_have_in_common_counts_its_prior_once() -> None:
    """The same by hand: beliefs of one number, each of which holds the prior too."""
    e, sd, mean = EYE_SPREAD.value, 0.9 * EYE_SPREAD.value, 0.03
    said = {"forage_success": (0.0, 0.29), **dict.fromkeys(EYES, (mean, sd))}
    lessons = pool([said] * 10)
    precision = 10.0 / sd**2 - 9.0 / e**2
    assert lessons.middle["bees_eye"] == rounded(10.0 * mean / sd**2 / precision)
    assert lessons.spread["bees_eye"] == rounded(precision**-0.5)


def test_nothing_is_known_better_than_it_can_be_told() -> None:
    sure = {"forage_success": (0.0, 0.29), **dict.fromkeys(EYES, (0.1, 1e-4))}
    assert set(pool([sure] * 10).spread.values()) == {STEP / 2}

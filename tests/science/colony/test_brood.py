import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.colony.brood import (
    STAGE_DAYS,
    TORRES_CHAIN,
    Caste,
    frames_of_brood,
    stage,
    stage_chain,
    total_days,
)
from combwright.terms.errors import OutOfRangeError

# Balance of the chain of Torres et al. 2015 (PLoS ONE 10:e0130966) at two laying rates, computed
# apart from this code from the parameters of the first author's program.
TORRES = [
    (1600, (4657, 7157, 16573, 24877, 10548)),
    (2000, (5822, 8946, 20716, 31096, 13185)),
]


@pytest.mark.parametrize(("eggs", "counts"), TORRES)
def test_balance_of_the_published_chain(eggs: float, counts: tuple[int, ...]) -> None:
    chain = stage_chain(eggs)
    ours = (chain.eggs, chain.larvae, chain.pupae, chain.hive_bees, chain.foragers)
    assert ours == pytest.approx(counts, abs=1)


# Fukuda & Sakagami 1968, Res. Popul. Ecol. 10:31-39: of 100 eggs in the middle of the nest.
@pytest.mark.parametrize(("stage_number", "alive"), [(0, 94.2), (1, 86.4), (2, 85.1)])
def test_survival_is_that_of_fukuda_and_sakagami(stage_number: int, alive: float) -> None:
    assert stage_chain(1000).survivors_of_100[stage_number] == pytest.approx(alive, abs=3)


def test_the_chain_agrees_with_a_day_by_day_count() -> None:
    days = sum(length for length, _ in TORRES_CHAIN)
    survives = [1 - deaths for length, deaths in TORRES_CHAIN for _ in range(length)]
    ages = [0.0] * days
    for _ in range(days + 1):
        ages = [1600.0, *(n * s for n, s in zip(ages[:-1], survives[:-1], strict=True))]
    chain = stage_chain(1600)
    assert sum(ages[:3]) == pytest.approx(chain.eggs)
    assert sum(ages[20:41]) == pytest.approx(chain.hive_bees)
    assert sum(ages[41:]) == pytest.approx(chain.foragers)


@given(st.floats(1, 2000), st.floats(0.1, 2))
def test_a_chain_scales_with_laying(eggs: float, factor: float) -> None:
    one, other = stage_chain(eggs), stage_chain(eggs * factor)
    assert other.adults == pytest.approx(one.adults * factor)
    assert other.survival == pytest.approx(one.survival)


# Stage days of textbooks: 21, 16 and 24 days.
@pytest.mark.parametrize(("caste", "days"), [("worker", 21), ("queen", 16), ("drone", 24)])
def test_egg_to_adult(caste: Caste, days: float) -> None:
    assert total_days(caste) == pytest.approx(days, abs=0.5)


@given(st.sampled_from(list(STAGE_DAYS)), st.floats(0, 30), st.floats(0, 30))
def test_stages_follow_each_other(caste: Caste, one: float, other: float) -> None:
    order = ["egg", "open larva", "sealed", "emerged"]
    early, late = sorted((one, other))
    assert order.index(stage(caste, early)) <= order.index(stage(caste, late))


# Trade arithmetic: frames at a steady lay rate, 3750 usable cells on a National frame.
@pytest.mark.parametrize(
    ("eggs", "frames"), [(250, 1.4), (500, 2.8), (750, 4.2), (1000, 5.6), (1250, 7), (1500, 8.4)]
)
def test_frames_at_a_steady_rate(eggs: float, frames: float) -> None:
    assert frames_of_brood(eggs) == pytest.approx(frames, abs=0.05)


def test_more_eggs_take_more_frames() -> None:
    frames = frames_of_brood([0, 500, 1000, 2000])
    assert frames[0] == 0
    assert all(few < many for few, many in pairwise(frames))


@pytest.mark.parametrize("eggs", [-1, 5000, math.nan])
def test_impossible_laying_is_refused(eggs: float) -> None:
    with pytest.raises(OutOfRangeError, match="laying rate"):
        frames_of_brood(eggs)

"""The worlds that are kept, held against the targets in climates that they were not fitted in."""

import pytest
from tests.validation.simulation.fit_page import Everywhere, everywhere, holding, shares

from combwright.evidence.targets import targets

pytestmark = pytest.mark.validation


@pytest.fixture(scope="module")
def seen() -> Everywhere:
    """What is seen in each kept world and built-in climate, in year 1 and in years 2 to 4."""
    return everywhere()


# How much must hold is judgement: the targets held out were named before, and none was fitted to.
@pytest.mark.parametrize(
    ("held_out", "least"),
    [
        pytest.param(
            False,
            0.9,
            marks=pytest.mark.xfail(
                reason="94 % hold in year 1, but 89.5 % later, with new colonies"
            ),
        ),
        (True, 0.75),
    ],
)
def test_most_of_them_hold_everywhere(seen: Everywhere, least: float, *, held_out: bool) -> None:
    assert shares(seen, held_out=held_out).min() >= least


@pytest.mark.xfail(reason="without a queen on 1 April are more than surveys say in half of them")
def test_no_target_is_missed_by_most_of_them(seen: Everywhere) -> None:
    missed = [name for name, t in targets().items() if holding(t, seen[name]).mean() < 0.5]
    assert missed == []

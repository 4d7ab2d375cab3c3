"""A small version of the long study: forty colonies from the prior, with a control that fails."""

import numpy as np
import pytest
from tests.validation.belief.calibration import Rank, coverage, ranks_of, schedule
from tests.validation.belief.detection import TROUBLES, case

COLONIES = 40


def covered(ranks: list[Rank]) -> float:
    return coverage(np.array([rank.share for rank in ranks if rank.lead > 1]), 0.9)


@pytest.fixture(scope="module")
def honest() -> list[Rank]:
    """Ranks of the truth in forty colonies, by 100 members each."""
    return [r for n in range(COLONIES) for r in ranks_of(n, schedule(n), members=100)]


def test_bands_cover_about_what_they_say(honest: list[Rank]) -> None:
    """Forty colonies with eight ranks each: between 80 and 97 % unless something is wrong."""
    assert 0.80 <= covered(honest) <= 0.97


def test_the_truth_is_neither_mostly_above_nor_mostly_below(honest: list[Rank]) -> None:
    shares = np.array([rank.share for rank in honest])
    assert shares.mean() == pytest.approx(0.5, abs=0.1)


def test_a_belief_too_sure_of_itself_is_found_out() -> None:
    narrow = [r for n in range(COLONIES) for r in ranks_of(n, schedule(n), members=100, narrow=0.5)]
    assert covered(narrow) < 0.75


@pytest.mark.parametrize("trouble", TROUBLES)
def test_a_trouble_that_nobody_noted_is_suspected(trouble: str) -> None:
    """Four in five are wanted of hundreds; of a dozen, three in five."""
    cases = [case(trouble, number) for number in range(200, 212)]
    mattered = [one for one in cases if one.mattered]
    assert sum(one.second for one in mattered) >= 0.6 * len(mattered)

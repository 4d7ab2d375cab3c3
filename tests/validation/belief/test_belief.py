"""The long studies of the belief: what they must show, and the page that tells of them."""

from datetime import date
from pathlib import Path

import numpy as np
import pytest
from tests.validation.belief import study
from tests.validation.belief.calibration import by_quantity, coverage, misfit
from tests.validation.belief.detection import TROUBLES
from tests.validation.belief.skill import skill

pytestmark = pytest.mark.validation
COLONIES = 320
CHI_SQUARE_1_PERCENT = 21.666  # 9 degrees of freedom
# Twelve tables are judged together: one of them would exceed the 1 % limit in one study of nine.
CHI_SQUARE_TOGETHER = 28.339  # 1 - 0.99^(1/12), 9 degrees of freedom


@pytest.fixture(scope="module")
def found() -> study.Found:
    """Run the studies, and write their page and figures."""
    made = study.study(COLONIES)
    folder = Path(__file__).parents[3] / "docs" / "validation"
    study.write(made, folder, date.today())  # noqa: DTZ011  (the day on which it was measured)
    return made


# Since 27 November every member is moved a little by each note: no world is exactly the model's.
DOUBTS = pytest.mark.xfail(reason="the belief doubts its model, which is exactly right here")


@DOUBTS
def test_bands_cover_what_they_say(found: study.Found) -> None:
    covered = {key: coverage(shares, 0.9) for key, shares in by_quantity(found.ranks).items()}
    wrong = {key: share for key, share in covered.items() if not 0.85 <= share <= 0.95}
    assert not wrong


def test_bands_cover_at_least_what_they_say(found: study.Found) -> None:
    covered = {key: coverage(shares, 0.9) for key, shares in by_quantity(found.ranks).items()}
    assert min(covered.values()) >= 0.85, covered


@DOUBTS
def test_rank_histograms_are_flat(found: study.Found) -> None:
    misfits = {key: misfit(shares)[0] for key, shares in by_quantity(found.ranks).items()}
    assert max(misfits.values()) < CHI_SQUARE_TOGETHER, misfits


def test_a_belief_too_sure_of_itself_is_found_out(found: study.Found) -> None:
    misfits = [misfit(shares)[0] for shares in by_quantity(found.too_narrow).values()]
    assert np.median(misfits) > CHI_SQUARE_1_PERCENT


@pytest.mark.parametrize("quantity", ["frames_of_bees", "stores_kg"])
@pytest.mark.parametrize("against", ["truth", "note"])
def test_forecasts_beat_two_rules_of_thumb(found: study.Found, quantity: str, against: str) -> None:
    row = skill(found.forecasts["differing"])[against, quantity]
    assert row["better than last time"] >= 0.30
    assert row["better than trend"] >= 0.15


@pytest.mark.parametrize("trouble", TROUBLES)
def test_troubles_are_suspected_within_two_visits(found: study.Found, trouble: str) -> None:
    count, _, within_two, _ = study.suspected_share(found, trouble)
    assert count >= 40
    assert within_two >= 0.80


def test_quiet_months_are_left_in_peace(found: study.Found) -> None:
    assert len(found.months) > 100
    assert np.mean([wrong for wrong, _, _ in found.months]) < 0.10


def test_neighbours_do_not_harm(found: study.Found) -> None:
    pairs = np.array([(gain.alone, gain.together) for gain in found.gains])
    differences = pairs[:, 1] - pairs[:, 0]
    assert differences.mean() < 2.0 * differences.std() / len(differences) ** 0.5

"""One colony's part of the sheet, from a colony of our own making."""

from datetime import timedelta

import numpy as np
import pytest
from tests.planning.standing import AVERAGE, MEMBERS, NUC, ON, STRONG, Kind, situation

from combwright.advice.bee_acts import LeaveShut
from combwright.belief.following.causes import Since
from combwright.belief.following.followed import Followed
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.filter import Belief
from combwright.planning.round import colony_sheet
from combwright.planning.sheet import ColonySheet


def sheet_of(kind: Kind, *, pitch_mm: float | None = None) -> ColonySheet:
    asked = situation(kind, days=3, pitch_mm=pitch_mm)
    shared = draw_shared(MEMBERS, 1, np.random.default_rng(1))
    since = Since.now(asked.colonies)
    belief = Belief("Bramble", ON, asked.colonies, shared, (since, since), ON)
    followed = Followed(belief, asked.standing, "Alder Bank")
    return colony_sheet(followed, asked, 1)


@pytest.mark.parametrize("kind", [STRONG, AVERAGE, NUC])
def test_quantities_come_in_order_and_in_sensible_digits(kind: Kind) -> None:
    expected = sheet_of(kind).expected
    for name in type(expected).model_fields:
        band = getattr(expected, name)
        assert 0.0 <= band.low <= band.mid <= band.high
    assert expected.room_cells.mid % 100 == 0
    assert expected.frames_of_bees.mid == round(expected.frames_of_bees.mid, 1)
    assert expected.frames_of_bees.mid == pytest.approx(kind.bees, rel=0.15)


@pytest.mark.parametrize("kind", [STRONG._replace(bees=9.0), AVERAGE, NUC])
def test_every_colony_has_its_reasons_and_branches(kind: Kind) -> None:
    sheet = sheet_of(kind)
    assert sheet.because
    assert all(any(sign.isdigit() for sign in because) for because in sheet.because)
    assert any("at most" in branch.found for branch in sheet.branches)
    assert any("at least" in branch.found for branch in sheet.branches)
    assert all(branch.do and branch.because for branch in sheet.branches)


def test_the_difference_between_starving_and_not_is_no_gain_in_bees() -> None:
    sheet = sheet_of(AVERAGE._replace(stores_kg=0.5))
    said = " ".join(sheet.because)
    assert "hunger" in said
    assert "It gains" not in said


@pytest.mark.parametrize("pitch_mm", [37.0, 37.5, 38.0])
def test_a_wide_pitch_is_noticed_with_its_cure(pitch_mm: float) -> None:
    """BS 1300 box, 422 mm inside: eleven frames at 37-38 mm nearly fill it (trade sheet 1.1)."""
    told = " ".join(sheet_of(STRONG, pitch_mm=pitch_mm).jobs)
    assert f"11 frames at {pitch_mm:g} mm" in told
    assert "scrape" in told


def test_a_usual_pitch_is_no_notice() -> None:
    told = " ".join(sheet_of(STRONG, pitch_mm=35.0).jobs)
    assert "mm need" not in told


def test_the_stack_is_never_advised_beyond_its_box() -> None:
    for kind in (STRONG, STRONG._replace(bees=13.0), NUC, NUC._replace(bees=6.0)):
        sheet = sheet_of(kind)
        most = 11 if kind.hive.startswith("national") else 6
        assert sheet.set_up.frames <= most
        assert len(sheet.after.boxes) == 1 + sheet.set_up.supers


def test_bees_beyond_their_frames_are_given_another() -> None:
    sheet = sheet_of(AVERAGE._replace(bees=8.0, brood=4.5, frames=6))
    assert sheet.set_up.frames > 6
    assert any(job.startswith("Add") for job in sheet.jobs)
    assert sum(place.is_new for place in sheet.after.boxes[0].places) == sheet.set_up.frames - 6


def test_a_feed_that_ends_before_the_next_visit_says_what_holds_until_then() -> None:
    sheet = sheet_of(AVERAGE._replace(stores_kg=0.5))
    assert sheet.portion.syrup_g
    later = {"next_visit": sheet.planned_until + timedelta(days=7)}
    said = "Reckoned to 4 May; hunger stays within your limit to 11 May."
    assert sheet.model_copy(update=later).after_the_feed == said
    for change in (
        {"next_visit": sheet.planned_until},
        {"portion": sheet.portion.model_copy(update={"syrup_g": 0})},
        {"actions": [LeaveShut(why="virgin mates")]},  # the day is hers, whatever there is to eat
    ):
        assert sheet.model_copy(update=later | change).after_the_feed == ""

"""How frames fit, against the arithmetic of BS 1300."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.kit.catalogue import catalogue
from combwright.kit.fits import frames_that_fit
from combwright.kit.items import Hive
from combwright.kit.spacing import slack_mm, spacing_notice
from combwright.terms.errors import OutOfRangeError

NATIONAL = catalogue().hive("national timber")
# Frames in 422 mm by pitch, from pages on spacing and castellations (read).
FIT = [(35, 0, 12), (35, 1, 11), (38, 0, 11), (42, 0, 10), (46.7, 0, 9)]


@pytest.mark.parametrize(("pitch", "boards", "frames"), FIT)
def test_a_national_box_takes_the_usual_number(pitch: float, boards: int, frames: int) -> None:
    assert frames_that_fit(NATIONAL, pitch, boards) == frames


def test_twelve_frames_barely_fit_and_eleven_leave_room_for_a_board() -> None:
    assert slack_mm(NATIONAL, 12, 35) == 2
    assert slack_mm(NATIONAL, 11, 35) == 37
    assert "2 mm are left" in spacing_notice(NATIONAL, 12, 35)
    assert "put a dummy board" in spacing_notice(NATIONAL, 12, 35)
    assert spacing_notice(NATIONAL, 11, 35, 1) == ""


def test_propolis_on_the_shoulders_is_named_with_its_cure() -> None:
    notice = spacing_notice(NATIONAL, 11, 38)
    assert "418 of 422 mm" in notice
    assert "scrape them and 33 mm come back" in notice
    assert "2 dummy boards" in spacing_notice(NATIONAL, 11, 37, 2)


@pytest.mark.parametrize(
    ("pitch", "looks"), [(3.5, "centimetres"), (1.375, "inches"), (99, "60 mm is meant")]
)
def test_a_pitch_in_another_unit_is_recognised(pitch: float, looks: str) -> None:
    with pytest.raises(OutOfRangeError, match=looks):
        frames_that_fit(NATIONAL, pitch)


@given(st.sampled_from(catalogue().hives()), st.floats(28, 60), st.integers(0, 2), st.floats(0, 10))
def test_what_fits_leaves_room_and_one_more_does_not(
    hive: Hive, pitch: float, boards: int, wider: float
) -> None:
    frames = frames_that_fit(hive, pitch, boards)
    assert slack_mm(hive, frames, pitch, boards) >= -1e-9
    assert slack_mm(hive, frames + 1, pitch, boards) < 1e-9
    assert frames_that_fit(hive, min(60, pitch + wider), boards) <= frames

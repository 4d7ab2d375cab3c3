"""How frames fit a box: how many, what is left, and what propolis on the shoulders costs."""

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Hive
from combwright.terms.errors import OutOfRangeError

WORKING_GAP_MM = 10.0  # room to lift the first frame without rolling bees; judgement
WIDENED_MM = 1.0  # a pitch this far over the frame's own shows propolis, not a tape's error


def frames_that_fit(hive: Hive, pitch_mm: float | None = None, dummy_boards: int = 0) -> int:
    """Count the frames that go into one brood box beside so many dummy boards.

    Parameters
    ----------
    hive
        The hive.
    pitch_mm
        From comb to comb; the frame's own where none is given. [mm]
    dummy_boards
        Boards in the box.

    Returns
    -------
    int
        Frames, with no room left over asked for.

    Examples
    --------
    >>> national = catalogue().hive("national timber")
    >>> frames_that_fit(national, 35), frames_that_fit(national, 35, dummy_boards=1)
    (12, 11)

    """
    pitch = _pitch(hive, pitch_mm)
    return max(0, int((hive.inner_width_mm - _boards_mm(dummy_boards)) // pitch))


def slack_mm(
    hive: Hive, frames: int, pitch_mm: float | None = None, dummy_boards: int = 0
) -> float:
    """Give the width that frames and boards leave free; below nothing when they do not fit.

    Parameters
    ----------
    hive
        The hive.
    frames
        Frames in one box.
    pitch_mm
        From comb to comb; the frame's own where none is given. [mm]
    dummy_boards
        Boards in the box.

    Returns
    -------
    float
        Free width. [mm]

    Examples
    --------
    >>> slack_mm(catalogue().hive("national timber"), 12, 35)
    2.0

    """
    return hive.inner_width_mm - frames * _pitch(hive, pitch_mm) - _boards_mm(dummy_boards)


def spacing_notice(
    hive: Hive, frames: int, pitch_mm: float | None = None, dummy_boards: int = 0
) -> str:
    """Say what is wrong with the spacing in a box, and the cure; nothing when all is well.

    Examples
    --------
    >>> print(spacing_notice(catalogue().hive("national timber"), 11, 38, 1))
    11 frames at 38 mm and 1 dummy board need 427 of 422 mm: 5 mm too much. The frames stand 3 mm \
wider than made, which is propolis on the shoulders: scrape them and 33 mm come back.

    """
    pitch = _pitch(hive, pitch_mm)
    left = slack_mm(hive, frames, pitch, dummy_boards)
    widened = pitch - hive.pitch_mm >= WIDENED_MM
    if left >= WORKING_GAP_MM and not widened:
        return ""
    taken = hive.inner_width_mm - left
    what = f"{frames} frames at {pitch:g} mm" + _with_boards(dummy_boards)
    return f"{what} need {taken:g} of {hive.inner_width_mm:g} mm: {_left(left)} " + _cure(
        frames, pitch - hive.pitch_mm if widened else 0.0
    )


def _left(left: float) -> str:
    if left < 0:
        return f"{-left:g} mm too much."
    tight = ", so the first one lifted rolls bees" if left < WORKING_GAP_MM else ""
    return f"{left:g} mm are left{tight}."


def _cure(frames: int, widened: float) -> str:
    if widened:
        return (
            f"The frames stand {widened:g} mm wider than made, which is propolis on the shoulders: "
            f"scrape them and {frames * widened:g} mm come back."
        )
    return "Take out one frame and put a dummy board in its place."


def _with_boards(dummy_boards: int) -> str:
    if not dummy_boards:
        return ""
    return f" and {dummy_boards} dummy board{'s' if dummy_boards > 1 else ''}"


def _boards_mm(dummy_boards: int) -> float:
    return dummy_boards * catalogue().board("dummy board").mm


def _pitch(hive: Hive, pitch_mm: float | None) -> float:
    pitch = hive.pitch_mm if pitch_mm is None else pitch_mm
    low, high = 28.0, 60.0
    if not low <= pitch <= high:
        raise OutOfRangeError(
            f"Frames cannot stand {pitch:g} mm apart: {low:g} to {high:g} mm is meant.",
            remedy=_centimetres(pitch, low, high),
        )
    return pitch


def _centimetres(pitch: float, low: float, high: float) -> str:
    if low <= pitch * 10 <= high:
        return f"{pitch:g} looks like centimetres; that would be {pitch * 10:g} mm."
    if low <= pitch * 25.4 <= high:
        return f"{pitch:g} looks like inches; that would be {pitch * 25.4:.3g} mm."
    return ""

"""How frames stand in one box: the width they leave free, and what propolis costs."""

from dataclasses import dataclass
from typing import Final

from combwright.kit.items import Hive
from combwright.terms.errors import OutOfRangeError

WORKING_GAP_MM: Final = 10.0  # room to lift the first frame without rolling bees; judgement
WIDENED_MM: Final = 1.0  # a pitch this far over the frame's own is propolis, not a tape's error
NARROWEST_MM, WIDEST_MM = 28.0, 60.0  # the pitches that the catalogue takes too


@dataclass(frozen=True, slots=True)
class Tightness:
    """What is wrong with the spacing in a box, the width that is left [mm], and the cure."""

    what: str
    cure: str
    left_mm: float


def slack_mm(
    hive: Hive, frames: int, pitch_mm: float | None = None, dummy_boards: int = 0
) -> float:
    """Give the width that frames and boards leave free; below nothing when they do not fit.

    ``pitch_mm`` is measured from comb to comb; the frame's own where none is given.

    Examples
    --------
    >>> from combwright.kit.catalogue import catalogue
    >>> slack_mm(catalogue().hive("national timber"), 12, 35)
    2.0

    """
    boards_mm = dummy_boards * hive.dummy_board.mm
    return hive.inner_width_mm - frames * pitch_of(hive, pitch_mm) - boards_mm


def spacing_notice(
    hive: Hive, frames: int, pitch_mm: float | None = None, dummy_boards: int = 0
) -> str:
    """Say what is wrong with the spacing in a box, and the cure; nothing when all is well.

    Examples
    --------
    >>> from combwright.kit.catalogue import catalogue
    >>> print(spacing_notice(catalogue().hive("national timber"), 11, 38, 1))
    11 frames at 38 mm and 1 dummy board need 427 of 422 mm: 5 mm too much. The frames stand 3 mm \
wider than made, which is propolis on the shoulders: scrape them and 33 mm come back.

    """
    found = wide_spacing(hive, frames, pitch_mm, dummy_boards)
    return f"{found.what} {found.cure}" if found else ""


def wide_spacing(
    hive: Hive, frames: int, pitch_mm: float | None = None, dummy_boards: int = 0
) -> Tightness | None:
    """Find out whether frames stand too wide in a box, or leave no room to lift the first one."""
    pitch = pitch_of(hive, pitch_mm)
    left = slack_mm(hive, frames, pitch, dummy_boards)
    widened = pitch - hive.pitch_mm >= WIDENED_MM
    if left >= WORKING_GAP_MM and not widened:
        return None
    taken = hive.inner_width_mm - left
    what = f"{frames} frames at {pitch:g} mm" + _with_boards(dummy_boards)
    said = f"{what} need {taken:g} of {hive.inner_width_mm:g} mm: {_left(left)}"
    return Tightness(said, _cure(frames, pitch - hive.pitch_mm if widened else 0.0), left)


def pitch_of(hive: Hive, pitch_mm: float | None) -> float:
    """Give the pitch that is meant: as measured, or else the frame's own. [mm]."""
    pitch = hive.pitch_mm if pitch_mm is None else pitch_mm
    if not NARROWEST_MM <= pitch <= WIDEST_MM:
        raise OutOfRangeError(
            f"Frames cannot stand {pitch:g} mm apart: {NARROWEST_MM:g} to {WIDEST_MM:g} mm is "
            "meant.",
            remedy=_other_unit(pitch),
        )
    return pitch


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


def _other_unit(pitch: float) -> str:
    if NARROWEST_MM <= pitch * 10 <= WIDEST_MM:
        return f"{pitch:g} looks like centimetres; that would be {pitch * 10:g} mm."
    if NARROWEST_MM <= pitch * 25.4 <= WIDEST_MM:
        return f"{pitch:g} looks like inches; that would be {pitch * 25.4:.3g} mm."
    return ""

"""The one rule of what a hive holds: frames, foundation, boards, boxes and supers.

``misfits`` names everything that stands in the way of a set-up. Whoever takes a note, believes
one, or gives advice asks here, so that a stack is not possible in one room and refused in another.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil
from typing import Final

from combwright.kit.items import Hive
from combwright.kit.spacing import pitch_of, wide_spacing
from combwright.terms.errors import ClashError
from combwright.terms.set_up import (
    MOST_BROOD_BOXES,
    MOST_DUMMY_BOARDS,
    MOST_SUPERS,
    SetUp,
)

MOST_NUC_BOXES: Final = 2


@dataclass(frozen=True, slots=True)
class Misfit:
    """One thing that cannot stand, or (when it does not block) stands badly; and the cure.

    ``field`` is that of a stack, or of the entry, which is to be put right first.
    """

    field: str
    what: str
    remedy: str
    blocks: bool = True


def frames_that_fit(
    hive: Hive, pitch_mm: float | None = None, dummy_boards: int = 0, brood_boxes: int = 1
) -> int:
    """Count the frames that go into the brood boxes beside so many dummy boards in each.

    ``pitch_mm`` is measured from comb to comb; the frame's own where none is given.
    ``dummy_boards`` stand in each of the boxes.

    Examples
    --------
    >>> from combwright.kit.catalogue import catalogue
    >>> national = catalogue().hive("national timber")
    >>> frames_that_fit(national, 35), frames_that_fit(national, 35, dummy_boards=1)
    (12, 11)
    >>> frames_that_fit(national, brood_boxes=2)
    24

    """
    free_mm = hive.inner_width_mm - dummy_boards * hive.dummy_board.mm
    return brood_boxes * max(0, int(free_mm // pitch_of(hive, pitch_mm)))


def frames_in_fullest_box(set_up: SetUp) -> int:
    """Count the frames in the fullest brood box; boxes share them as evenly as can be.

    Examples
    --------
    >>> frames_in_fullest_box(SetUp(frames=21, brood_boxes=2))
    11

    """
    return ceil(set_up.frames / set_up.brood_boxes)


def misfits(hive: Hive, set_up: SetUp, pitch_mm: float | None = None) -> Iterator[Misfit]:
    """Name what of a set-up this hive cannot hold, and what it holds badly.

    ``pitch_mm`` is measured from comb to comb, where it was.
    """
    yield from _too_many(hive, set_up)
    if set_up.foundation > set_up.frames:
        yield Misfit(
            "foundation",
            f"{set_up.foundation} frames of foundation among {set_up.frames} frames.",
            "“foundation” counts those of the frames that are not drawn yet.",
        )
    yield from _frames(hive, set_up, pitch_mm)


def refuse_impossible(hive: Hive, set_up: SetUp) -> None:
    """Refuse a set-up that this hive cannot hold, with the reason."""
    for misfit in misfits(hive, set_up):
        if misfit.blocks:
            raise ClashError(misfit.what, remedy=misfit.remedy)


def _too_many(hive: Hive, set_up: SetUp) -> Iterator[Misfit]:
    """Find boxes and boards beyond what is stacked or stood anywhere."""
    boxes = MOST_BROOD_BOXES if hive.kind == "hive" else MOST_NUC_BOXES
    if set_up.brood_boxes > boxes:
        yield Misfit(
            "brood_boxes",
            f"{set_up.brood_boxes} brood boxes on “{hive.key}”: {boxes} at most are meant.",
            "Correct the brood boxes or the hive.",
        )
    if set_up.dummy_boards > MOST_DUMMY_BOARDS:
        yield Misfit(
            "dummy_boards",
            f"{set_up.dummy_boards} dummy boards in one box: {MOST_DUMMY_BOARDS} at most are "
            "meant, one on each side.",
            "Correct the dummy boards.",
        )
    if set_up.supers and hive.honey_super is None:
        what = f"“{hive.key}” takes no super."
        yield Misfit("supers", what, "Move the colony to a full hive first.")
    if set_up.supers > MOST_SUPERS:
        what = f"{set_up.supers} supers: {MOST_SUPERS} at most are meant."
        yield Misfit("supers", what, "Correct the supers.")


def _frames(hive: Hive, set_up: SetUp, pitch_mm: float | None) -> Iterator[Misfit]:
    """Find more frames and boards than the brood boxes hold."""
    boards, boxes = set_up.dummy_boards, set_up.brood_boxes
    if set_up.frames > frames_that_fit(hive, None, boards, boxes):
        held = frames_that_fit(hive, brood_boxes=boxes)
        beside = f" and {boards} dummy board{'s' * (boards > 1)}" if boards else ""
        box = "which holds" if boxes == 1 else f"whose {boxes} brood boxes hold"
        yield Misfit(
            "frames",
            f"{set_up.frames} frames{beside} do not fit into “{hive.key}”, {box} "
            f"{held} frames at most ({hive.inner_width_mm:g} mm inside).",
            "Correct the frames, the boards, the brood boxes or the hive.",
        )
    elif pitch_mm is not None:
        notice = wide_spacing(hive, frames_in_fullest_box(set_up), pitch_mm, boards)
        if notice is not None and notice.left_mm < 0:
            yield Misfit("pitch_mm", notice.what, notice.cure, blocks=False)

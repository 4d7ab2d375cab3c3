"""How a stack may stand instead: the set-ups that are weighed against leaving it."""

from typing import Final

import numpy as np

from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.kit.fits import frames_that_fit
from combwright.simulation import observe
from combwright.terms.ranked import median, quantile
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("space")


def stacks(situation: Situation) -> list[SetUp]:
    """Give the stacks to weigh: a frame more or fewer, closed up to the bees, another board."""
    now = situation.standing.set_up
    fewest = int(np.ceil(_covered(situation) + PARAMETERS["beyond_bees"].value))
    closed = min(now.frames - fewest, int(empty_frames(situation)))
    return [*stepped(situation, *dict.fromkeys((-1, 1, min(-1, -closed)))), *_boarded(situation)]


def stepped(situation: Situation, *steps: int) -> list[SetUp]:
    """Give the set-ups with so many frames more or fewer that can be."""
    now = situation.standing.set_up
    most = _most_frames(situation)
    found = []
    for more in steps:
        frames = now.frames + more
        if frames < 2 or (more < 0 and not _can_spare(situation, -more)):
            continue
        boards = _boards(situation, frames)
        if boards is None or (more > 0 and frames > most):
            continue
        sheets = 0 if situation.drawn_frames_to_hand else max(0, more)
        found.append(
            now.model_copy(update={"frames": frames, "dummy_boards": boards, "foundation": sheets})
        )
    return found


def without_supers(situation: Situation) -> list[SetUp]:
    """Give the stack without supers that hold little: a hungry colony is fed then."""
    now = situation.standing.set_up
    above_kg = median(observe.honey_above_kg(situation.colonies))
    if now.supers and above_kg < PARAMETERS["little_kg"].value:
        return [now.model_copy(update={"supers": 0, "excluder": False})]
    return []


def _boarded(situation: Situation) -> list[SetUp]:
    """Give the same frames behind another board."""
    hive, now = situation.standing.hive, situation.standing.set_up
    if now.dummy_boards == 2 or now.frames >= hive.frames * now.brood_boxes - 1:
        return []
    boards = _boards(situation, now.frames)
    if boards is None or boards <= now.dummy_boards:
        return []
    return [now.model_copy(update={"dummy_boards": boards})]


def _most_frames(situation: Situation) -> float:
    """Give the frames that the bees of a laying queen may soon cover, as far as the hive goes."""
    now = situation.standing.set_up
    if situation.laying <= 0.5:
        return now.frames
    soon = float(np.ceil(_covered(situation) + PARAMETERS["beyond_bees"].value))
    return min(situation.standing.hive.frames * now.brood_boxes, soon)


def _covered(situation: Situation) -> float:
    """Give the frames that nearly all members cover at most."""
    return quantile(situation.frames_of_bees, PARAMETERS["covered_at"].value)[0]


def _can_spare(situation: Situation, fewer: int) -> bool:
    """Tell whether the bees cover less, and so many frames' worth of comb hold nothing."""
    left = situation.standing.set_up.frames - fewer
    return left >= _covered(situation) + 0.5 and empty_frames(situation) >= fewer


def empty_frames(situation: Situation) -> float:
    """Count the frames' worth of comb that hold nothing, at the careful end."""
    colonies = situation.colonies
    held = observe.brood(colonies) + colonies["ripe"] / colonies["sugar_per_cell"]
    empty = (colonies["drawn"] + colonies["foundation"] - held) / colonies["cells_per_frame"]
    return quantile(empty, PARAMETERS["empty_at"].value)[0]


def _boards(situation: Situation, frames: int) -> int | None:
    """Give the dummy boards that go in beside so many frames: two while there is room."""
    hive, boxes = situation.standing.hive, situation.standing.set_up.brood_boxes
    for boards in (2, 1, 0):
        if frames_that_fit(hive, situation.pitch_mm, boards, boxes) >= frames:
            wide_open = frames <= hive.frames * boxes - 2
            return boards if wide_open or boards < 2 else 1
    return None

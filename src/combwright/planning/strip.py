"""The stack from above, filled with what is believed to be in it: what the comb strip draws."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.kit.fits import frames_in_fullest_box
from combwright.kit.items import Hive
from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY
from combwright.terms.combs import Box, Place, StackView
from combwright.terms.data_files import parameters
from combwright.terms.set_up import SetUp

Floats = NDArray[np.float64]
PARAMETERS: Final = parameters("planning/planning")
FULLEST_BROOD: Final = PARAMETERS["fullest_brood"].value
FULLEST_STORES: Final = PARAMETERS["fullest_stores"].value
ARCH: Final = PARAMETERS["arch"].value
MOST_POLLEN: Final = PARAMETERS["most_pollen"].value
LEAST_REACH: Final = PARAMETERS["least_reach"].value
ROUNDNESS: Final = PARAMETERS["roundness"].value
TRACE: Final = 1e-6


def stack_view(
    colonies: NDArray[np.void],
    hive: Hive,
    set_up: SetUp,
    *,
    feeder_over: bool,
    was: SetUp | None = None,
) -> StackView:
    """Draw up a stack, from the bottom up, as it is believed to be, or as it is advised.

    The middle of the members is drawn; against the set-up before, new frames are marked.
    """
    boxes = set_up.brood_boxes
    full = frames_in_fullest_box(set_up)
    places = max(hive.capacity, full)
    new = 0 if was is None else max(0, set_up.frames - was.frames)
    combs = _combs(_shares(colonies, set_up.frames - new, boxes), set_up, new)
    stack = []
    for number in range(boxes):
        here = combs[number * full : (number + 1) * full]
        stack.append(Box("brood", _between_boards(here, set_up.dummy_boards, places)))
    stack += [_super(colonies, hive) for _ in range(set_up.supers)]
    return StackView(
        tuple(stack),
        set_up.excluder and set_up.supers > 0,
        feeder_over,
        float(set_up.entrance_mm),
        float(set_up.tray_open_mm),
        set_up.cover,
    )


def _from_the_middle(frames: int, boxes: int) -> Floats:
    """Tell how many frames each stands from the middle of its box: a nest goes up through all."""
    each = np.arange(frames)
    most = -(-frames // boxes)
    here = np.minimum(most, frames - most * (each // max(most, 1)))
    return np.abs(each % max(most, 1) - (here - 1) / 2.0)


def _shares(colonies: NDArray[np.void], frames: int, boxes: int) -> dict[str, Floats]:
    """Share of each frame that holds brood, stores, pollen and bees, the nest in the middle."""
    quantities = (
        colonies["cells_per_frame"],
        observe.brood(colonies),
        observe.frames_of_stores(colonies),
        colonies["pollen"],
        observe.frames_of_bees(colonies),
    )
    cells, brood, stores, pollen, bees = np.median(np.array(quantities), axis=1).tolist()
    brood = brood / max(cells, 1.0)
    pollen = pollen / BIOLOGY.pollen_per_cell / max(cells, 1.0)
    away = _from_the_middle(frames, boxes)
    reach = max(LEAST_REACH, ROUNDNESS * brood / boxes / FULLEST_BROOD)
    brood_on = _fill(brood, 1.0 - (away / reach) ** 2, np.full(frames, FULLEST_BROOD))
    outward = ARCH + (away / away.max(initial=1.0)) ** 2
    stores_on = _fill(stores, outward, np.maximum(FULLEST_STORES - brood_on, 0.0))
    free = np.maximum(1.0 - brood_on - stores_on, 0.0)
    beside = np.exp(-((away - reach) ** 2))
    pollen_on = _fill(pollen, beside, np.minimum(free, MOST_POLLEN))
    bees_on = _fill(bees, 1.0 - (away / (bees / boxes / 2.0 + 1.0)) ** 2, np.ones(frames))
    return {"brood": brood_on, "stores": stores_on, "pollen": pollen_on, "bees": bees_on}


def _fill(amount: float, shape: Floats, most: Floats) -> Floats:
    """Spread an amount over the frames in a shape, each up to its most; the rest is left out."""
    # a trace everywhere, so that what finds no place in the shape spills over its edge
    shape = np.maximum(shape, 0.0) + TRACE
    if amount <= 0.0 or most.sum() <= amount:
        return most if amount > 0.0 else np.zeros(len(most))
    order = np.argsort(most / shape)  # in which they fill up
    fuller = np.cumsum(most[order]) - most[order]
    levels = (amount - fuller) / np.cumsum(shape[order][::-1])[::-1]
    # the level at which those before are full and no other is: the greatest of all
    return np.asarray(np.minimum(most, levels.max() * shape))


def _combs(shares: dict[str, Floats], set_up: SetUp, new: int) -> list[Place]:
    """Give the frames from left to right; new ones stand at the two edges in turn."""
    held = [_held(shares, place) for place in range(set_up.frames - new)]
    sheets = min(new, set_up.foundation)
    added = [Place("foundation", is_new=True)] * sheets
    added += [Place("comb", is_new=True)] * (new - sheets)
    return [*added[0::2], *held, *added[1::2]]


def _held(shares: dict[str, Floats], place: int) -> Place:
    brood, stores, pollen, bees = (
        float(np.floor(1000.0 * shares[name][place]) / 1000.0)
        for name in ("brood", "stores", "pollen", "bees")
    )
    return Place("comb", brood, stores, pollen, bees)


def _between_boards(combs: list[Place], boards: int, places: int) -> tuple[Place, ...]:
    """Put the boards beside the nest, and gaps where the box is empty."""
    board, gap = Place("dummy board"), Place("gap")
    spare = max(0, places - len(combs) - boards)
    if boards == 0:
        return (*combs, *[gap] * spare)
    if boards == 1:
        return (*combs, board, *[gap] * spare)
    left = spare // 2
    return (*[gap] * left, board, *combs, board, *[gap] * (spare - left))


def _super(colonies: NDArray[np.void], hive: Hive) -> Box:
    drawn = np.maximum(colonies["super_drawn"], 1.0)
    full = np.median(colonies["super_ripe"] / colonies["sugar_per_cell"] / drawn)
    share = float(np.clip(full, 0.0, 1.0))
    return Box("super", tuple(Place("comb", stores=share) for _ in range(hive.super_frames)))

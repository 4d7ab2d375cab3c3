"""The stack from above, filled with what is believed to be in it: what the comb strip draws."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.kit.items import Hive
from combwright.simulation import observe
from combwright.terms.combs import Box, Place, StackView
from combwright.terms.set_up import SetUp

Floats = NDArray[np.float64]
FULLEST_BROOD: Final = 0.85  # share of the middle frame's cells that brood takes; judgement
FULLEST_STORES: Final = 0.95


def stack_view(
    colonies: NDArray[np.void],
    hive: Hive,
    set_up: SetUp,
    *,
    feeder_over: bool,
    was: SetUp | None = None,
) -> StackView:
    """Draw up a stack as it is believed to be, or as it is advised.

    Parameters
    ----------
    colonies
        Records of the state, [member]; their middle is drawn.
    hive, set_up
        The stack.
    feeder_over
        Whether feed stands over it.
    was
        The set-up before, so that new frames are marked.

    Returns
    -------
    StackView
        Boxes from the bottom up.

    """
    per_box = hive.capacity
    boxes = max(1, -(-set_up.frames // per_box))
    shares = _shares(colonies, set_up.frames)
    new = 0 if was is None else max(0, set_up.frames - was.frames)
    stack = []
    for number in range(boxes):
        first = number * per_box
        last = min(set_up.frames, first + per_box)
        combs = [_comb(shares, place, set_up, new) for place in range(first, last)]
        boards = set_up.dummy_boards if number == 0 else 0
        stack.append(Box("brood", _between_boards(combs, boards, per_box)))
    stack += [_super(colonies, hive) for _ in range(set_up.supers)]
    return StackView(
        tuple(stack),
        set_up.excluder and set_up.supers > 0,
        feeder_over,
        float(set_up.entrance_mm),
        float(set_up.tray_open_mm),
        set_up.cover,
    )


def _shares(colonies: NDArray[np.void], frames: int) -> dict[str, Floats]:
    """Share of each frame that holds brood, stores, pollen and bees, the nest in the middle."""
    cells = float(np.median(colonies["cells_per_frame"]))
    brood = float(np.median(observe.brood(colonies))) / max(cells, 1.0)
    stores = float(np.median(observe.frames_of_stores(colonies)))
    pollen = float(np.median(colonies["pollen"])) / 0.17 / max(cells, 1.0)
    bees = float(np.median(observe.frames_of_bees(colonies)))
    from_middle = np.abs(np.arange(frames) - (frames - 1) / 2.0)
    brood_on = _pour(brood, from_middle, np.full(frames, FULLEST_BROOD), rounded=True)
    stores_on = _pour(stores, -from_middle, np.maximum(FULLEST_STORES - brood_on, 0.0))
    free = np.maximum(1.0 - brood_on - stores_on, 0.0)
    beside = np.abs(from_middle - max(1.0, brood / FULLEST_BROOD / 2.0 + 0.5))
    pollen_on = _pour(pollen, beside, np.minimum(free, 0.4))
    bees_on = _pour(bees, from_middle, np.ones(frames))
    return {"brood": brood_on, "stores": stores_on, "pollen": pollen_on, "bees": bees_on}


def _pour(amount: float, order: Floats, most: Floats, *, rounded: bool = False) -> Floats:
    """Fill frames in an order, each up to its most; rounded nests taper off to the sides."""
    poured = np.zeros(len(order))
    left = amount
    for place in np.argsort(order, kind="stable"):
        share = min(left, most[place])
        poured[place] = share
        left -= share
    if rounded and amount > 1.0:
        wide = int((poured > 0.0).sum()) + 1
        nest = np.argsort(order, kind="stable")[: min(wide, len(order))]
        taper = 1.0 - 0.6 * (order[nest] / (order[nest].max() + 1e-9)) ** 2
        poured[nest] = np.minimum(most[nest], taper / taper.sum() * (amount - max(left, 0.0)))
    return poured


def _comb(shares: dict[str, Floats], place: int, set_up: SetUp, new: int) -> Place:
    frames = set_up.frames
    # new frames stand at the two edges of the nest in turn
    rank = min(place, frames - 1 - place) * 2 + (place > frames - 1 - place)
    is_new = rank < new
    holds = "foundation" if is_new and set_up.foundation > rank else "comb"
    if is_new:
        return Place(holds, bees=0.0, is_new=True)  # type: ignore[arg-type]
    filled = {name: float(np.clip(values[place], 0.0, 1.0)) for name, values in shares.items()}
    return Place("comb", filled["brood"], filled["stores"], filled["pollen"], filled["bees"])


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

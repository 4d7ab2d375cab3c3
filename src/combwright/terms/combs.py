"""A stack as it is seen from above: what the comb strip draws and the model fills."""

from dataclasses import dataclass
from typing import Literal

Holds = Literal["comb", "foundation", "dummy board", "feeder", "gap"]


@dataclass(frozen=True, slots=True)
class Place:
    """One place in a box: a frame, a board, a frame feeder or a gap.

    ``brood``, ``stores`` and ``pollen`` are the shares of the comb that hold each, ``bees`` the
    share of its length that bees cover (all 0 to 1); the rest of a comb is empty cells.
    """

    holds: Holds
    brood: float = 0.0
    stores: float = 0.0
    pollen: float = 0.0
    bees: float = 0.0
    is_new: bool = False


@dataclass(frozen=True, slots=True)
class Box:
    """One box of a stack, its places from the left or front to the right or back."""

    kind: Literal["brood", "super"]
    places: tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class StackView:
    """A stack from above: boxes from the bottom up, and what lies under and over them."""

    boxes: tuple[Box, ...]
    excluder: bool
    feeder_over: bool
    entrance_mm: float
    tray_open_mm: float
    cover: str

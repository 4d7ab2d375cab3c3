"""What is looked at, left alone, or done with queens, brood and cells: typed actions."""

from datetime import date
from typing import Literal

from pydantic import Field

from combwright.advice.kit_acts import Act

Seen = Literal[
    "life",
    "health",
    "queen cells",
    "every frame",
    "eggs",
    "signs of a queen",
    "cells on the test frame",
    "cups",
    "bees",
    "box with eggs",
    "colony",
]
Successor = Literal["mated queen", "marked cell"]
Due = Literal[
    "food may run out", "the queen may be short of room", "it may swarm", "it may be dead"
]


class Look(Act):
    """Look for something: today, or on or by a day."""

    do: Literal["look"] = "look"
    at: Seen
    on: date | None = None
    by: date | None = None
    chance: float | None = None
    due: Due | None = None
    if_none: Literal["test frame", "test frame or unite", "unite"] | None = None
    early_or_late: bool = Field(default=False, description="Before 10 am or after 5 pm")


class LeaveShut(Act):
    """Do not open from a day (today when left out) until another."""

    do: Literal["leave shut"] = "leave shut"
    why: Literal["queen is likely", "virgin mates", "swarmed", "as planned", "cold"]
    since: date | None = None
    until: date | None = None


class LeaveCells(Act):
    """Leave queen cells: all, or one good one; and look again on a day."""

    do: Literal["leave cells"] = "leave cells"
    which: Literal["all", "all for now", "one good one", "one in doubt"]
    on: date | None = None


class KnockDown(Act):
    """Knock down queen cells on a day, but for a marked one; and again by another day."""

    do: Literal["knock down cells"] = "knock down cells"
    on: date
    but: Literal["none", "marked one"] = "none"
    again_by: date | None = None
    look_for_queen: bool = False


class CutCells(Act):
    """Knock down every queen cell as a stop-gap, where eggs stand, and again by another day."""

    do: Literal["cut cells"] = "cut cells"
    again_by: date


class Demaree(Act):
    """Set all brood but one frame above the queen, in an upper box over excluder and supers."""

    do: Literal["demaree"] = "demaree"
    frames: int = Field(description="Drawn combs that the queen is given below")
    again_by: date


class Divide(Act):
    """Divide: the queen into a nuc, for charged cells or for sale, or by halves without her."""

    do: Literal["divide"] = "divide"
    way: Literal["nucleus", "on purpose", "halves"] = "nucleus"
    successor: Successor
    likely: bool = Field(default=False, description="Charged cells are likely, not found")
    may_supersede: bool = Field(default=False, description="Few cells may be for a successor")


class EggFrame(Act):
    """Put in a frame with eggs; where cells stand on it give a queen, a cell or leave one."""

    do: Literal["test frame"] = "test frame"
    marked: bool = False


class Requeen(Act):
    """Give a young mated queen: in place of the old one or, ``is_lost``, where there is none."""

    do: Literal["requeen"] = "requeen"
    is_lost: bool = False


class Wait(Act):
    """Wait with a judgement of the queen."""

    do: Literal["wait"] = "wait"
    until_month: int


class Uniting(Act):
    """Unite it with a healthy queenright neighbour."""

    do: Literal["unite"] = "unite"
    why: Literal["weak", "queenless", "drone layer", "laying workers"]


class GoOnAlone(Act):
    """Let it go on alone, where the plan would unite it."""

    do: Literal["go on alone"] = "go on alone"


class Give(Act):
    """Frames of sealed brood with bees that it can give for a nuc, and the queen it is given."""

    do: Literal["give"] = "give"
    frames_of_brood: int
    queen: Literal["mated queen", "cell"] | None = None


class Rehouse(Act):
    """Sell a nuc that fills its box, or set it into a hive."""

    do: Literal["rehouse"] = "rehouse"


class TakeIn(Act):
    """Frames of sealed brood that it can take from another."""

    do: Literal["take in"] = "take in"
    frames_of_brood: int = 1


class Heft(Act):
    """Weigh it by hand from behind, unopened."""

    do: Literal["heft"] = "heft"


class ClearEntrance(Act):
    """Clear dead bees from the entrance."""

    do: Literal["clear entrance"] = "clear entrance"


class MakeFast(Act):
    """Mouse guard, strap and roof for the winter."""

    do: Literal["make fast for winter"] = "make fast for winter"


class MoveNothing(Act):
    """Move nothing in or out of the yard, because of signs of disease."""

    do: Literal["move nothing"] = "move nothing"
    signs_at: str | None = Field(default=None, description="Another colony; none: this one")
    found_now: bool = False


class Reporting(Act):
    """Report to the bee inspectors."""

    do: Literal["report"] = "report"
    found_now: bool = False


class WashTools(Act):
    """Wash tools and gloves before the next hive."""

    do: Literal["wash tools"] = "wash tools"


class AsPlanned(Act):
    """Do as planned."""

    do: Literal["as planned"] = "as planned"
    look_into: Literal["cups"] | None = None


class AsForCharged(Act):
    """Do what is said of charged cells."""

    do: Literal["as for charged cells"] = "as for charged cells"

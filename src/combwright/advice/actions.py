"""What a decision asks for: typed actions with their amounts, never words.

A plan, a candidate that is tried and a branch are all tuples of these, so that a person, a program
or a simulated keeper can carry any of them out. Words are made from them in ``advice.words`` alone.
"""

from collections.abc import Iterable
from datetime import date
from typing import Annotated, Final, TypeVar

from pydantic import Field

from combwright.advice.bee_acts import (
    AsForCharged,
    AsPlanned,
    ClearEntrance,
    Divide,
    EggFrame,
    Give,
    GoOnAlone,
    Heft,
    KnockDown,
    LeaveCells,
    LeaveShut,
    Look,
    MakeFast,
    MoveNothing,
    Report,
    Requeen,
    TakeIn,
    Unite,
    Wait,
    WashTools,
)
from combwright.advice.kit_acts import (
    Act,
    Boards,
    Count,
    Entrance,
    Feed,
    Frames,
    KeepHoney,
    ProveRipe,
    Respace,
    Stack,
    SuperOff,
    SuperOn,
    TakeOut,
    TopCover,
    Tray,
    Treat,
    WriteDown,
)

Action = Annotated[
    Feed
    | Frames
    | Boards
    | SuperOn
    | SuperOff
    | Tray
    | TopCover
    | Entrance
    | Stack
    | Respace
    | ProveRipe
    | KeepHoney
    | Treat
    | WriteDown
    | TakeOut
    | Count
    | Look
    | LeaveShut
    | LeaveCells
    | KnockDown
    | Divide
    | EggFrame
    | Requeen
    | Wait
    | Unite
    | GoOnAlone
    | Give
    | TakeIn
    | Heft
    | ClearEntrance
    | MakeFast
    | MoveNothing
    | Report
    | WashTools
    | AsPlanned
    | AsForCharged,
    Field(discriminator="do"),
]
A = TypeVar("A", bound=Act)
DATES: Final = ("on", "by", "again_by")


def of_kind(actions: Iterable[Action], kind: type[A]) -> tuple[A, ...]:
    """Give the actions of one kind, in their order.

    Examples
    --------
    >>> of_kind((Heft(), Frames(more=2)), Frames)[0].more
    2

    """
    return tuple(each for each in actions if isinstance(each, kind))


def days_asked_for(actions: Iterable[Action]) -> list[date]:
    """Give the days on or by which actions ask to be at the hive.

    Examples
    --------
    >>> days_asked_for((Look(at="eggs", on=date(2027, 5, 20)), Heft()))
    [datetime.date(2027, 5, 20)]

    """
    named = (getattr(each, name, None) for each in actions for name in DATES)
    return [day for day in named if day is not None]

"""A set-up as actions that lead to it, and actions as the set-up that they lead to."""

from collections.abc import Callable, Iterable, Mapping
from typing import Any, Final

from combwright.advice.actions import Action
from combwright.advice.bee_acts import Demaree
from combwright.advice.kit_acts import (
    Act,
    Boards,
    Counting,
    Entrance,
    Frames,
    LeaveStack,
    SuperOff,
    SuperOn,
    TopCover,
    Tray,
)
from combwright.kit.items import Hive
from combwright.terms.set_up import SetUp

# what each action makes of a set-up, in its fields
CHANGES: Final[Mapping[type[Act], Callable[[Any, SetUp], dict[str, object]]]] = {
    Frames: lambda frames, now: {
        "frames": now.frames + frames.more,
        "foundation": max(0, frames.more) if frames.comb == "foundation" else 0,
    },
    Boards: lambda boards, now: {"dummy_boards": now.dummy_boards + boards.more},
    SuperOn: lambda on, now: {"supers": now.supers + on.supers, "excluder": True},
    SuperOff: lambda off, now: {
        "supers": now.supers - off.supers,
        "excluder": now.excluder and now.supers > off.supers,
    },
    Demaree: lambda upper, now: {
        "brood_boxes": now.brood_boxes + 1,
        "frames": now.frames + upper.frames,
        "dummy_boards": 0,
        "excluder": True,
    },
    Tray: lambda tray, _: {"tray_open_mm": tray.open_mm},
    Counting: lambda count, now: {
        "tray_open_mm": count.tray_open_mm if count.on_tray else now.tray_open_mm
    },
    TopCover: lambda top, _: {"cover": top.cover},
    Entrance: lambda entrance, _: {"entrance_mm": entrance.width_mm},
    LeaveStack: lambda left, now: {
        "frames": left.frames,
        "dummy_boards": left.dummy_boards,
        "supers": left.supers,
        "excluder": left.supers > 0 and (now.excluder or left.supers > now.supers),
    },
}


def steps_to(hive: Hive, now: SetUp, chosen: SetUp) -> tuple[Action, ...]:
    """Give the actions that make one set-up of another, in working order."""
    steps: list[Action] = []
    if more := chosen.frames - now.frames:
        is_foundation = more > 0 and chosen.foundation > 0
        steps.append(Frames(more=more, comb="foundation" if is_foundation else "drawn"))
    if boards := chosen.dummy_boards - now.dummy_boards:
        steps.append(Boards(more=boards))
    if chosen.supers > now.supers:
        steps.append(SuperOn(supers=chosen.supers - now.supers))
    if chosen.supers < now.supers:
        steps.append(SuperOff(supers=now.supers - chosen.supers, why="must be fed"))
    if chosen.tray_open_mm != now.tray_open_mm:
        steps.append(Tray(open_mm=chosen.tray_open_mm, there=hive.floor == "mesh"))
    if chosen.cover != now.cover:
        steps.append(TopCover(cover=chosen.cover))
    if chosen.entrance_mm != now.entrance_mm:
        steps.append(Entrance(width_mm=chosen.entrance_mm))
    return tuple(steps)


def set_up_after(now: SetUp, actions: Iterable[Action]) -> SetUp:
    """Give the set-up that actions lead to; those that move nothing of the stack count for none.

    An upper box goes on last, over the nest as all else leaves it.

    Examples
    --------
    >>> after = set_up_after(SetUp(frames=8), (Frames(more=2), SuperOn()))
    >>> after.frames, after.supers, after.excluder
    (10, 1, True)

    """
    for each in sorted(actions, key=lambda each: isinstance(each, Demaree)):
        if type(each) in CHANGES:
            changed = CHANGES[type(each)](each, now)
            now = SetUp.model_validate({**now.model_dump(), **changed})
    return now

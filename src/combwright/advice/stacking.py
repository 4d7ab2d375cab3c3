"""A set-up as actions that lead to it, and actions as the set-up that they lead to."""

from collections.abc import Iterable
from functools import singledispatch

from combwright.advice.actions import Action
from combwright.advice.kit_acts import (
    Act,
    Boards,
    Entrance,
    Frames,
    Stack,
    SuperOff,
    SuperOn,
    TopCover,
    Tray,
)
from combwright.kit.items import Hive
from combwright.terms.set_up import SetUp


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

    Examples
    --------
    >>> after = set_up_after(SetUp(frames=8), (Frames(more=2), SuperOn()))
    >>> after.frames, after.supers, after.excluder
    (10, 1, True)

    """
    for each in actions:
        if changed := _changed(each, now):
            now = SetUp.model_validate({**now.model_dump(), **changed})
    return now


@singledispatch
def _changed(action: Act, now: SetUp) -> dict[str, object]:
    del action, now
    return {}


@_changed.register
def _(action: Frames, now: SetUp) -> dict[str, object]:
    new = max(0, action.more) if action.comb == "foundation" else 0
    return {"frames": now.frames + action.more, "foundation": new}


@_changed.register
def _(action: Boards, now: SetUp) -> dict[str, object]:
    return {"dummy_boards": now.dummy_boards + action.more}


@_changed.register
def _(action: SuperOn, now: SetUp) -> dict[str, object]:
    return {"supers": now.supers + action.supers, "excluder": True}


@_changed.register
def _(action: SuperOff, now: SetUp) -> dict[str, object]:
    left = now.supers - action.supers
    return {"supers": left, "excluder": now.excluder and left > 0}


@_changed.register
def _(action: Tray, now: SetUp) -> dict[str, object]:
    del now
    return {"tray_open_mm": action.open_mm}


@_changed.register
def _(action: TopCover, now: SetUp) -> dict[str, object]:
    del now
    return {"cover": action.cover}


@_changed.register
def _(action: Entrance, now: SetUp) -> dict[str, object]:
    del now
    return {"entrance_mm": action.width_mm}


@_changed.register
def _(action: Stack, now: SetUp) -> dict[str, object]:
    excluder = action.supers > 0 and (now.excluder or action.supers > now.supers)
    return {
        "frames": action.frames,
        "dummy_boards": action.dummy_boards,
        "supers": action.supers,
        "excluder": excluder,
    }

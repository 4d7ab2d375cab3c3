"""What one decision forbids another: the actions that are left out, in one place."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from combwright.advice.bee_acts import (
    ClearEntrance,
    Divide,
    EggFrame,
    Heft,
    LeaveShut,
    Look,
    MakeFast,
    Requeen,
    Uniting,
    Wait,
)
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import nucs, swarm, treating
from combwright.advice.decisions.disease import is_sick
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.kept_shut import is_barred, is_kept_shut, nothing_moves
from combwright.advice.decisions.treated import treated
from combwright.advice.kit_acts import Act, Counting, CutDrones, Entrance, TopCover, Tray, Treat
from combwright.science.mites.treatments import VAPOURS

TOLD_LATER: Final = ("eggs", "cells on the test frame")  # looks that wait for a queen


def bound(decision: Decision, deciding: Deciding) -> Decision:
    """Give a decision without what it may not ask for; what was found stays said."""
    forbidden = deciding.of(_forbidden)
    asked = decision.asks(EggFrame) + decision.asks(Requeen)
    is_in_vain = deciding.of(is_sick) or any(isinstance(each, forbidden) for each in asked)
    allowed = tuple(
        each
        for each in decision.actions
        if not isinstance(each, forbidden) and not (is_in_vain and _waits_for_queen(each))
    )
    return decision if allowed == decision.actions else replace(decision, actions=allowed)


def _waits_for_queen(action: Act) -> bool:
    """Tell whether it is part of waiting for a queen, which nothing follows then."""
    return isinstance(action, LeaveShut) or (isinstance(action, Look) and action.at in TOLD_LATER)


def _forbidden(deciding: Deciding) -> tuple[type[Act], ...]:
    """Name what may not be done: between sick hives, at a shut one, to one that goes or divides."""
    return tuple(_named(deciding))


def _named(deciding: Deciding) -> Iterator[type[Act]]:
    if nothing_moves(deciding):
        yield from (CutDrones, EggFrame, Requeen, Uniting)
    if is_barred(deciding):
        yield Wait
    if is_kept_shut(deciding):
        yield from (Heft, ClearEntrance, MakeFast)
    if goes(deciding):
        yield from (EggFrame, Requeen)
    if deciding.of(swarm.decide).asks(Divide) or deciding.of(nucs.decide).asks(Divide):
        yield Requeen
    if any(count.on_tray for count in deciding.of(treating.decide).asks(Counting)):
        yield Tray
    begun = deciding.of(treating.decide).asks(Treat)
    if any(each.substance in VAPOURS for each in begun) or treated(deciding.situation).is_vapour:
        yield from (Tray, TopCover, Entrance)

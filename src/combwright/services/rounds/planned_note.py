"""The note that says: done as planned, or as a branch says."""

from datetime import date
from uuid import uuid4

from combwright.advice.actions import of_kind
from combwright.advice.kit_acts import LeaveStack
from combwright.advice.stacking import set_up_after
from combwright.planning.sheet import Branch, ColonySheet
from combwright.terms.set_up import SetUp
from combwright.terms.sugar import SYRUP_SUGAR


def as_advised(advised: ColonySheet, on: date, branch: Branch | None = None) -> dict[str, str]:
    """Fill the fields of a note with what was advised; what was seen stays open.

    Of a branch that was found instead, its portion and its stack count.
    """
    portion = advised.portion
    if branch is not None and branch.portion is not None:
        portion = branch.portion
    set_up = SetUp.model_validate(advised.set_up.model_dump())
    if branch is not None:
        set_up = _left_instead(advised, set_up, branch)
    feeder_off = set_up.supers > advised.set_up_now.supers
    return {
        "note": str(uuid4()),
        "on": on.isoformat(),
        "colony": advised.colony,
        "feeder": "-1" if feeder_off else "",
        "feed": portion.feed,
        "feed_g": str(portion.syrup_g),
        "feed_sugar": f"{portion.sugar_fraction or SYRUP_SUGAR:g}",
        **{name: _said(getattr(set_up, name)) for name in type(advised.set_up).model_fields},
    }


def _left_instead(advised: ColonySheet, planned: SetUp, branch: Branch) -> SetUp:
    """Give the stack that a branch leaves: sheets of foundation that stay out are not noted."""
    left = set_up_after(planned, of_kind(branch.actions, LeaveStack))
    kept = planned.foundation - max(0, planned.frames - left.frames)
    return left.model_copy(
        update={"foundation": max(kept, min(planned.foundation, advised.set_up_now.foundation))}
    )


def _said(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)

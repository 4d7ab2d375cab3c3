"""The note that says: done as planned."""

from datetime import date
from uuid import uuid4

from combwright.planning.sheet import Branch, ColonySheet
from combwright.terms.sugar import SYRUP_SUGAR


def as_advised(advised: ColonySheet, on: date, branch: Branch | None = None) -> dict[str, str]:
    """Fill the fields of a note with what was advised; what was seen stays open.

    Of a branch that was found instead, the portion counts.
    """
    portion = advised.portion
    if branch is not None and branch.portion is not None:
        portion = branch.portion
    feeder_off = advised.set_up.supers > advised.set_up_now.supers
    set_up = {name: _said(value) for name, value in advised.set_up.model_dump().items()}
    return {
        "note": str(uuid4()),
        "on": on.isoformat(),
        "colony": advised.colony,
        "feeder": "-1" if feeder_off else "",
        "feed": portion.feed,
        "feed_g": str(portion.syrup_g),
        "feed_sugar": f"{portion.sugar_fraction or SYRUP_SUGAR:g}",
        **set_up,
    }


def _said(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)

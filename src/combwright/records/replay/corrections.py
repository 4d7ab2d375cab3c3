"""What stands in a book once its corrections are applied."""

from collections.abc import Iterable
from uuid import UUID

from combwright.terms.entries import AnyEntry, Batch, BatchCounts, Correction, Noted, Split, Unite


def standing(entries: Iterable[AnyEntry]) -> list[Noted]:
    """Apply corrections, in the order written, and put what remains in the order of its days.

    The last correction of an entry counts. A replacement takes the place of what it replaces, and
    can be corrected in turn; striking out a correction restores what it had corrected.
    """
    in_order = list(entries)
    replaced = replacements(in_order)
    noted = (each for each in in_order if not isinstance(each, Correction))
    stand = (last_form(each, replaced) for each in noted)
    return sorted((each for each in stand if each is not None), key=lambda each: each.on)


def replacements(in_order: list[AnyEntry]) -> dict[UUID, Noted | None]:
    """Find what has taken the place of each corrected entry (``None``: struck out)."""
    replaced: dict[UUID, Noted | None] = {}
    # from the last to the first: whoever spoke last is right
    for each in reversed(in_order):
        if not isinstance(each, Correction):
            continue
        if each.id not in replaced:
            replaced.setdefault(each.corrects, each.replacement)
        elif (better := replaced[each.id]) is not None:
            replaced.setdefault(each.corrects, better)
    return replaced


def last_form(each: Noted, replaced: dict[UUID, Noted | None]) -> Noted | None:
    """Follow an entry through its corrections to what stands today."""
    seen: set[UUID] = set()
    current: Noted | None = each
    while current is not None and current.id in replaced and current.id not in seen:
        seen.add(current.id)
        current = replaced[current.id]
    return current


def names(each: Noted) -> tuple[str, ...]:
    """Name the colonies that an entry is about."""
    own = getattr(each, "colony", None)
    if isinstance(each, Split):
        return (each.colony, each.new_colony)
    if isinstance(each, Unite):
        return (each.colony, each.into)
    return (own,) if own is not None else ()


def subject(each: Noted) -> str:
    """Name what an entry is about: an order, a batch, a queen, a lot, honey, a colony, a sale."""
    if isinstance(each, Batch | BatchCounts):
        return each.batch
    words = ("order", "queen", "lot", "honey", "colony", "sale", "product")
    return next((str(name) for word in words if (name := getattr(each, word, None))), "")

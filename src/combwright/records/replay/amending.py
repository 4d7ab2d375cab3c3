"""Putting the book right from a notebook whose lines were changed after they had been added."""

from collections.abc import Iterable, Sequence
from datetime import date
from uuid import UUID, uuid5

from combwright.records.notebook.noting import NOTEBOOK
from combwright.records.replay.corrections import standing, subject
from combwright.terms.entries import AnyEntry, Colony, Correction, Noted, Yard

FROM_A_NOTEBOOK = 5  # the version of the ids that a notebook's notes get


def amendments(whole: Sequence[AnyEntry], notes: Iterable[Noted]) -> list[Correction]:
    """Write the corrections after which the book says of these days what the notebook says.

    For every colony and day of the notebook, notes that came from a notebook and are no longer in
    it are struck out; those that had been struck out and are in it again return.
    """
    said = {each.id: each for each in notes}
    days = {day_of(each) for each in said.values()}
    stand = standing(whole)
    ids = {each.id for each in stand}
    written = {each.id for each in whole}
    found = [
        correction(each.id, each.on, None, len(whole))
        for each in stand
        if day_of(each) in days
        and each.id not in said
        and each.id.version == FROM_A_NOTEBOOK
        and not isinstance(each, Yard | Colony)
    ]
    found += [
        correction(each.id, each.on, each, len(whole))
        for each in said.values()
        if each.id in written and each.id not in ids
    ]
    return found


def day_of(each: Noted) -> tuple[str, date]:
    """Name what a note is about, a colony as a rule, and its day."""
    return subject(each), each.on


def correction(key: UUID, on: date, replacement: Noted | None, written: int) -> Correction:
    """Write one correction; how much was written before tells it from an earlier one."""
    return Correction(
        id=uuid5(NOTEBOOK, f"correction of {key} after {written} entries"),
        on=on,
        corrects=key,
        replacement=replacement,
    )

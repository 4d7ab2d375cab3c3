"""What was written on the paper sheet, entered afterwards in the same order: a row a colony."""

from collections.abc import Mapping
from typing import Final
from uuid import UUID, uuid5

from combwright.planning.sheet import RoundSheet
from combwright.records.store.book_handle import Book
from combwright.services.book.field_words import FieldProblem
from combwright.services.book.form_fields import FormField, form_field
from combwright.services.book.hive_form import all_taken, counting_on
from combwright.services.book.notes import NoteError, take_note
from combwright.services.rounds.planned_note import as_advised
from combwright.terms.entries import HowCounted

SEEN: Final = "seen"  # ticked where the colony was seen to, though nothing was written
REST: Final = ("frames_of_stores", "eggs", "queen_seen", "queen_cells", "cells_found", "feed_g")


def paper_fields(counting: HowCounted | None) -> list[FormField]:
    """Lay out a row, in the order of the paper: bees and brood as the keeper counts them."""
    bees = "seams_of_bees" if counting and counting.bees == "seams" else "frames_of_bees"
    in_combs = counting and counting.brood == "combs with brood"
    names = (bees, "combs_with_brood" if in_combs else "frames_of_brood", *REST, "remark")
    return [form_field(all_taken()[name], name) for name in names]


def take_written(
    book: Book, sheet: RoundSheet, fields: Mapping[str, str]
) -> tuple[list[str], list[FieldProblem]]:
    """Put the rows into the book and name those that came in; what is wrong names its row.

    A row that is ticked or has anything in it is a visit done as planned, but for what it says.
    The same page sent twice is kept once.
    """
    page = UUID(fields["id"])
    named = [one.name for one in paper_fields(counting_on(book.now().entries, sheet.on))]
    came: list[str] = []
    problems: list[FieldProblem] = []
    for each in sheet.colonies:
        row = f"-{each.order}"
        told = {name: fields[name + row] for name in named if fields.get(name + row, "").strip()}
        if not told and SEEN + row not in fields:
            continue
        note = as_advised(each, sheet.on) | told | {"note": str(uuid5(page, each.colony))}
        try:
            take_note(book, note)
        except NoteError as error:
            problems += [
                FieldProblem(one.field + row, one.what, one.remedy) for one in error.problems
            ]
        else:
            came.append(each.colony)
    return came, problems

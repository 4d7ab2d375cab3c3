"""A note made at a hive: the fields of one form become the entries of one visit.

The form carries every value, and the ids of the entries follow from the note's own: the same note
sent twice is the same entries, which the book keeps once.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final
from uuid import UUID, uuid5

from pydantic import ValidationError

from combwright.records.problems import Problem
from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, Report, add_entries
from combwright.services.book.field_words import FieldProblem, in_words
from combwright.services.book.hive_form import all_taken, form_name, kinds_at_hive, taken
from combwright.terms.entries import ENTRY, AnyEntry, Correction, Entry, Visit
from combwright.terms.entries.fields import EntryField, fields_of
from combwright.terms.errors import CombwrightError

SHARED: Final = ("on", "colony")
KEPT: Final = "It is kept as a draft: put the fields right and save it again."


class NoteError(CombwrightError):
    """A note cannot be taken as it stands; each problem names its field."""

    def __init__(self, problems: Sequence[FieldProblem]) -> None:
        self.problems = tuple(problems)
        told = " ".join(f"{one.what} {one.remedy}".strip() for one in problems)
        super().__init__(told or "The note cannot be taken.", remedy=KEPT)


@dataclass(frozen=True, slots=True)
class TakenNote:
    """What became of a note."""

    note: UUID
    new: int
    odd: tuple[str, ...]


def note_entries(fields: Mapping[str, str]) -> list[AnyEntry]:
    """Make the entries of a note from ``note`` (its id), ``on``, ``colony``, and what was seen.

    Fields that are empty, and names that are not known here, are passed over.
    """
    told = {name: _plain(name, value.strip()) for name, value in fields.items() if value.strip()}
    note = _id(told.get("note", ""))
    found: list[AnyEntry] = []
    problems: list[FieldProblem] = []
    shared = {name: told[name] for name in SHARED if name in told}
    for kind, about in kinds_at_hive().items():
        if not _is_told(about, told):
            continue
        own = {one.name: told[name] for name, one in taken(about).items() if name in told}
        content = shared | dict(about.AT_HIVE) | own
        try:
            found.append(ENTRY.validate_python({**content, "kind": kind, "id": uuid5(note, kind)}))
        except ValidationError as error:
            problems += in_words(error, about, form_name)
    if problems:
        raise NoteError(list(dict.fromkeys(problems)))
    return found


def _plain(name: str, value: str) -> str:
    """Read 8,5 as 8.5: a phone's keys have whichever sign its language has."""
    whole, _, part = value.partition(",")
    field = all_taken().get(name)
    is_number = field is not None and field.is_number and whole.isdecimal() and part.isdecimal()
    return f"{whole}.{part}" if is_number else value


def _is_told(kind: type[Entry], told: Mapping[str, str]) -> bool:
    """Tell whether a note says what an entry cannot be without; a visit there was always."""
    fields = taken(kind)
    needed = {name for name, one in fields.items() if one.is_required} or fields.keys()
    given = {name for name in needed if name in told and not _is_nought(fields[name], told[name])}
    return kind is Visit or bool(given)


def _is_nought(field: EntryField, value: str) -> bool:
    """Tell whether a nought says that there was none: nothing was fed when the portion is none."""
    return field.about.nought_is_none and value in {"0", "0.0"}


def _id(text: str) -> UUID:
    try:
        return UUID(text)
    except ValueError:
        problem = FieldProblem("note", "The note has no id.", "Open its form again.")
        raise NoteError([problem]) from None


def take_note(book: Book, fields: Mapping[str, str]) -> TakenNote:
    """Put a note into the book, all of it or nothing; taking it again changes nothing."""
    entries = note_entries(fields)
    return TakenNote(_id(fields["note"]), *_added(book, entries))


def _added(book: Book, entries: Sequence[AnyEntry]) -> tuple[int, tuple[str, ...]]:
    try:
        report: Report = add_entries(book, entries)
    except RefusedError as error:
        fields = [_beside_field(one, entries) for one in error.problems if one.blocks]
        raise NoteError(fields) from error
    return report.new, tuple(f"{one.what} {one.remedy}" for one in report.problems)


def _beside_field(problem: Problem, entries: Sequence[AnyEntry]) -> FieldProblem:
    """Put a clash beside the field of the form that it is about."""
    kinds = {each.id: type(each) for each in entries}
    field = fields_of(kinds[problem.entry]).get(problem.field) if problem.entry in kinds else None
    return FieldProblem(form_name(field) if field else "", problem.what, problem.remedy)


def undo_note(book: Book, note: UUID, on: date) -> int:
    """Strike out the entries of a note and tell how many; one that never came is no matter."""
    known = {each.id for each in book.now().history}
    struck = [
        Correction(id=uuid5(note, f"undo {kind}"), on=on, corrects=entry)
        for kind in kinds_at_hive()
        if (entry := uuid5(note, kind)) in known and uuid5(note, f"undo {kind}") not in known
    ]
    return _added(book, struck)[0] if struck else 0

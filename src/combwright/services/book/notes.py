"""A note made at a hive: the fields of one form become the entries of one visit.

The form carries every value, and the ids of the entries follow from the note's own: the same note
sent twice is the same entries, which the book keeps once.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final
from uuid import UUID, uuid5

from pydantic import ValidationError

from combwright.records.problems import Problem
from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, Report, add_entries
from combwright.services.book.field_words import FieldProblem, in_words
from combwright.terms.entries import ENTRY, AnyEntry, Correction
from combwright.terms.errors import CombwrightError

SHARED: Final = ("on", "colony")
VISIT: Final = [
    "frames_of_bees",
    "frames_of_brood",
    "frames_of_stores",
    "stores_kg",
    "hive_weight_kg",
    "eggs",
    "queen_seen",
    "queen_cells",
    "syrup_left_g",
    "temper",
    "disease_signs",
]
STACK: Final = [
    "hive",
    "frames",
    "foundation",
    "dummy_boards",
    "supers",
    "excluder",
    "entrance_mm",
    "tray_open_mm",
    "cover",
    "pitch_mm",
]
# For each kind of entry: the field of the entry, and the field of the form that it is read from.
# How the stack is left comes last, after what was taken from it.
PARTS: Final[Mapping[str, Mapping[str, str]]] = {
    "visit": {name: name for name in [*VISIT, "remark"]},
    "change": {"count": "feeder"},
    "feed": {"feed": "feed", "grams": "feed_g", "sugar_fraction": "feed_sugar"},
    "tray count": {"mites": "tray_mites", "days": "tray_days"},
    "wash count": {"mites": "wash_mites", "bees": "wash_bees", "method": "wash_method"},
    "treatment": {
        "substance": "substance",
        "product": "product",
        "batch": "batch",
        "amount": "amount",
        "until": "treated_until",
    },
    "queen": {"event": "queen_event", "queen_year": "queen_year"},
    "harvest": {"honey_kg": "honey_kg", "supers": "harvest_supers"},
    "stack": {name: name for name in STACK},
}
FIXED: Final[Mapping[str, Mapping[str, str]]] = {"change": {"part": "feeder"}}
# an entry is made when one of these is filled in; a visit always
ASKED_BY: Final[Mapping[str, Sequence[str]]] = {
    "change": ["feeder"],
    "feed": ["feed_g"],
    "stack": STACK,
    "tray count": ["tray_mites", "tray_days"],
    "wash count": ["wash_mites", "wash_bees"],
    "treatment": ["substance"],
    "queen": ["queen_event"],
    "harvest": ["honey_kg"],
}
TEXTS: Final = frozenset(("colony", "remark", "disease_signs", "product", "batch", "amount"))
KEPT: Final = "It is kept as a draft: put the fields right and save it again."


class NoteError(CombwrightError):
    """A note cannot be taken as it stands; each problem names its field."""

    def __init__(self, problems: Sequence[FieldProblem]) -> None:
        self.problems = tuple(problems)
        told = " ".join(f"{one.what} {one.remedy}".strip() for one in problems)
        super().__init__(told or "The note cannot be taken.", remedy=KEPT)


@dataclass(frozen=True, slots=True)
class Noted:
    """What became of a note."""

    note: UUID
    new: int
    odd: tuple[str, ...]


def note_entries(fields: Mapping[str, str]) -> list[AnyEntry]:
    """Make the entries of a note.

    Parameters
    ----------
    fields
        The form: ``note`` (its id), ``on``, ``colony``, and whatever was seen and done. Fields
        that are empty, and names that are not known here, are passed over.

    Raises
    ------
    NoteError
        Values are missing or impossible; every one of them is named.

    """
    told = {name: _plain(name, value.strip()) for name, value in fields.items() if value.strip()}
    note = _id(told.get("note", ""))
    found: list[AnyEntry] = []
    problems: list[FieldProblem] = []
    for kind, names in PARTS.items():
        if kind in ASKED_BY and not any(_is_given(told, name) for name in ASKED_BY[kind]):
            continue
        content: dict[str, Any] = {name: told[name] for name in SHARED if name in told}
        content |= FIXED.get(kind, {})
        content |= {name: told[field] for name, field in names.items() if field in told}
        try:
            found.append(ENTRY.validate_python({**content, "kind": kind, "id": uuid5(note, kind)}))
        except ValidationError as error:
            problems += in_words(error, kind, names)
    if problems:
        raise NoteError(list(dict.fromkeys(problems)))
    return found


def _plain(field: str, value: str) -> str:
    """Read 8,5 as 8.5: a phone's keys have whichever sign its language has."""
    whole, _, part = value.partition(",")
    is_number = field not in TEXTS and whole.isdecimal() and part.isdecimal()
    return f"{whole}.{part}" if is_number else value


def _is_given(told: Mapping[str, str], field: str) -> bool:
    """Tell whether a field asks for its entry: nothing was fed when the portion is none."""
    return field in told and not (field == "feed_g" and told[field] in {"0", "0.0"})


def _id(text: str) -> UUID:
    try:
        return UUID(text)
    except ValueError:
        problem = FieldProblem("note", "The note has no id.", "Open its form again.")
        raise NoteError([problem]) from None


def take_note(book: Book, fields: Mapping[str, str]) -> Noted:
    """Put a note into the book, all of it or nothing; taking it again changes nothing.

    Raises
    ------
    NoteError
        Values are impossible, or clash with the book.

    """
    entries = note_entries(fields)
    return Noted(_id(fields["note"]), *_added(book, entries))


def _added(book: Book, entries: Sequence[AnyEntry]) -> tuple[int, tuple[str, ...]]:
    try:
        report: Report = add_entries(book, entries)
    except RefusedError as error:
        fields = [_beside_field(one) for one in error.problems if one.blocks]
        raise NoteError(fields) from error
    return report.new, tuple(f"{one.what} {one.remedy}" for one in report.problems)


def _beside_field(problem: Problem) -> FieldProblem:
    """Find the field that a clash is about by the words it begins with."""
    words = problem.what.lower()
    named = (f for f in [*VISIT, *STACK] if words.startswith(f.replace("_", " ")))
    field = max(named, key=len, default="")
    remedy = problem.remedy.split(";")[-1].strip() if field else problem.remedy
    return FieldProblem(field, problem.what, remedy[:1].upper() + remedy[1:])


def undo_note(book: Book, note: UUID, on: date) -> int:
    """Strike out the entries of a note; a note that never came is no matter.

    Returns
    -------
    int
        How many entries were struck out now.

    """
    known = {each.id for each in book.now().history}
    struck = [
        Correction(id=uuid5(note, f"undo {kind}"), on=on, corrects=entry)
        for kind in PARTS
        if (entry := uuid5(note, kind)) in known and uuid5(note, f"undo {kind}") not in known
    ]
    return _added(book, struck)[0] if struck else 0

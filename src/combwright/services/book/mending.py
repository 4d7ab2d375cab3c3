"""Putting a note right, or striking it out: the old one stays in the book beside the reason."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from uuid import UUID, uuid5

from pydantic import ValidationError

from combwright.records.replay.corrections import names
from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import history
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.book.entry_words import said
from combwright.services.book.field_words import FieldProblem, in_words
from combwright.services.book.form_fields import FormField, form_field
from combwright.services.book.notes import NoteError
from combwright.services.book.photos import Photos
from combwright.terms.entries import ENTRY, AnyEntry, Correction, Noted
from combwright.terms.entries.fields import fields_of
from combwright.terms.errors import NotFoundError

FEWEST_LETTERS = 4  # of a short key that names an entry


@dataclass(frozen=True, slots=True)
class Mended:
    """A note that was put right or struck out: when, what it said, what it says now, and why."""

    on: date
    entry: UUID
    kind: str
    was: str
    now: str
    reason: str


def entry_named(book: Book, key: str) -> Noted:
    """Find a note that stands by its id, or by the first letters of it."""
    wanted = key.strip().lower()
    found = [each for each in book.now().entries if str(each.id).startswith(wanted)]
    if len(wanted) < FEWEST_LETTERS or len(found) != 1:
        many = "More than one note begins" if len(found) > 1 else "No note that stands begins"
        raise NotFoundError(f"{many} with “{key}”.", remedy=_now_under(book, wanted))
    return found[0]


def _now_under(book: Book, wanted: str) -> str:
    """Say what became of a note that was put right, or how to find one that stands."""
    with book.reading() as db:
        corrections = [each for each in history(db) if isinstance(each, Correction)]
    for each in corrections if len(wanted) >= FEWEST_LETTERS else ():
        if str(each.corrects).startswith(wanted):
            now = each.replacement
            became = f"put right and is now {str(now.id)[:8]}" if now else "struck out"
            return f"It was {became}."
    return "Give more of its id; “combwright book show NAME --json” lists them whole."


def mend_fields(entry: Noted, known: Mapping[str, Sequence[str]]) -> list[FormField]:
    """Lay out the form that puts a note right; what it holds can always be chosen again."""
    laid = []
    for name, field in fields_of(type(entry)).items():
        names_of = known.get(field.about.chosen_from, ())
        own = [getattr(entry, name)] if names_of and getattr(entry, name) is not None else []
        laid.append(form_field(field, name, list(dict.fromkeys([*own, *names_of]))))
    return laid


def as_written(entry: Noted) -> dict[str, str]:
    """Give the values of a note as a form holds them."""
    values = entry.model_dump(mode="json", exclude_none=True)
    yes_or_no = {True: "yes", False: "no"}
    return {
        name: yes_or_no[value] if isinstance(value, bool) else str(value)
        for name in fields_of(type(entry))
        if (value := values.get(name)) is not None
    }


def mend(
    book: Book, entry: Noted, fields: Mapping[str, str], *, change: UUID, on: date, reason: str
) -> Noted:
    """Put another note in the place of one; only the fields that are named are changed.

    ``change`` names this change, so that sending it twice makes it once.
    """
    told = as_written(entry) | {
        name: value.strip() for name, value in fields.items() if name in fields_of(type(entry))
    }
    whole: dict[str, object] = {"kind": entry.kind, "id": uuid5(change, "mended")}
    whole |= {name: value for name, value in told.items() if value}
    try:
        better = ENTRY.validate_python(whole)
    except ValidationError as error:
        raise NoteError(in_words(error, type(entry), lambda field: field.name)) from error
    _correct(book, entry, better, change=change, on=on, reason=reason)
    return better  # type: ignore[return-value]  # of the entry's own kind


def changed(
    book: Book,
    entry: Noted,
    settings: Sequence[str],
    *,
    is_struck: bool = False,
    change: UUID,
    on: date,
    reason: str,
) -> Noted | None:
    """Change a note as the terminal asks: fields as name=value, or struck out."""
    if is_struck:
        strike(book, entry, change=change, on=on, reason=reason)
        return None
    told = (one.partition("=")[::2] for one in settings)
    fields = {"_".join(name.split()): value for name, value in told}
    known = fields_of(type(entry))
    if not fields or fields.keys() - known.keys():
        wrong = ", ".join(fields.keys() - known.keys())
        raise NotFoundError(
            f"A {entry.kind} has no “{wrong}”." if wrong else "Nothing is to be changed.",
            remedy=f"Give one of {', '.join(known)} as name=value, or --strike.",
        )
    return mend(book, entry, fields, change=change, on=on, reason=reason)


def strike(book: Book, entry: Noted, *, change: UUID, on: date, reason: str) -> None:
    """Strike a note out."""
    _correct(book, entry, None, change=change, on=on, reason=reason)


def _correct(
    book: Book, entry: Noted, better: AnyEntry | None, *, change: UUID, on: date, reason: str
) -> None:
    if not reason.strip():
        what = "A note is changed for a reason, and it is not given."
        raise NoteError([FieldProblem("reason", what, "Say in a few words what was wrong.")])
    correction = Correction(
        id=change, on=on, corrects=entry.id, replacement=better, remark=reason.strip()
    )
    try:
        add_entries(book, [correction])
    except RefusedError as error:
        found = (
            FieldProblem(one.field, one.what, one.remedy) for one in error.problems if one.blocks
        )
        raise NoteError(list(dict.fromkeys(found))) from error
    if better is not None:
        Photos(book).carry(entry.id, better.id)


def mended(history: Sequence[AnyEntry], colony: str) -> list[Mended]:
    """List what was put right about a colony, newest first."""
    written: dict[UUID, Noted] = {}
    found: list[Mended] = []
    for each in history:
        if not isinstance(each, Correction):
            written[each.id] = each
            continue
        was, now = written.get(each.corrects), each.replacement
        if now is not None:
            written[now.id] = now
        if was is None or colony not in {*names(was), *(names(now) if now else ())}:
            continue
        words = said(now) if now else "struck out"
        found.append(Mended(each.on, was.id, was.kind, said(was), words, each.remark))
    return found[::-1]

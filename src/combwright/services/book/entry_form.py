"""Entries that are made at the desk, one form each: yards, colonies, splits, kit and the rest."""

from collections.abc import Mapping, Sequence
from typing import Final
from uuid import UUID, uuid5

from pydantic import ValidationError

from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.book.field_words import FieldProblem, in_words
from combwright.services.book.form_fields import FormField, form_field
from combwright.services.book.notes import NoteError
from combwright.terms.entries import (
    ENTRY,
    KINDS,
    AnyEntry,
    BeesSold,
    End,
    Entry,
    OrderNews,
    OwnQueenNews,
    Queen,
    QueenEvent,
)
from combwright.terms.entries.fields import fields_of
from combwright.terms.errors import NotFoundError

FORMS: Final[Mapping[str, type[Entry]]] = {
    kind.model_fields["kind"].default: kind for kind in KINDS if kind.TITLE
}


# what news of a queen with a name say of the colony that she is in
OF_THE_COLONY: Final[Mapping[str, QueenEvent]] = {"lost": "lost", "emerged": "virgin"}


def form_of(kind: str) -> type[Entry]:
    """Give the kind of entry that a form makes."""
    if kind not in FORMS:
        raise NotFoundError(
            f"There is no form for “{kind}”.", remedy=f"There is: {', '.join(FORMS)}."
        )
    return FORMS[kind]


def form_fields(kind: str, known: Mapping[str, Sequence[str]]) -> list[FormField]:
    """Lay out a form; what the book or the catalogue knows is chosen from."""
    return [
        form_field(field, name, known.get(field.about.chosen_from, ()))
        for name, field in fields_of(form_of(kind)).items()
    ]


def take_entry(book: Book, kind: str, fields: Mapping[str, str]) -> UUID:
    """Put the entry of one form into the book; the same form sent twice is kept once."""
    about = form_of(kind)
    told = {name: fields[name].strip() for name in ("id", *fields_of(about)) if name in fields}
    try:
        entry = ENTRY.validate_python(
            {"kind": kind} | {name: value for name, value in told.items() if value}
        )
    except ValidationError as error:
        raise NoteError(in_words(error, about, lambda field: field.name)) from error
    try:
        add_entries(book, [entry, *follows(entry), *told_of_the_colony(book, entry)])
    except RefusedError as error:
        raise NoteError(
            [FieldProblem(one.field, one.what, one.remedy) for one in error.problems if one.blocks]
        ) from error
    return entry.id


def follows(entry: AnyEntry) -> list[AnyEntry]:
    """Give the notes that follow from one: what was sold leaves the book, its order is met."""
    if not isinstance(entry, BeesSold):
        return []
    found: list[AnyEntry] = []
    if entry.order is not None:
        key = uuid5(entry.id, "delivered")
        found.append(
            OrderNews(id=key, on=entry.on, order=entry.order, event="delivered", count=entry.count)
        )
    if entry.colony is not None and entry.what in {"nuc", "colony"}:
        key = uuid5(entry.id, "left")
        found.append(End(id=key, on=entry.on, colony=entry.colony, reason="sold"))
    if entry.queen is not None:
        key = uuid5(entry.id, "queen")
        found.append(OwnQueenNews(id=key, on=entry.on, queen=entry.queen, event="sold"))
    return found


def told_of_the_colony(book: Book, entry: AnyEntry) -> list[AnyEntry]:
    """Give what news of a queen with a name say of her colony, unless it is noted already."""
    if not isinstance(entry, OwnQueenNews) or entry.event not in OF_THE_COLONY:
        return []
    now = book.now()
    known = now.queens.get(entry.queen)
    colony = entry.colony or (known.colony if known else None)
    if colony is None or colony not in {each.colony for each in now.living}:
        return []
    event = OF_THE_COLONY[entry.event]
    if any(isinstance(each, Queen) and each.on == entry.on for each in now.of(colony)):
        return []
    return [Queen(id=uuid5(entry.id, "colony"), on=entry.on, colony=colony, event=event)]

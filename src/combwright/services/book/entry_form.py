"""Entries that are made at the desk, one form each: yards, colonies, splits, kit and the rest."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal, get_args
from uuid import UUID

from pydantic import ValidationError

from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.book.field_words import FieldProblem, in_words
from combwright.services.book.notes import NoteError
from combwright.terms.entries import ENTRY, QueenEvent

Form = Literal["yard", "colony", "split", "unite", "move", "end", "queen", "kit", "limit"]


@dataclass(frozen=True, slots=True)
class Asked:
    """One field of a form: its name in the entry, its words, and what may be chosen."""

    field: str
    words: str
    type: str = "text"
    choices: tuple[str, ...] = ()
    hint: str = ""


DAY: Final = Asked("on", "Day", "date")
OF: Final = Asked("colony", "Colony", "colony")
REMARK: Final = Asked("remark", "Remark")
FORMS: Final[Mapping[Form, tuple[str, tuple[Asked, ...]]]] = {
    "yard": (
        "A yard",
        (
            DAY,
            Asked("yard", "Name of the yard"),
            Asked("climate", "Climate", "climate", hint="used where no weather is known"),
            Asked("district", "Forage around it", "district"),
            Asked("latitude", "Latitude", "number", hint="degrees north, for forecasts"),
            Asked("longitude", "Longitude", "number", hint="degrees east, west is negative"),
            REMARK,
        ),
    ),
    "colony": (
        "A colony",
        (
            DAY,
            Asked("colony", "Name of the colony"),
            Asked("yard", "Yard", "yard"),
            Asked("hive", "Hive", "hive"),
            Asked("queen_year", "Year of the queen", "number"),
            REMARK,
        ),
    ),
    "split": (
        "A split",
        (
            DAY,
            OF,
            Asked("new_colony", "Name of the new colony"),
            Asked("hive", "Hive of the new colony", "hive"),
            Asked("frames_of_bees", "Frames of bees given", "number"),
            Asked("frames_of_brood", "Frames of brood given", "number"),
            Asked("frames_of_stores", "Frames of stores given", "number"),
            Asked("goes_with", "With", "choice", ("cell", "queen", "mated queen", "nothing")),
            REMARK,
        ),
    ),
    "unite": (
        "A uniting",
        (DAY, OF, Asked("into", "Into, whose queen is kept", "colony"), REMARK),
    ),
    "move": ("A move", (DAY, OF, Asked("yard", "To the yard", "yard"), REMARK)),
    "end": (
        "A colony that is gone",
        (
            DAY,
            OF,
            Asked(
                "reason",
                "Why",
                "choice",
                ("dead", "sold", "swarmed out", "united", "stolen", "other"),
            ),
            REMARK,
        ),
    ),
    "queen": (
        "A queen",
        (
            DAY,
            OF,
            Asked(
                "event",
                "What",
                "choice",
                get_args(QueenEvent),
                hint="cells knocked down: all of them",
            ),
            Asked("queen_year", "Year of the queen", "number"),
            REMARK,
        ),
    ),
    "kit": (
        "Kit",
        (DAY, Asked("item", "What", "item"), Asked("count", "How many, free for use", "number")),
    ),
    "limit": (
        "A limit on harm",
        (
            DAY,
            Asked("harm", "Harm", "choice", ("hunger", "no room", "chilled", "sour", "swarm")),
            Asked("percent", "Greatest chance", "number", hint="per cent, 0 to 50"),
        ),
    ),
}


def take_entry(book: Book, kind: Form, fields: Mapping[str, str]) -> UUID:
    """Put the entry of one form into the book; the same form sent twice is kept once.

    Raises
    ------
    NoteError
        Values are impossible, or clash with the book; each problem names its field.

    """
    names = {asked.field: asked.field for asked in FORMS[kind][1]} | {"id": "id"}
    told = {name: value.strip() for name, value in fields.items() if name in names}
    try:
        entry = ENTRY.validate_python(
            {"kind": kind} | {name: value for name, value in told.items() if value}
        )
    except ValidationError as error:
        raise NoteError(in_words(error, kind, names)) from error
    try:
        add_entries(book, [entry])
    except RefusedError as error:
        told_problems = [FieldProblem("", one.what, one.remedy) for one in error.problems]
        raise NoteError(told_problems) from error
    return entry.id

"""Beginning a book, or a yard in it: the place, its colonies in one table, and their first look."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final
from uuid import UUID, uuid5

from pydantic import ValidationError

from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.book.field_words import FieldProblem, in_words
from combwright.services.book.form_fields import FormField, form_field
from combwright.services.book.notes import NoteError
from combwright.terms.entries import ENTRY, AnyEntry, Colony, Entry, Split, Stack, Visit, Yard
from combwright.terms.entries.fields import fields_of
from combwright.weather.places import find_places, nearest_climate

MOST_ROWS: Final = 40
USUAL_HIVE: Final = "national timber"
COLUMNS: Final[Mapping[type[Entry], tuple[str, ...]]] = {
    Colony: ("colony", "hive", "queen_year"),
    Visit: ("frames_of_bees", "frames_of_brood", "frames_of_stores"),
    Stack: ("frames", "supers"),
}
NAMES: Final = ("colony", "hive")
TYPED: Final = tuple(name for names in COLUMNS.values() for name in names if name != "hive")


@dataclass(frozen=True, slots=True)
class Begun:
    """The colonies that were entered, and what of them is odd."""

    colonies: tuple[str, ...]
    odd: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """What makes one entry: its kind, its row in the table (none of the yard), and its values."""

    kind: type[Entry]
    row: str
    values: Mapping[str, Any]

    def entry(self, change: UUID, on: date) -> AnyEntry:
        """Make the entry; the same table sent twice makes it with the same id."""
        kind = self.kind.model_fields["kind"].default
        content = {"kind": kind, "id": uuid5(change, f"{kind}{self.row}"), "on": on}
        return ENTRY.validate_python(content | dict(self.values))


def table_fields(hives: Sequence[str]) -> list[FormField]:
    """Lay out a row of the table."""
    return [
        form_field(fields_of(kind)[name], name, hives if name == "hive" else ())
        for kind, columns in COLUMNS.items()
        for name in columns
    ]


def begin_yard(book: Book, fields: Mapping[str, str], on: date) -> Begun:
    """Put a yard and its colonies into the book, all or nothing.

    Rows of the table have their number behind the field's name; an empty one is left out. Whatever
    is wrong is named at once.
    """
    told = {name: value.strip() for name, value in fields.items() if value.strip()}
    change = UUID(fields["id"])
    parts, problems = _parts(book, told)
    rows: dict[UUID | None, str] = {}
    entries: list[AnyEntry] = []
    for part in parts:
        try:
            entries.append(part.entry(change, on))
            rows[entries[-1].id] = part.row
        except ValidationError as error:
            found = in_words(error, part.kind, lambda field: field.name)
            problems += [FieldProblem(one.field + part.row, one.what, one.remedy) for one in found]
    if problems:
        raise NoteError(list(dict.fromkeys(problems)))
    try:
        report = add_entries(book, entries)
    except RefusedError as error:
        raise NoteError(
            [
                FieldProblem(f"{one.field}{rows.get(one.entry, '')}", one.what, one.remedy)
                for one in error.problems
                if one.blocks
            ]
        ) from error
    return Begun(
        tuple(each.colony for each in entries if isinstance(each, Colony)),
        tuple(f"{one.what} {one.remedy}" for one in report.problems),
    )


def _parts(book: Book, told: Mapping[str, str]) -> tuple[list[Part], list[FieldProblem]]:
    parts: list[Part] = []
    problems: list[FieldProblem] = []
    for found in (_yard(book, told), _rows(told)):
        try:
            for part in found:
                parts.append(part)  # noqa: PERF402 - those before a fault are told of as well
        except NoteError as error:
            problems += error.problems
    return parts, problems


def _yard(book: Book, told: Mapping[str, str]) -> Iterator[Part]:
    name = told.get("yard", "")
    if name not in book.now().yards:
        yield Part(Yard, "", ({"yard": name} if name else {}) | _place(told))


def _rows(told: Mapping[str, str]) -> Iterator[Part]:
    numbers = [f"-{number}" for number in range(1, MOST_ROWS + 1)]
    filled = [row for row in numbers if any(f"{name}{row}" in told for name in TYPED)]
    named = [row for row in filled if f"colony{row}" in told]
    for row in named:
        for kind, columns in COLUMNS.items():
            given = {name: _plain(name, told[name + row]) for name in columns if name + row in told}
            if kind is Colony:
                yield Part(kind, row, {"yard": told.get("yard", ""), **given})
            elif given:
                yield Part(kind, row, {"colony": told[f"colony{row}"], **given})
    if not filled:
        what = FieldProblem("colony-1", "No colony is named.", "Name one at least, such as “1”.")
        raise NoteError([what])
    if nameless := [
        FieldProblem(f"colony{row}", "This row has no name.", "Name the colony, or empty the row.")
        for row in filled
        if row not in named
    ]:
        raise NoteError(nameless)


def _plain(name: str, value: str) -> str:
    """Read 8,5 as 8.5: a phone's keys have whichever sign its language has."""
    return value if name in NAMES else value.replace(",", ".")


def _place(told: Mapping[str, str]) -> dict[str, Any]:
    """Tell where a yard lies from coordinates, or from the name of a place."""
    if "latitude" in told or "longitude" in told:
        at = {name: _plain(name, told.get(name, "")) for name in ("latitude", "longitude")}
        try:
            return at | {"climate": nearest_climate(float(at["latitude"]), float(at["longitude"]))}
        except ValueError:
            return at  # the gate says beside the field what is wrong
    found = find_places(told.get("place", ""))
    asked = told.get("place", "").casefold()
    exact = [one for one in found if asked in (one.name.casefold(), one.label.casefold())]
    if len(exact or found) == 1:
        one = (exact or found)[0]
        where = {"latitude": one.latitude, "longitude": one.longitude}
        return where | {"climate": nearest_climate(one.latitude, one.longitude)}
    if found:
        what = "There are several of that name."
        remedy = f"Choose one: {'; '.join(place.label for place in found[:4])}."
    else:
        what = f"No place “{told['place']}” is known." if asked else "Where is the yard?"
        remedy = "Name the nearest town or large village, or give coordinates."
    raise NoteError([FieldProblem("place", what, remedy)])


def hive_used_last(book: Book, kind: str = "colony") -> str:
    """Give the hive that was entered last: the next one is likely of the same kind.

    A split goes into what splits went into, before there was one into what colonies came in.
    """
    entered = [each for each in book.now().history if isinstance(each, Colony | Split)]
    alike = [each.hive for each in entered if each.kind == kind]
    return (alike or [each.hive for each in entered] or [USUAL_HIVE])[-1]

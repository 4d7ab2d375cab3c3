"""Entries as a file: one line or object an entry, from which the book can be made again."""

import csv
import io
import json
import re
from collections.abc import Iterable, Iterator
from typing import Any

from pydantic import BaseModel, ValidationError

from combwright.records.notebook.lines import column, lengths, table
from combwright.records.notebook.spreadsheet_cells import as_meant, harmless
from combwright.records.problems import Problem, refused
from combwright.terms.entries import ENTRY, KINDS, AnyEntry, Correction, Entry
from combwright.terms.errors import NotebookError

FIRST = ("id", "kind", "on", "colony", "yard")
NO_KIND = {  # what the gate says of it names all kinds there are
    "union_tag_not_found": "It does not say what kind of entry it is",
    "union_tag_invalid": "There is no such kind of entry",
}
NOT_IN_XML = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]")
ALL: tuple[type[Entry], ...] = (*KINDS, Correction)
FIELDS = tuple(dict.fromkeys((*FIRST, *(field for kind in ALL for field in kind.model_fields))))


def to_csv(entries: Iterable[AnyEntry]) -> str:
    """Write entries as a table, one line each, in the order given."""
    text = io.StringIO(newline="")
    writer = csv.DictWriter(text, FIELDS, lineterminator="\n")
    writer.writeheader()
    for each in entries:
        writer.writerow({name: cell(value) for name, value in content(each).items()})
    return text.getvalue()


def to_xlsx(entries: Iterable[AnyEntry]) -> bytes:
    """Write entries as a spreadsheet, one line each, for looking at: no cell is a formula."""
    from openpyxl import Workbook  # only for a spreadsheet

    book = Workbook(write_only=True)
    sheet = book.create_sheet("entries")
    sheet.append(list(FIELDS))
    for each in entries:
        told = {name: _shown(value) for name, value in content(each).items()}
        sheet.append([told.get(name) for name in FIELDS])
    data = io.BytesIO()
    book.save(data)
    return data.getvalue()


def _shown(value: object) -> object:
    """Give a number as a number, and anything else as harmless text."""
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return value if is_number else NOT_IN_XML.sub(" ", cell(value))


def to_json(entries: Iterable[AnyEntry]) -> str:
    """Write entries as a list of objects, in the order given."""
    return json.dumps([content(each) for each in entries], ensure_ascii=False, indent=1) + "\n"


def content(each: BaseModel) -> dict[str, Any]:
    """Give what an entry says, without what is not known."""
    return each.model_dump(mode="json", exclude_none=True)


def cell(value: object) -> str:
    """Write one value so that it is read back as the same."""
    if isinstance(value, str):
        return harmless(value)
    return json.dumps(value, ensure_ascii=False)


def is_entry_table(data: bytes) -> bool:
    """Tell an exported table from a notebook by its first headings."""
    return data.removeprefix(b"\xef\xbb\xbf").startswith(b"id,kind,")


def is_json(data: bytes) -> bool:
    """Tell a JSON file from a table by its first sign."""
    return data.removeprefix(b"\xef\xbb\xbf").lstrip()[:1] in (b"[", b"{")


def from_csv(data: bytes) -> Iterator[tuple[int, AnyEntry | Problem]]:
    """Read entries back from a table; each comes with its line."""
    found = table(data, strip=False)
    for row, wrong_length in lengths(found):
        if wrong_length is not None:
            yield row.line, refused(wrong_length, row.line)
            continue
        cells = zip(found.headings, row.cells, strict=False)
        told: dict[str, Any] = {name: as_meant(value) for name, value in cells if value != ""}
        yield row.line, read(told, row.line, found.headings)
    if found.cut_off is not None and found.cut_line is not None:
        yield found.cut_line, refused(found.cut_off, found.cut_line)


def from_json(data: bytes) -> Iterator[tuple[int, AnyEntry | Problem]]:
    """Read entries back from a list of objects; each comes with its place in the list."""
    try:
        told = json.loads(data.decode("utf-8-sig"))
    except (ValueError, RecursionError) as error:
        place = (
            f"line {error.lineno}, column {error.colno}"
            if isinstance(error, json.JSONDecodeError)
            else ""
        )
        raise NotebookError(
            "The file is not complete JSON.", where=place, remedy="Export it again."
        ) from error
    if not isinstance(told, list):
        raise NotebookError("The file is not a list of entries.", remedy="Export it again.")
    for at, one in enumerate(told, 1):
        yield at, read(one, at, ())


def read(told: object, line: int, headings: tuple[str, ...]) -> AnyEntry | Problem:
    """Make one entry, or say what is wrong with it."""
    if isinstance(told, dict) and isinstance(told.get("replacement"), str):
        try:
            told = told | {"replacement": json.loads(told["replacement"])}
        except (ValueError, RecursionError):
            return Problem("The replacement is not JSON.", "Export it again.", line, "replacement")
    try:
        return ENTRY.validate_python(told)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        name = str(first["loc"][-1]) if first["loc"] else ""
        here = column(headings.index(name), name) if name in headings else name
        what = NO_KIND.get(first["type"], first["msg"])
        return Problem(f"{what}.", "Correct it, or export again.", line, here)

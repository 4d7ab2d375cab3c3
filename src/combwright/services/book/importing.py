"""A keeper's own spreadsheet taken into the book: proposed, shown, mended, remembered."""

import csv
import io
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from combwright.records.notebook.foreign_sheet import Rows, sheet_rows
from combwright.records.notebook.headings import BY_WORD
from combwright.records.notebook.own_cells import DayOrder
from combwright.records.notebook.own_headings import (
    Match,
    SheetReading,
    as_notebook,
    proposed,
    simple,
)
from combwright.records.problems import Problem
from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, Report, add_data, would_add
from combwright.services.book.book import save as write_file
from combwright.terms.errors import NotebookError

SHOWN: Final = 10
NEEDED: Final = ("date", "colony")
REMEMBERED: Final = "headings.json"  # beside the book


@dataclass(frozen=True, slots=True)
class Proposal:
    """How a sheet would be read: its columns, ten lines of it as notes, and what is wrong."""

    reading: SheetReading
    lacking: tuple[str, ...]
    headings: tuple[str, ...]
    lines: tuple[tuple[str, ...], ...]
    visits: int
    problems: tuple[Problem, ...]

    @property
    def is_ready(self) -> bool:
        """Tell whether it can be taken as it is."""
        return not self.lacking and not any(one.blocks for one in self.problems)


def propose(
    book: Book,
    data: bytes,
    changed: Mapping[str, str] | None = None,
    fixed: Mapping[str, str] | None = None,
    days: DayOrder | None = None,
) -> Proposal:
    """Propose how a sheet is read; nothing is written. ``changed`` names columns otherwise."""
    rows = sheet_rows(data)
    return shown(book, rows, reading_of(book, rows, changed or {}, fixed or {}, days))


def reading_of(
    book: Book,
    rows: Rows,
    changed: Mapping[str, str],
    fixed: Mapping[str, str],
    days: DayOrder | None,
) -> SheetReading:
    """Give the proposed reading with the keeper's changes."""
    own = {simple(theirs): ours.strip() for theirs, ours in changed.items()}
    found = proposed(rows, remembered(book) | own)
    known = {simple(one.theirs) for one in found.matches}
    if lost := own.keys() - known:
        raise NotebookError(
            f"No column of the file is called “{min(lost)}”.",
            remedy=f"Its columns are: {', '.join(sorted(known - {''}))}.",
        )
    return replace(found, fixed=dict(fixed), days=days or found.days)


def shown(book: Book, rows: Rows, reading: SheetReading) -> Proposal:
    """Show what a reading makes of a sheet, and what the book would say to it."""
    data = as_notebook(rows, reading)
    # of a sheet from which no column is taken there is not even a head
    head, *lines = [row for row in csv.reader(io.StringIO(data.decode())) if row] or [[]]
    lacking = tuple(word for word in NEEDED if word not in head)
    problems = () if lacking else would_add(book, data)
    return Proposal(
        reading,
        lacking,
        tuple(head),
        tuple(tuple(line) for line in lines[:SHOWN]),
        len(lines),
        problems,
    )


def take_sheet(book: Book, data: bytes, place: str, found: Proposal) -> Report:
    """Take a sheet as it was shown: all of it, or nothing; its headings are remembered."""
    if found.lacking:
        raise NotebookError(
            f"No column is taken for {' or '.join(found.lacking)}.",
            where=place,
            remedy="Say which it is.",
        )
    try:
        report = add_data(book, as_notebook(sheet_rows(data), found.reading), place)
    except RefusedError as error:
        remedy = "Put them right in the sheet, or leave their columns out, and take it again."
        raise RefusedError(place, error.problems, remedy) from error
    _remember(book, found.reading.matches)
    return report


def remembered(book: Book) -> dict[str, str]:
    """Give the headings of earlier sheets, and what was taken for them."""
    try:
        told = json.loads(book.beside(REMEMBERED).read_text("utf-8"))
    except (OSError, ValueError):
        return {}
    if not isinstance(told, dict):
        return {}
    return {
        str(theirs): str(ours) for theirs, ours in told.items() if ours == "" or ours in BY_WORD
    }


def _remember(book: Book, matches: Sequence[Match]) -> None:
    known = remembered(book) | {
        simple(one.theirs): one.ours for one in matches if simple(one.theirs)
    }
    write_file(book.beside(REMEMBERED), json.dumps(known, ensure_ascii=False, indent=1) + "\n")

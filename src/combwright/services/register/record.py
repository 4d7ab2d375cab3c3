"""A record for an inspector or a drawer: tables of words with what is missing before them."""

import csv
import io
from dataclasses import dataclass
from datetime import date

from combwright.records.notebook.spreadsheet_cells import harmless


@dataclass(frozen=True, slots=True)
class WordTable:
    """Rows of words under headings."""

    title: str
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Record:
    """One record: what it rests on, what is missing in it, its tables.

    ``on`` is the day that it tells of; ``complete`` is said where nothing is missing.
    """

    title: str
    on: date
    law: str
    missing: tuple[str, ...]
    tables: tuple[WordTable, ...]
    complete: str = "Nothing that this law asks for."
    seal: str = ""


def as_csv(record: Record) -> str:
    """Write a record for a spreadsheet; no cell of it can act as a formula there."""
    text = io.StringIO()
    write = csv.writer(text, lineterminator="\r\n").writerow
    write([harmless(record.title)])
    write([harmless(record.law)])
    write([harmless(record.seal)])
    for missing in record.missing:
        write([harmless(f"Missing: {missing}")])
    for table in record.tables:
        write([])
        write([table.title])
        write(table.headings)
        for row in table.rows:
            write([harmless(cell) for cell in row])
    return text.getvalue()

"""From the bytes of a CSV file to its lines: encoding, separators, quotes, damage.

Nothing here knows what the columns mean.
"""

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass

from combwright.terms.errors import NotebookError

UTF16 = (b"\xff\xfe", b"\xfe\xff")
SPREADSHEETS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")
SAVE_AS = "Save it again as “CSV UTF-8” (comma separated)."
LARGEST_BYTES = 50_000_000


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table: where it begins in the file, and its cells without outer blanks."""

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """The headings, the rows that could be read, and what stopped the reading, if anything."""

    headings: tuple[str, ...]
    rows: tuple[Row, ...]
    cut_off: NotebookError | None = None
    cut_line: int | None = None


def table(data: bytes, *, strip: bool = True) -> Table:
    """Read the lines of a CSV file, blank ones left out."""
    text = decoded(data)
    first = next((line for line in text.splitlines() if line.strip()), "")
    separator = max(",;\t", key=first.count)
    found: list[Row] = []
    cut_off, cut_line = None, None
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    begins = 1
    try:
        for cells in reader:
            kept = tuple(cell.strip() if strip else cell for cell in cells)
            if any(kept):
                found.append(Row(begins, kept))
            begins = reader.line_num + 1
    except csv.Error as error:
        cut_off, cut_line = broken(error), begins
    if not found:
        raise cut_off or empty()
    return Table(found[0].cells, tuple(found[1:]), cut_off, cut_line)


def decoded(data: bytes) -> str:
    """Turn bytes into text, or say in which line they are not UTF-8 text."""
    if data.startswith(SPREADSHEETS):
        raise NotebookError("This is a spreadsheet's own file, not a CSV file.", remedy=SAVE_AS)
    if data.startswith(UTF16):
        raise NotebookError("The file is written in UTF-16, not UTF-8.", remedy=SAVE_AS)
    if len(data) > LARGEST_BYTES:
        raise NotebookError(
            f"The file holds {len(data) / 1e6:.0f} MB; a notebook of one season holds less than 5.",
            remedy="Check that it is the right file, or divide it.",
        )
    if (at := data.find(b"\0")) >= 0:
        raise NotebookError(
            "The file holds zero bytes: it is damaged, or not a text file.",
            where=place_of(data, at),
            remedy=f"Restore it from a copy. {SAVE_AS}",
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise NotebookError(
            f"The byte {data[error.start]:#04x} is not UTF-8 text; in an older encoding it is "
            f"“{data[error.start : error.start + 1].decode('cp1252', 'replace')}”.",
            where=place_of(data, error.start),
            remedy=SAVE_AS,
        ) from None
    if not text.strip():
        raise empty()
    return text


def place_of(data: bytes, at: int) -> str:
    """Say in which line and column a byte stands."""
    before = data[:at]
    line = before.count(b"\n") + 1
    here = before.rsplit(b"\n", 1)[-1]
    return f"line {line}, column {max(here.count(mark) for mark in (b',', b';', b'	')) + 1}"


def empty() -> NotebookError:
    """Say that there is nothing to read."""
    return NotebookError(
        "The file is empty.",
        remedy="Its first line holds the headings, such as: date,colony,frames of bees.",
    )


def broken(error: csv.Error) -> NotebookError:
    """Explain a line that the CSV reader cannot make sense of."""
    if "unexpected end of data" in str(error):
        return NotebookError(
            "A quotation mark opened here is never closed: the file may be half-written.",
            remedy='Close it, or double a quotation mark that is meant as such ("").',
        )
    if "expected after" in str(error):
        return NotebookError(
            "Something follows a closing quotation mark.",
            remedy='Double a quotation mark that is meant as such ("").',
        )
    return NotebookError(f"This line is no CSV: {error}.", remedy=SAVE_AS)


def column(at: int, heading: str) -> str:
    """Name a column by its number and heading, as errors do."""
    return f"column {at + 1} “{heading}”" if heading else f"column {at + 1}"


def lengths(found: Table) -> Iterator[tuple[Row, NotebookError | None]]:
    """Go through the rows, with what is wrong with the number of their cells."""
    wanted = len(found.headings)
    for row in found.rows:
        have = len(row.cells)
        if have < wanted:
            last = row is found.rows[-1]
            yield (
                row,
                NotebookError(
                    f"The line has {have} of {wanted} columns"
                    + ("; the file may be half-written." if last else "."),
                    where=column(have, found.headings[have]),
                    remedy="Complete it; a blank column needs its comma, too.",
                ),
            )
        elif any(row.cells[wanted:]):
            yield (
                row,
                NotebookError(
                    f"The line has {have} columns, but there are {wanted} headings.",
                    where=column(wanted, ""),
                    remedy="Put text that holds a comma in quotation marks, or add the heading.",
                ),
            )
        else:
            yield row, None

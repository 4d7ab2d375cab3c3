"""From the bytes of anybody's spreadsheet, CSV or XLSX, to rows of text; its headings found."""

import csv
import io
import zipfile
from collections.abc import Sequence
from datetime import date, datetime
from typing import Final

from combwright.records.notebook.lines import decoded
from combwright.terms.errors import NotebookError

ZIPPED: Final = b"PK\x03\x04"
MOST_ROWS: Final = 50_000
MOST_COLUMNS: Final = 200
MOST_UNZIPPED: Final = 200_000_000  # bytes; a spreadsheet that is larger inside is no notebook
SEARCHED_ROWS: Final = 15  # among which the row of headings is looked for; judgement
Rows = Sequence[tuple[str, ...]]


def sheet_rows(data: bytes) -> Rows:
    """Read the rows of a file, the blank ones too, so that their numbers stay those of the file."""
    rows = _of_xlsx(data) if data.startswith(ZIPPED) else _of_csv(data)
    if not any(any(row) for row in rows):
        raise NotebookError(
            "There is nothing in this file.", remedy="Choose another sheet or file."
        )
    return rows


def _of_csv(data: bytes) -> Rows:
    text = decoded(data)
    lines = [line for line in text.splitlines() if line.strip()][:SEARCHED_ROWS]
    separator = max(",;\t", key=lambda sign: sum(line.count(sign) for line in lines))
    try:
        read = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
        return [_plain(row) for row in read][:MOST_ROWS]
    except csv.Error as error:
        raise NotebookError(
            f"The file cannot be read as a table: {error}.", remedy="Save it again as CSV."
        ) from error


def _of_xlsx(data: bytes) -> Rows:
    from openpyxl import load_workbook  # only for a spreadsheet

    try:
        _look_inside(data)
        book = load_workbook(io.BytesIO(data), read_only=True, data_only=True, keep_links=False)
        sheet = book.worksheets[0]
        rows = sheet.iter_rows(max_row=MOST_ROWS, max_col=MOST_COLUMNS, values_only=True)
        return [_plain(row) for row in rows]
    except Exception as error:  # whatever a damaged file makes the library raise
        raise NotebookError(
            "This spreadsheet cannot be read.",
            remedy="Open it and save it again as XLSX, or as CSV.",
        ) from error


def _look_inside(data: bytes) -> None:
    """Refuse what would fill the memory once it is unpacked."""
    with zipfile.ZipFile(io.BytesIO(data)) as inside:
        if sum(part.file_size for part in inside.infolist()) > MOST_UNZIPPED:
            raise ValueError("too large inside")


def _plain(row: Sequence[object]) -> tuple[str, ...]:
    return tuple(_text(value) for value in row)


def _text(value: object) -> str:
    """Write the value of a cell as a person would."""
    match value:
        case None:
            return ""
        case bool():
            return "yes" if value else "no"
        case datetime():
            return value.date().isoformat()
        case date():
            return value.isoformat()
        case float():
            return f"{value:g}"
    return " ".join(str(value).split())

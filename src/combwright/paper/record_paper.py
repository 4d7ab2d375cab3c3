"""A record as PDF, for an inspector and for the drawer."""

from combwright.paper.printable import printable
from combwright.paper.typeset import typeset
from combwright.services.register.record import Record
from combwright.terms.dated import in_days
from combwright.terms.place_word import USUAL, PlaceWord


def record_pdf(record: Record, *, words: PlaceWord = USUAL) -> bytes:
    """Print a record as PDF/A-2a, which is also accessible (PDF/UA-1)."""
    content = {
        "title": printable(in_days(record.title)),
        "on": [record.on.year, record.on.month, record.on.day],
        "law": printable(record.law),
        "seal": printable(record.seal),
        "missing": [printable(in_days(one)) for one in record.missing],
        "complete": printable(record.complete),
        "tables": [
            {
                "title": in_days(table.title),
                "headings": table.headings,
                "rows": [[printable(in_days(cell)) for cell in row] for row in table.rows],
            }
            for table in record.tables
        ],
    }
    return typeset("record_paper", words.into_data(content))

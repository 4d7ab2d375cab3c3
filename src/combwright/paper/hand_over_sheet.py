"""The hand-over sheet as PDF: one copy for the buyer, one for the drawer."""

from combwright.paper.printable import printable
from combwright.paper.typeset import typeset
from combwright.services.bees_sold.hand_over import HandOver
from combwright.terms.dated import dated
from combwright.terms.place_word import USUAL, PlaceWord


def hand_over_pdf(found: HandOver, *, words: PlaceWord = USUAL) -> bytes:
    """Print a hand-over sheet as PDF/A-2a, which is also accessible (PDF/UA-1)."""
    content = {
        "title": printable(found.title),
        "sale": printable(found.sale),
        "on": [found.on.year, found.on.month, found.on.day],
        "day": dated(found.on),
        "sections": [
            [title, [[word, printable(told)] for word, told in rows]]
            for title, rows in found.sections
            if rows
        ],
        "treatments": [printable(one) for one in found.treatments],
        "care": [printable(one) for one in found.care],
        "terms": printable(found.terms),
        "missing": [printable(one) for one in found.missing],
        "cautions": [printable(one) for one in found.cautions],
        "law": found.law,
    }
    return typeset("hand_over_sheet", words.into_data(content))

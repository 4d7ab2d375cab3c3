"""One yard on a card for the pocket: a line a hive, and room to write what was seen."""

from collections.abc import Mapping, Sequence

from combwright.paper.printable import printable
from combwright.paper.sheet_words import day_words, expected_words
from combwright.paper.typeset import READ_ALOUD, typeset
from combwright.planning.at_every_colony import everywhere
from combwright.planning.sheet import RoundSheet
from combwright.terms.place_word import USUAL, PlaceWord


def card_pdf(
    sheet: RoundSheet,
    lines: Mapping[str, str],
    *,
    day_weather: Sequence[str] = (),
    words: PlaceWord = USUAL,
) -> bytes:
    """Print the card of a round's yard as PDF/UA-1; ``lines`` say what to do, by colony."""
    content = {
        "yard": printable(", ".join(sheet.yards)),
        "date": [sheet.on.year, sheet.on.month, sheet.on.day],
        "day": day_words(sheet.on),
        "day_weather": [printable(line) for line in day_weather],
        "everywhere": [printable(job) for job in everywhere(sheet).jobs],
        "colonies": [
            {
                "order": str(each.order),
                "name": printable(each.colony),
                "line": printable(lines[each.colony]),
                "expected": expected_words(each.expected),
                "questions": [printable(question) for question in each.questions],
            }
            for each in sorted(sheet.colonies, key=lambda colony: colony.order)
        ],
    }
    return typeset("pocket_card", words.into_data(content), READ_ALOUD)

"""Labels for hives: the name large, and a code that opens the hive's note on a phone."""

from collections.abc import Sequence
from datetime import date
from io import BytesIO
from typing import Final
from urllib.parse import quote

import segno

from combwright.paper.label_sheet import SHEETS
from combwright.paper.printable import printable
from combwright.paper.typeset import typeset
from combwright.terms.errors import OutOfRangeError

USUAL: Final = 8  # large enough to be read from behind the hive


def hive_label_pdf(
    hives: Sequence[tuple[str, str]], address: str, on: date, *, sheet: int = USUAL
) -> bytes:
    """Print a label for each hive, by name and yard, as PDF/A-2a; ``address`` is the page’s."""
    if sheet not in SHEETS:
        raise OutOfRangeError(
            f"There is no sheet of {sheet} labels here.",
            remedy=f"Choose one of {', '.join(str(one) for one in SHEETS)} labels to a sheet.",
        )
    if not hives:
        raise OutOfRangeError("No hive is there to be labelled.", remedy="Choose another yard.")
    content = {
        "on": [on.year, on.month, on.day],
        "sheet": SHEETS[sheet],
        "hives": [
            {"name": printable(name), "yard": printable(yard), "code": _code(address, name)}
            for name, yard in hives
        ],
    }
    return typeset("hive_labels", content)


def _code(address: str, name: str) -> str:
    """Draw the code of a hive's address; it can still be read when a quarter of it is weathered."""
    drawn = BytesIO()
    where = f"{address.rstrip('/')}/hive?colony={quote(name)}"
    segno.make(where, error="q", micro=False).save(drawn, kind="svg", border=2)
    return drawn.getvalue().decode()

"""Labels of a lot of jars on sheets of labels."""

from collections.abc import Mapping
from typing import Any, Final

from combwright.paper.printable import printable
from combwright.paper.typeset import TypesettingError, typeset
from combwright.services.honey.labels import LotLabels
from combwright.terms.data_files import rows
from combwright.terms.errors import OutOfRangeError

SHEETS: Final[Mapping[int, dict[str, Any]]] = {
    row["labels"]: row for row in rows("paper/label_sheets", "sheet")
}
TOO_FULL: Final = "does not fit"


def label_pdf(
    found: LotLabels, *, sheet: int = 21, count: int | None = None, used: int = 0
) -> bytes:
    """Print labels as PDF/A-2a; ``used`` labels of the first sheet are passed over.

    A label that lacks something is printed all the same: what is missing is said where it is asked
    for, and not decided here.
    """
    if sheet not in SHEETS:
        raise OutOfRangeError(
            f"There is no sheet of {sheet} labels here.",
            remedy=f"Choose one of {', '.join(str(one) for one in SHEETS)} labels to a sheet.",
        )
    label = found.label
    content = {
        "on": [found.on.year, found.on.month, found.on.day],
        "sheet": SHEETS[sheet],
        "count": found.jars if count is None else count,
        "used": used,
        "name": printable(label.name),
        "weight": label.weight,
        "figures_mm": label.figures_mm,
        "words": printable(found.words),
        "lines": [
            printable(one)
            for one in (
                f"{label.operator}, {label.address}".strip(", "),
                found.origin,
                f"{label.best_before} · {label.lot}",
                found.advice,
            )
            if one
        ],
        "lot": printable(label.lot),
    }
    try:
        return typeset("label_sheet", content)
    except TypesettingError as error:
        if TOO_FULL not in str(error):
            raise
        raise OutOfRangeError(
            f"The text {TOO_FULL} on one of {sheet} labels to a sheet: letters may not be smaller.",
            remedy="Choose a sheet of larger labels, or fewer words of your own.",
        ) from error

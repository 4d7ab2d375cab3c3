"""Cells of a keeper's own sheet, written as the notebook has them and put into its units."""

import re
from collections.abc import Sequence
from datetime import date
from difflib import get_close_matches
from typing import Final, Literal

from combwright.records.notebook.headings import BY_WORD
from combwright.science.syrup.strength import density_kg_per_l
from combwright.terms.sugar import SYRUP_SUGAR

DayOrder = Literal["day first", "month first", "year first"]
LIKELY: Final = 0.84  # likeness from which a misspelt word is proposed; judgement
FROM_TO: Final = re.compile(r"[~c.]*\s*(\d+(?:[.,]\d+)?)\s*[-–]\s*(\d+(?:[.,]\d+)?)\s*[A-Za-z]*")
WITH_UNIT: Final = re.compile(r"[~c.]*\s*([+-]?\d+(?:[.,]\d+)?\s*[¼½¾]?|[¼½¾])\s*([A-Za-z%°]*)\.?")
NUMBERED_DAY: Final = re.compile(r"(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{2}|\d{4})")
WORDED_DAY: Final = re.compile(
    r"(?:[A-Za-z]{3,9}\.?,?\s+)?(\d{1,2})(?:st|nd|rd|th)?[-/. ]+([A-Za-z]{3,9})"
    r"\.?,?[-/. ]+(\d{2}|\d{4})"
)
NOT_LOOKED: Final = {"?", "-", "–", "n/a", "na", "nil seen", "not checked"}
YES: Final = {"y", "yes", "✓", "✔", "x", "seen", "true", "present", "1"}
NO: Final = {"n", "no", "✗", "✘", "none", "not seen", "false", "absent", "0"}
POUND_KG: Final = 0.45359237  # by definition
CENTURY, TWO_DIGITS = 2000, 2
COUNTED: Final = ("frame", "seam", "comb")  # one is not the other


def _units() -> dict[str, dict[str, float]]:
    syrup = 1000.0 * float(density_kg_per_l(SYRUP_SUGAR))
    weight = {"kg": 1.0, "g": 1e-3, "lb": POUND_KG, "lbs": POUND_KG, "oz": POUND_KG / 16}
    return {
        "kg": weight,
        "g": {word: 1000.0 * kg for word, kg in weight.items()}
        | {"l": syrup, "litre": syrup, "litres": syrup, "ltr": syrup, "ml": syrup / 1000.0},
        "mm": {"mm": 1.0, "cm": 10.0},
        "days": {"d": 1.0, "day": 1.0, "days": 1.0, "week": 7.0, "weeks": 7.0, "wk": 7.0},
        "%": {"%": 1.0, "percent": 1.0},
        "°C": {"c": 1.0, "°c": 1.0},
    }


UNITS: Final = _units()


def cell_as_meant(text: str, ours: str, unit: str, days: DayOrder) -> str:
    """Write a cell as the notebook has it; what is not understood stays as it is."""
    told, heading = text.strip(), BY_WORD[ours]
    if ours == "date" or heading.field.holds is date:
        return _day(told, days)
    if told.lower() in NOT_LOOKED:
        return ""
    if heading.field.holds is bool:
        word = told.lower()
        return "yes" if word in YES else "no" if word in NO else told
    if heading.field.is_number and not _counts_other(told, ours):
        about = _without_what(told if heading.field.holds is int else _middle(told), ours)
        return _number(about, unit, heading.field.about.unit)
    if heading.field.choices:
        return _choice(told, heading.field.choices)
    return told


def _without_what(told: str, heading: str) -> str:
    """Leave out a word behind a number that the heading says already.

    Examples
    --------
    >>> _without_what("1l syrup", "syrup fed g"), _without_what("1 kg fondant", "syrup fed g")
    ('1l', '1 kg fondant')

    """
    number, _, word = told.rpartition(" ")
    return number if number and word.lower() in heading.split() else told


def _counts_other(told: str, heading: str) -> bool:
    """Tell whether a number is of something else than what its column counts.

    Examples
    --------
    >>> _counts_other("6 seams", "frames of bees"), _counts_other("6 frames", "frames of bees")
    (True, False)

    """
    words = {word.rstrip("s") for word in told.lower().split()}
    ours = {word.rstrip("s") for word in heading.split()}
    return any(each in words and each not in ours for each in COUNTED) and any(
        each in ours for each in COUNTED
    )


def _middle(told: str) -> str:
    """Give the middle of a number that is written as from one to another.

    Examples
    --------
    >>> _middle("5-6"), _middle("5 – 6 frames"), _middle("6-5"), _middle("5")
    ('5.5', '5.5', '6-5', '5')

    """
    found = FROM_TO.fullmatch(told)
    low, high = (float(one.replace(",", ".")) for one in found.groups()) if found else (0.0, 0.0)
    return f"{(low + high) / 2:g}" if low < high else told


def _choice(told: str, choices: Sequence[str]) -> str:
    """Give the word of a list that is meant; “no” of what can be none is none."""
    word = told.lower()
    if word in NO and "none" in choices:
        return "none"
    near = get_close_matches(word, choices, n=1, cutoff=LIKELY)
    return near[0] if near else told


def _day(told: str, days: DayOrder) -> str:
    if worded := WORDED_DAY.fullmatch(told):
        number, month, year = worded.groups()
        return f"{number} {month} {_whole(year)}"
    found = NUMBERED_DAY.fullmatch(told)
    if not found:
        return told
    first, second, year = found.groups()
    month, number = (first, second) if days == "month first" else (second, first)
    return f"{_whole(year):04}-{int(month):02}-{int(number):02}"


def _whole(year: str) -> int:
    """Give a year of two digits its century."""
    return CENTURY + int(year) if len(year) == TWO_DIGITS else int(year)


def _number(told: str, usual: str, wanted: str) -> str:
    """Take the unit off a number, put into the one that is wanted."""
    found = WITH_UNIT.fullmatch(told)
    if not found:
        return told
    plain, unit = found[1].replace(",", ".").replace(" ", ""), (found[2] or usual).lower()
    if not wanted or not unit:
        return plain
    times = UNITS.get(wanted, {}).get(unit)
    if times is None or any(sign in plain for sign in "¼½¾"):
        return told if times is None else plain
    return f"{round(float(plain) * times, 3):g}" if times != 1 else plain

"""A keeper's own headings matched with those of the notebook, and cells put into its units."""

import csv
import io
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from difflib import get_close_matches
from typing import Final, Literal

from combwright.records.notebook.foreign_sheet import SEARCHED_ROWS, Rows
from combwright.records.notebook.headings import BY_WORD
from combwright.science.syrup.strength import density_kg_per_l
from combwright.terms.data_files import contents
from combwright.terms.errors import NotebookError
from combwright.terms.sugar import SYRUP_SUGAR

DayOrder = Literal["day first", "month first", "year first"]
WORDS: Final[Mapping[str, str]] = {
    word.lower(): ours
    for ours, some in contents("records/heading_words").items()
    for word in (ours, *some)
}
UNIT_IN_HEADING: Final = re.compile(r"[(\[]\s*([A-Za-z%°]+)\s*[)\]]")
IN_BRACKETS: Final = re.compile(r"[(\[][^)\]]*[)\]]")
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
FILLED_DOWN: Final = ("date", "yard")  # written once for the lines below it
LIKELY: Final = 0.84  # likeness from which a misspelt heading is proposed; judgement
CENTURY, TWO_DIGITS, LAST_MONTH = 2000, 2, 12


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


@dataclass(frozen=True, slots=True)
class Match:
    """One column: what stands over it, what is taken for it (nothing: left out), its unit."""

    theirs: str
    ours: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class SheetReading:
    """How a sheet is read: where its headings stand, what they mean, how its days are written.

    ``fixed`` is the same in every line: the yard or hive of a sheet that does not name it.
    """

    head: int
    matches: tuple[Match, ...]
    days: DayOrder
    fixed: Mapping[str, str] = field(default_factory=dict)


def proposed(rows: Rows, known: Mapping[str, str]) -> SheetReading:
    """Propose how a sheet is read; ``known`` are headings as they were read before."""
    head = max(range(min(len(rows), SEARCHED_ROWS)), key=lambda at: _score(rows[at], known))
    taken: set[str] = set()
    matches = []
    all_meant = _names_colonies([_meant(theirs, known) for theirs in rows[head]], rows[head])
    for theirs, meant in zip(rows[head], all_meant, strict=True):
        ours = "" if meant in taken else meant
        taken |= {ours} - {""}
        unit = UNIT_IN_HEADING.search(theirs)
        matches.append(Match(theirs, ours, unit[1].lower() if unit else ""))
    return SheetReading(head, tuple(matches), _day_order(rows[head + 1 :], matches))


def _names_colonies(meant: list[str], theirs: Sequence[str]) -> list[str]:
    """Take “hive” for the name where no other column names the colony, as keepers do."""
    if "colony" in meant:
        return meant
    return [
        "colony" if ours == "hive" and simple(word) == "hive" else ours
        for ours, word in zip(meant, theirs, strict=True)
    ]


def _score(row: Sequence[str], known: Mapping[str, str]) -> int:
    return len({_meant(cell, known) for cell in row} - {""})


def simple(heading: str) -> str:
    """Give a heading without its unit, signs and capitals.

    Examples
    --------
    >>> simple("Stores (lb)"), simple("Hive No."), simple("Temper (1-5)")
    ('stores', 'hive no', 'temper')

    """
    plain = IN_BRACKETS.sub("", heading).lower().replace("_", " ")
    return " ".join(re.sub(r"[^\w/ ]", " ", plain).split())


def _meant(theirs: str, known: Mapping[str, str]) -> str:
    word = simple(theirs)
    if not word:
        return ""
    if word in known:
        return known[word]
    unit = UNIT_IN_HEADING.search(theirs)
    if word == "stores" and unit and unit[1].lower() in UNITS["kg"]:
        return "stores kg"
    near = get_close_matches(word, WORDS, n=1, cutoff=LIKELY)
    return WORDS[near[0]] if near else ""


def _day_order(rows: Rows, matches: Sequence[Match]) -> DayOrder:
    """Tell by days that can be only one thing how all are written; day first if none tells."""
    at = next((n for n, one in enumerate(matches) if one.ours == "date"), None)
    cells = (row[at] for row in rows if at is not None and at < len(row))
    found = [match for cell in cells if (match := NUMBERED_DAY.fullmatch(cell.strip()))]
    if any(int(one[2]) > LAST_MONTH for one in found):
        return "month first"
    return "day first"


def as_notebook(rows: Rows, reading: SheetReading) -> bytes:
    """Write a sheet as a notebook, line for line: what is wrong is named by its own line."""
    unknown = {one.ours for one in reading.matches} | reading.fixed.keys()
    unknown -= {"", *BY_WORD}
    if unknown:
        raise NotebookError(
            f"There is no heading “{min(unknown)}” of the notebook.",
            remedy="Choose one of the headings in docs/notebook.md, or leave the column out.",
        )
    columns = [(at, one) for at, one in enumerate(reading.matches) if one.ours]
    added = {word: value for word, value in reading.fixed.items() if value}
    text = io.StringIO(newline="")
    write = csv.writer(text, lineterminator="\n").writerow
    for _ in range(reading.head):
        write([])
    write([*(one.ours for _, one in columns), *added])
    last: dict[str, str] = {}
    for row in rows[reading.head + 1 :]:
        cells = [_cell(row[at] if at < len(row) else "", one, reading.days) for at, one in columns]
        write(
            [*_filled(cells, columns, last), *added.values()] if _is_visit(cells, columns) else []
        )
    return text.getvalue().encode()


def _is_visit(cells: Sequence[str], columns: Sequence[tuple[int, Match]]) -> bool:
    """Tell a visit from a blank line, a line of sums, a title in the middle."""
    return any(cell for cell, (_, one) in zip(cells, columns, strict=True) if one.ours == "colony")


def _filled(
    cells: Sequence[str], columns: Sequence[tuple[int, Match]], last: dict[str, str]
) -> Iterator[str]:
    """Fill in what is written once for the lines below it."""
    for cell, (_, one) in zip(cells, columns, strict=True):
        if one.ours in FILLED_DOWN:
            last[one.ours] = cell or last.get(one.ours, "")
            yield last[one.ours]
        else:
            yield cell


def _cell(text: str, match: Match, days: DayOrder) -> str:
    """Write a cell as the notebook has it; what is not understood stays as it is."""
    told, heading = text.strip(), BY_WORD[match.ours]
    if match.ours == "date" or heading.field.holds is date:
        return _day(told, days)
    if told.lower() in NOT_LOOKED:
        return ""
    if heading.field.holds is bool:
        word = told.lower()
        return "yes" if word in YES else "no" if word in NO else told
    if heading.field.is_number:
        about = _without_what(told if heading.field.holds is int else _middle(told), match.ours)
        return _number(about, match.unit, heading.field.about.unit)
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

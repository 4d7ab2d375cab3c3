"""A keeper's own headings matched with those of the notebook."""

import csv
import io
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import Final

from combwright.records.notebook.foreign_sheet import SEARCHED_ROWS, Rows
from combwright.records.notebook.headings import BY_WORD
from combwright.records.notebook.own_cells import (
    LIKELY,
    NUMBERED_DAY,
    UNITS,
    DayOrder,
    cell_as_meant,
)
from combwright.terms.data_files import contents
from combwright.terms.errors import NotebookError

WORDS: Final[Mapping[str, str]] = {
    word.lower(): ours
    for ours, some in contents("records/heading_words").items()
    for word in (ours, *some)
}
UNIT_IN_HEADING: Final = re.compile(r"[(\[]\s*([A-Za-z%°]+)\s*[)\]]")
IN_BRACKETS: Final = re.compile(r"[(\[][^)\]]*[)\]]")
FILLED_DOWN: Final = ("date", "yard")  # written once for the lines below it
LAST_MONTH: Final = 12


LAST_WORDS: Final = {*UNITS["kg"], *UNITS["g"], *UNITS["mm"]}  # units that may end a heading


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
        matches.append(Match(theirs, ours, _unit(theirs)))
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
    unit = _unit(theirs)
    bare = word.removesuffix(f" {unit}") if unit else word
    if bare == "stores" and unit in UNITS["kg"]:
        return "stores kg"
    for each in dict.fromkeys((word, bare)):
        if near := get_close_matches(each, WORDS, n=1, cutoff=LIKELY):
            return WORDS[near[0]]
    return ""


def _unit(theirs: str) -> str:
    """Give the unit of a heading: in brackets, or as its last word.

    Examples
    --------
    >>> _unit("Stores (lb)"), _unit("Food kg"), _unit("Syrup litres"), _unit("Food")
    ('lb', 'kg', 'litres', '')

    """
    found = UNIT_IN_HEADING.search(theirs)
    last = found[1] if found else theirs.rsplit(maxsplit=1)[-1] if " " in theirs.strip() else ""
    unit = last.lower().rstrip(".")
    return unit if found or unit in LAST_WORDS else ""


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
        cells = [
            cell_as_meant(row[at] if at < len(row) else "", one.ours, one.unit, reading.days)
            for at, one in columns
        ]
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

"""From a notebook of one line a visit to entries, with every problem named by line and column."""

from collections import Counter
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import date
from difflib import get_close_matches
from typing import Any

from pydantic import ValidationError

from combwright.records.notebook.headings import BY_WORD, HEADINGS, NEEDED, Heading
from combwright.records.notebook.lines import Row, Table, column, lengths, table
from combwright.records.notebook.noting import SUBJECTS, entry, new_colony, new_yard, parts
from combwright.records.problems import Problem, refused
from combwright.terms.entries import AnyEntry, Noted
from combwright.terms.errors import NotebookError


@dataclass(frozen=True, slots=True)
class Line:
    """What one line of the notebook says; what follows ``colony`` is a reminder."""

    number: int
    entries: tuple[AnyEntry, ...] = ()
    problems: tuple[Problem, ...] = ()
    on: date | None = None
    colony: str = ""
    yard: str = ""
    queen_year: int | None = None
    climate: str = ""


@dataclass(frozen=True, slots=True)
class Notebook:
    """All lines, and what is wrong with the file as a whole."""

    lines: tuple[Line, ...]
    problems: tuple[Problem, ...] = ()


def read_notebook(
    data: bytes, known_yards: Collection[str] = (), known_colonies: Collection[str] = ()
) -> Notebook:
    """Read a notebook; yards and colonies that are not known yet enter it with their first line.

    A line with a problem that blocks has no entries.
    """
    try:
        found = table(data)
    except NotebookError as error:
        return Notebook((), (refused(error),))
    misnamed = tuple(wrong_headings(found.headings))
    if misnamed:
        return Notebook((), misnamed)
    reader = LineReader(found, set(known_yards), set(known_colonies))
    lines = [reader.line(row, cut) for row, cut in lengths(found)]
    if found.cut_off is not None and found.cut_line is not None:
        lines.append(Line(found.cut_line, problems=(refused(found.cut_off, found.cut_line),)))
    return Notebook(tuple(lines))


def wrong_headings(words: tuple[str, ...]) -> Iterator[Problem]:
    """Find headings that are unknown, written twice, or missing."""
    plain = [simple(word) for word in words]
    if not any(word in BY_WORD for word in plain):
        yield Problem(
            "The first line holds none of the headings of a notebook.",
            "Start the file with a line such as: date,yard,colony,hive,frames of bees.",
            line=1,
        )
        return
    for at, word in enumerate(plain):
        here = column(at, words[at])
        if word and word not in BY_WORD:
            near = get_close_matches(word, BY_WORD, n=1, cutoff=0.5)
            remedy = f"Did you mean “{near[0]}”?" if near else "Take the column out."
            yield Problem(f"There is no heading “{words[at]}”.", remedy, 1, here)
        elif word and word in plain[:at]:
            what = f"This heading stands already over column {plain.index(word) + 1}."
            yield Problem(what, "Keep one of them.", 1, here)
    for word in NEEDED:
        if word not in plain:
            yield Problem(f"The heading “{word}” is missing.", "Add this column.", 1)


OF_A_YARD = {"date", "yard", "climate", "remark"}


class LineReader:
    """One pass through a notebook: who has entered the book so far, line by line."""

    def __init__(self, found: Table, yards: set[str], colonies: set[str]) -> None:
        self.words = found.headings
        self.headings = [BY_WORD.get(simple(word)) for word in found.headings]
        self.yards = yards
        self.colonies = colonies
        self.hives: dict[str, str] = {}
        self.seen: Counter[str] = Counter()
        self.whole: dict[tuple[str, ...], int] = {}

    def line(self, row: Row, cut: NotebookError | None) -> Line:
        """Read one line."""
        if cut is not None:
            return Line(row.line, problems=(refused(cut, row.line),))
        values, problems = self.values(row)
        first = self.whole.setdefault(row.cells, row.line)
        if first != row.line:
            what = f"This line is the same as line {first}."
            remedy = "Take one out, or tell them apart in the remark."
            problems.append(Problem(what, remedy, row.line))
        problems = problems or list(self.blanks(row.line, values))
        return self.taken(row.line, values) if not problems else Line(row.line, (), tuple(problems))

    def values(self, row: Row) -> tuple[dict[str, Any], list[Problem]]:
        """Read the cells of a line that are not blank."""
        values: dict[str, Any] = {}
        problems: list[Problem] = []
        for at, (heading, cell) in enumerate(zip(self.headings, row.cells, strict=False)):
            here = column(at, self.words[at])
            if cell and heading is None:
                what = "This column has no heading."
                problems.append(Problem(what, "Give it one, or empty it.", row.line, here))
            elif cell and heading is not None:
                try:
                    values[heading.word] = heading.read(cell)
                except NotebookError as error:
                    problems.append(refused(error, row.line, here))
        return values, problems

    def blanks(self, line: int, values: dict[str, Any]) -> Iterator[Problem]:
        """Find cells that are blank but must not be."""
        colony = values.get("colony")
        needed = ["date"]
        if colony is None:
            # a line may be about a yard, an order, a batch or a queen alone
            is_of_a_yard = values.keys() <= OF_A_YARD
            subject = next((one for one in SUBJECTS if one in values), "colony")
            needed.append("yard" if is_of_a_yard else subject)
        elif colony not in self.colonies:
            needed += ["yard", "hive"]
        for word in needed:
            if word not in values:
                remedy = f"Write {BY_WORD[word].meaning}."
                if word in ("yard", "hive"):
                    remedy = f"{self.stranger(str(colony))}{remedy}"
                yield Problem("This cell is blank.", remedy, line, self.place(word))

    def stranger(self, colony: str) -> str:
        """Say that a colony is new, and whom its name resembles."""
        plain = {known.casefold(): known for known in self.colonies}
        near = get_close_matches(colony.casefold(), plain, n=1, cutoff=0.75)
        guess = f"Did you mean “{plain[near[0]]}”? " if near else ""
        return f"“{colony}” is new to the book. {guess}"

    def place(self, word: str) -> str:
        """Name the column with this heading."""
        for at, heading in enumerate(self.headings):
            if heading is not None and heading.word == word:
                return column(at, self.words[at])
        return f"no column “{word}”"

    def taken(self, number: int, values: dict[str, Any]) -> Line:
        """Turn the values of a line into entries."""
        colony, yard = values.get("colony", ""), values.get("yard", "")
        contents: dict[str, dict[str, Any]] = {}
        if yard and yard not in self.yards:
            contents["new yard"] = new_yard(values)
        if colony and colony not in self.colonies:
            contents["new colony"] = new_colony(values)
        if any(subject in values for subject in SUBJECTS):
            contents |= parts(values, self.hives.get(colony))
        made: list[Noted] = []
        problems: list[Problem] = []
        for part, content in contents.items():
            try:
                made.append(entry(content | {"on": values["date"]}, self.seen))
            except ValidationError as error:
                problems += self.explained(error, part, number)
        if problems:
            # a name that is wrong in one entry of the line is wrong in all
            return Line(number, (), tuple(dict.fromkeys(problems)))
        self.remember(values)
        if not made:
            problems = [Problem("This line notes nothing.", "", number, blocks=False)]
        year = values.get("queen year") if "queen event" not in values else None
        climate = values.get("climate", "")
        return Line(
            number, tuple(made), tuple(problems), values["date"], colony, yard, year, climate
        )

    def remember(self, values: dict[str, Any]) -> None:
        """Keep in mind who is in the book now that this line is taken."""
        self.yards |= {values[word] for word in ("yard",) if word in values}
        for word, hive in (("colony", "hive"), ("split to", "split hive")):
            if word in values:
                self.colonies.add(values[word])
                self.hives |= {values[word]: values[hive]} if hive in values else {}

    def explained(self, error: ValidationError, part: str, number: int) -> Iterator[Problem]:
        """Turn what the entry's own class found into sentences about columns."""
        for found in error.errors(include_url=False):
            heading = heading_of(part, str(found["loc"][-1]))
            here = self.place(heading.word)
            longest = found.get("ctx", {}).get("max_length")
            if found["type"] == "missing":
                partners = ", ".join(f"“{one.word}”" for one in HEADINGS if one.part == part)
                remedy = f"These belong together: {partners}."
                yield Problem("This cell is blank, but needed here.", remedy, number, here)
            elif longest is not None:
                yield Problem(
                    "The text is too long.", f"Write at most {longest} letters.", number, here
                )
            elif found["type"].startswith("string"):
                what = "The text holds characters that cannot be printed."
                yield Problem(what, "Write plain text.", number, here)
            else:
                yield Problem(
                    f"{found['msg']}.", f"It holds: {heading.field.allowed}.", number, here
                )


def heading_of(part: str, field: str) -> Heading:
    """Find the heading that fills a field of a part."""
    fills = [one for one in HEADINGS if one.field.name == field]
    return next((one for one in fills if one.part == part), fills[0])


def simple(word: str) -> str:
    """Bring a heading into the form in which headings are compared."""
    return " ".join(word.casefold().replace("_", " ").split())

"""A thing in the notes that a person can put right: where it is, what it is, what to do."""

from dataclasses import dataclass
from uuid import UUID

from combwright.terms.entries import Entry
from combwright.terms.errors import CombwrightError


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong, or (when it does not block) only odd.

    ``line`` counts the lines of the file from 1; ``column`` is the heading, with its number;
    ``field`` is that of the entry; ``in_file`` what else can be done about a line of a file.
    """

    what: str
    remedy: str
    line: int | None = None
    column: str = ""
    entry: UUID | None = None
    blocks: bool = True
    field: str = ""
    in_file: str = ""

    @property
    def place(self) -> str:
        """Where it is, as a person would say it."""
        line = f"line {self.line}" if self.line is not None else ""
        return ", ".join(part for part in (line, self.column) if part)

    @property
    def what_to_do(self) -> str:
        """Say what can be done where the problem was found: in a line of a file, or elsewhere."""
        in_file = f"{self.in_file} " if self.in_file and self.line is not None else ""
        return f"{in_file}{self.remedy}"

    def __str__(self) -> str:
        place = f"{self.place}: " if self.place else ""
        return f"{place}{self.what} {self.what_to_do}".rstrip()


def refused(error: CombwrightError, line: int | None = None, column: str = "") -> Problem:
    """Say what a reader refused, in its own words."""
    return Problem(error.what, error.remedy, line, column or error.where)


def wrong(entry: Entry, field: str, what: str, remedy: str, in_file: str = "") -> Problem:
    """Say that an entry cannot be true, beside the field that is to be put right first."""
    return Problem(what, remedy, entry=entry.id, field=field, in_file=in_file)


def odd(entry: Entry, what: str, remedy: str) -> Problem:
    """Say that an entry may be true, but is worth a second look."""
    return Problem(what, remedy, entry=entry.id, blocks=False)

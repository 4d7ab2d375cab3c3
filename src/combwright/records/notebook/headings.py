"""The headings of a notebook: the words at the top of its columns, and how each is read.

They are made from what the kinds of entry say of their fields, so that the two cannot drift apart.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from combwright.records.notebook import cells
from combwright.records.notebook.day_cells import day
from combwright.terms.entries import KINDS, Colony, Entry
from combwright.terms.entries.about import Variant
from combwright.terms.entries.fields import EntryField, fields_of
from combwright.terms.errors import NotebookError

READERS: Final[Mapping[Any, Callable[[str], Any]]] = {
    bool: cells.yes_or_no,
    int: cells.count,
    float: cells.number,
    date: day,
}


@dataclass(frozen=True)
class Heading:
    """One column: its word, the part of a visit that it belongs to, and where its value goes."""

    word: str
    part: str
    field: EntryField
    meaning: str

    def read(self, text: str) -> Any:  # noqa: ANN401  (whatever the field takes)
        """Read one cell that is not blank."""
        field = self.field
        if field.choices:
            return cells.one_of(text, field.choices)
        if field.is_name:
            text = " ".join(text.split())
        if field.about.chosen_from == "hive":
            text = text.lower()  # as the catalogue's keys are
        value = READERS.get(field.holds, cells.words)(text)
        if not field.is_number:
            return value
        times = field.about.times
        told = round(value * times, 9) if times != 1 else value
        self.check(text, told)
        return told

    def check(self, text: str, value: float) -> None:
        """Refuse a number that cannot be."""
        if value == 0 and self.field.about.nought_is_none:
            return
        low, above, high = (self.field.limits.get(name) for name in ("ge", "gt", "le"))
        if (
            (low is not None and value < low)
            or (above is not None and value <= above)
            or (high is not None and value > high)
        ):
            raise NotebookError(
                f"{text} is not possible for “{self.word}”.",
                remedy=f"It holds: {self.field.allowed}.",
            )


def variants(kind: type[Entry]) -> Mapping[str, Variant]:
    """Give the parts of a line that become entries of a kind; as a rule it is one."""
    told = {name: one.about.heading for name, one in fields_of(kind).items() if one.about.heading}
    own = {name: word for name, word in told.items() if name != "on"}
    return kind.VARIANTS or {kind.model_fields["kind"].default: Variant({}, own)}


def headings() -> Iterator[Heading]:
    """Make the headings of all kinds; the day, which all share, comes first."""
    on = fields_of(Colony)["on"]
    yield Heading(on.about.heading, "line", on, on.about.meaning)
    for kind in KINDS:
        for part, variant in variants(kind).items():
            for name, word in variant.headings.items():
                field = fields_of(kind)[name]
                yield Heading(word, part, field, variant.meaning or field.about.meaning)


HEADINGS: Final = tuple(headings())
BY_WORD: Final = {heading.word: heading for heading in HEADINGS}
NEEDED: Final = ("date", "colony")


def table_of_headings() -> str:
    """Write the table of headings for the documentation."""
    head = ["| heading | meaning | unit | may hold |", "|---|---|---|---|"]
    rows = (
        f"| `{one.word}` | {one.meaning} | {one.field.about.unit} | {one.field.allowed} |"
        for one in HEADINGS
    )
    return "\n".join([*head, *rows])

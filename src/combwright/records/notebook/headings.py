"""The headings of a notebook: the words at the top of its columns, and how each is read.

What a column may hold is taken from the entry's own class, so that the two cannot drift apart.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from combwright.records.notebook import cells
from combwright.records.notebook.day_cells import day
from combwright.terms import entries as kinds
from combwright.terms.entries import Entry
from combwright.terms.errors import NotebookError

NAMES = ("yard", "colony", "hive", "climate", "new_colony", "into")


@dataclass(frozen=True)
class Heading:
    """One column: its word, the part of a visit that it belongs to, and where its value goes.

    ``times`` turns the written unit into that of the entry (a share in % into a fraction).
    """

    word: str
    part: str
    kind: type[Entry]
    field: str
    meaning: str
    unit: str = ""
    times: float = 1.0

    @cached_property
    def holds(self) -> Any:  # noqa: ANN401  (a type as the class declares it)
        """The plain type of the value, without “or nothing”."""
        return plain(self.kind.model_fields[self.field].annotation)

    @cached_property
    def choices(self) -> tuple[str, ...]:
        """The words that may be written, when it is a list."""
        return get_args(self.holds) if get_origin(self.holds) is Literal else ()

    @cached_property
    def limits(self) -> dict[str, float]:
        """What the class demands of a number: ``ge``, ``gt``, ``le``, in the written unit."""
        found: dict[str, float] = {}
        for rule in self.kind.model_fields[self.field].metadata:
            for name in ("ge", "gt", "le"):
                if (bound := getattr(rule, name, None)) is not None:
                    found[name] = bound / self.times
        return found

    @property
    def allowed(self) -> str:
        """What may be written, for the documentation and for errors."""
        if self.choices:
            return ", ".join(self.choices)
        if self.holds is bool:
            return "yes, no"
        if self.holds is date:
            return "a day such as 2026-04-03"
        if self.holds in (int, float):
            least = f"more than {self.limits['gt']:g}" if "gt" in self.limits else ""
            span = least or f"{self.limits['ge']:g}"
            sort = "whole number" if self.holds is int else "number"
            joined = f"{span}, at most" if least else f"{span} to"
            return f"{sort}, {joined} {self.limits['le']:g}"
        return "text"

    def read(self, text: str) -> Any:  # noqa: ANN401  (whatever the field takes)
        """Read one cell that is not blank."""
        if self.choices:
            return cells.one_of(text, self.choices)
        readers: dict[Any, Callable[[str], Any]] = {
            bool: cells.yes_or_no,
            int: cells.count,
            float: cells.number,
            date: day,
        }
        if self.field in NAMES:
            text = " ".join(text.split())
        if self.field == "hive":
            text = text.lower()  # as the catalogue's keys are
        value = readers.get(self.holds, cells.words)(text)
        if self.holds not in (int, float):
            return value
        self.check(text, value)
        return round(value * self.times, 9) if self.times != 1 else value

    def check(self, text: str, value: float) -> None:
        """Refuse a number that cannot be."""
        low, above, high = (self.limits.get(name) for name in ("ge", "gt", "le"))
        if self.field == "grams" and value == 0:
            return  # nothing was fed
        if (
            (low is not None and value < low)
            or (above is not None and value <= above)
            or (high is not None and value > high)
        ):
            raise NotebookError(
                f"{text} is not possible for “{self.word}”.", remedy=f"It holds: {self.allowed}."
            )


def plain(annotation: Any) -> Any:  # noqa: ANN401  (types as the classes declare them)
    """Strip “or nothing” and annotations off a type."""
    if get_origin(annotation) is Annotated:
        return plain(get_args(annotation)[0])
    if get_origin(annotation) in (Union, UnionType):
        return plain(next(one for one in get_args(annotation) if one is not type(None)))
    return annotation


VISIT, STACK, SPLIT = kinds.Visit, kinds.Stack, kinds.Split

HEADINGS: tuple[Heading, ...] = (
    Heading("date", "line", kinds.Entry, "on", "the day of the visit; always needed"),
    Heading("yard", "line", kinds.Colony, "yard", "where the colony stands; needed once a colony"),
    Heading("colony", "line", kinds.Colony, "colony", "the colony's own name or number"),
    Heading("hive", "hive", kinds.Colony, "hive", "its hive in the catalogue of kit; needed once"),
    Heading(
        "queen year",
        "queen year",
        kinds.Colony,
        "queen_year",
        "the year in which the queen emerged",
    ),
    Heading("frames of bees", "visit", VISIT, "frames_of_bees", "frames covered on both sides"),
    Heading("frames of brood", "visit", VISIT, "frames_of_brood", "frames filled on both sides"),
    Heading("frames of stores", "visit", VISIT, "frames_of_stores", "full frames of food"),
    Heading("stores kg", "visit", VISIT, "stores_kg", "food in the hive", "kg"),
    Heading("hive weight kg", "visit", VISIT, "hive_weight_kg", "the whole hive weighed", "kg"),
    Heading("eggs", "visit", VISIT, "eggs", "were eggs seen"),
    Heading("queen seen", "visit", VISIT, "queen_seen", "was the queen seen"),
    Heading("queen cells", "visit", VISIT, "queen_cells", "the furthest stage found"),
    Heading("syrup left g", "visit", VISIT, "syrup_left_g", "left over from the last feed", "g"),
    Heading("temper", "visit", VISIT, "temper", "1 calm to 5 fierce"),
    Heading(
        "disease signs",
        "visit",
        VISIT,
        "disease_signs",
        "what looked unwell; “none” once it is cleared",
    ),
    Heading("mites on tray", "tray count", kinds.TrayCount, "mites", "mites fallen on the tray"),
    Heading("tray days", "tray count", kinds.TrayCount, "days", "days the tray lay in", "days"),
    Heading("mites washed", "wash count", kinds.WashCount, "mites", "mites off a sample of bees"),
    Heading("bees washed", "wash count", kinds.WashCount, "bees", "bees in that sample"),
    Heading("drawn frames added", "drawn frame", kinds.Change, "count", "negative: taken out"),
    Heading("foundation added", "foundation frame", kinds.Change, "count", "negative: taken out"),
    Heading("brood frames added", "brood frame", kinds.Change, "count", "negative: taken out"),
    Heading("stores frames added", "stores frame", kinds.Change, "count", "negative: taken out"),
    Heading(
        "feeder added",
        "feeder",
        kinds.Change,
        "count",
        "-1: taken off, with what was left in it; a full one is a feed",
    ),
    Heading("honey taken kg", "harvest", kinds.Harvest, "honey_kg", "honey taken off", "kg"),
    Heading("supers taken", "harvest", kinds.Harvest, "supers", "supers taken off with it"),
    Heading("treatment", "treatment", kinds.Treatment, "substance", "what acts against mites"),
    Heading("treated until", "treatment", kinds.Treatment, "until", "the day it came or comes out"),
    Heading("product", "treatment", kinds.Treatment, "product", "its name on the label"),
    Heading("batch", "treatment", kinds.Treatment, "batch", "the batch on the label"),
    Heading("amount", "treatment", kinds.Treatment, "amount", "how much was used"),
    Heading("syrup fed g", "syrup", kinds.Feed, "grams", "syrup given, by weight", "g"),
    Heading(
        "sugar share %",
        "syrup",
        kinds.Feed,
        "sugar_fraction",
        "sugar in the syrup; 60 if blank",
        "% by weight",
        0.01,
    ),
    Heading("syrup warmth c", "syrup", kinds.Feed, "temperature_c", "how warm it was given", "°C"),
    Heading("fondant fed g", "fondant", kinds.Feed, "grams", "fondant given", "g"),
    Heading(
        "queen event",
        "queen",
        kinds.Queen,
        "event",
        "what happened to the queen, or that all queen cells were knocked down",
    ),
    Heading("split to", "split", SPLIT, "new_colony", "the name of the new colony"),
    Heading("split hive", "split", SPLIT, "hive", "the hive of the new colony, of the catalogue"),
    Heading("split frames of bees", "split", SPLIT, "frames_of_bees", "bees that went with it"),
    Heading("split frames of brood", "split", SPLIT, "frames_of_brood", "brood that went with it"),
    Heading("split frames of stores", "split", SPLIT, "frames_of_stores", "food that went with it"),
    Heading("split with", "split", SPLIT, "goes_with", "what the new colony has for a queen"),
    Heading("frames in box", "stack", STACK, "frames", "all frames of the brood box, on leaving"),
    Heading("foundation", "stack", STACK, "foundation", "those of them still to be drawn"),
    Heading("dummy boards", "stack", STACK, "dummy_boards", "dummy boards in the box, on leaving"),
    Heading("supers", "stack", STACK, "supers", "supers on the hive, on leaving"),
    Heading("excluder", "stack", STACK, "excluder", "is a queen excluder on"),
    Heading("entrance mm", "stack", STACK, "entrance_mm", "width of the open entrance", "mm"),
    Heading("tray open mm", "stack", STACK, "tray_open_mm", "how far the tray is out", "mm"),
    Heading("cover", "stack", STACK, "cover", "what lies over the frames"),
    Heading("pitch mm", "stack", STACK, "pitch_mm", "from the middle of a comb to the next", "mm"),
    Heading("united into", "unite", kinds.Unite, "into", "the colony whose queen is kept"),
    Heading("moved to", "move", kinds.Move, "yard", "the yard it was taken to"),
    Heading("ended", "end", kinds.End, "reason", "why the colony leaves the book"),
    Heading("climate", "yard", kinds.Yard, "climate", "built-in climate of a new yard"),
    Heading("remark", "visit", VISIT, "remark", "anything else"),
)
BY_WORD = {heading.word: heading for heading in HEADINGS}
NEEDED = ("date", "colony")


def table_of_headings() -> str:
    """Write the table of headings for the documentation."""
    head = ["| heading | meaning | unit | may hold |", "|---|---|---|---|"]
    rows = (f"| `{one.word}` | {one.meaning} | {one.unit} | {one.allowed} |" for one in HEADINGS)
    return "\n".join([*head, *rows])

"""A field as a form shows it, made from what the entry says of it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from combwright.terms.entries.fields import EntryField

MOST_BUTTONS = 6  # more choices than these go into a list to pick from; judgement


@dataclass(frozen=True, slots=True)
class FormField:
    """One field of a form: its name, its words, and how it is filled in."""

    name: str
    label: str
    widget: Literal["stepper", "buttons", "list", "line", "text"]
    unit: str = ""
    hint: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    usual: str = ""
    type: Literal["text", "date", "number"] = "text"
    longest: int | None = None
    low: float = 0
    high: float = 0
    step: float = 0
    start: float = 0

    @property
    def is_narrow(self) -> bool:
        """Tell whether two fit side by side."""
        return self.widget in ("stepper", "line")


def form_field(
    field: EntryField, name: str, chosen_from: Sequence[str] = (), *, at_hive: bool = False
) -> FormField:
    """Make the field of a form; one at a hive is filled in with gloves on, by steps."""
    about, limits = field.about, field.limits
    choices = choices_of(field, chosen_from)
    return FormField(
        name,
        about.label,
        widget(field, len(choices), at_hive=at_hive),
        unit=about.unit,
        hint=about.hint,
        choices=choices,
        usual=said(field.usual) if field.choices and not field.is_required else "",
        type="date" if field.holds is date else "number" if field.is_number else "text",
        longest=field.longest,
        low=limits.get("ge", limits.get("gt", 0)),
        high=limits.get("le", 0),
        step=about.step,
        start=about.start,
    )


def widget(
    field: EntryField, choices: int, *, at_hive: bool
) -> Literal["stepper", "buttons", "list", "line", "text"]:
    """Choose how a field is filled in."""
    if choices:
        few = choices <= MOST_BUTTONS and not field.about.chosen_from
        return "buttons" if few and at_hive else "list"
    if at_hive and field.about.step:
        return "stepper"
    return "text" if field.about.at_hive == "last" and at_hive else "line"


def choices_of(field: EntryField, chosen_from: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """Pair what a form sends with what it shows; leaving it open comes last, or first in a list."""
    known = field.about.words or {one: one for one in field.choices or chosen_from}
    if not known and field.holds is bool:
        known = {"yes": "yes", "no": "no"}
    told = tuple(known.items())
    if field.about.nothing is None or not told:
        return told
    nothing = (("", field.about.nothing),)
    return (*nothing, *told) if len(told) >= MOST_BUTTONS else (*told, *nothing)


def said(value: object) -> str:
    """Write a value as a form sends it."""
    return "" if value is None else str(value)

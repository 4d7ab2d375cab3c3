"""What is wrong with a field of a form, in words that stand beside it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from pydantic import ValidationError

from combwright.terms.entries import Entry
from combwright.terms.entries.fields import EntryField, fields_of

BOUNDS: Final[Mapping[str, str]] = {
    "greater_than_equal": "{} or more.",
    "greater_than": "more than {}.",
    "less_than_equal": "{} or less.",
    "less_than": "less than {}.",
}
RIGHT: Final[Mapping[str, str]] = {
    "int": "Give a whole number.",
    "float": "Give a number, such as 4.5.",
    "bool": "Give yes or no.",
    "date": "Give a day such as 2027-04-24.",
    "finite": "Give a number, such as 4.5.",
}


@dataclass(frozen=True, slots=True)
class FieldProblem:
    """One field that cannot be taken, and what would be right."""

    field: str
    what: str
    remedy: str


def in_words(
    error: ValidationError, kind: type[Entry], form_name: Callable[[EntryField], str]
) -> list[FieldProblem]:
    """Say each problem of an entry beside the field of the form that it was read from."""
    found, fields = [], fields_of(kind)
    for one in error.errors(include_url=False):
        # the kind goes before the field, and a kind may be called as a field is
        named = (str(part) for part in reversed(one["loc"]))
        field = next((fields[part] for part in named if part in fields), None)
        label = field.about.label if field else str(one["loc"][-1]).capitalize()
        what, remedy = _said(label, field, one)
        found.append(FieldProblem(form_name(field) if field else label.lower(), what, remedy))
    return found


def _said(label: str, field: EntryField | None, one: Any) -> tuple[str, str]:  # noqa: ANN401  (pydantic's own mapping)
    unit, hint = (field.about.unit, field.about.hint) if field else ("", "")
    kind, context = str(one["type"]), one.get("ctx", {})
    if kind == "missing":
        return f"{label} is missing.", "Fill it in, or leave its whole part empty."
    what = f"{label} cannot be “{one['input']}”."
    if kind in BOUNDS:
        bound = f"{next(iter(context.values())):g} {unit}".strip()
        return what, f"Give {BOUNDS[kind].format(bound)}"
    if kind == "literal_error":
        choices = str(context.get("expected", "one of the list")).replace("'", "")
        return what, f"Choose {choices}."
    if kind == "string_too_long":
        return f"{label} is too long.", f"{context['max_length']} signs at most."
    if kind == "string_pattern_mismatch":
        return what, f"Write it as {hint}." if hint else "Leave out signs that cannot be printed."
    return what, next(
        (right for start, right in RIGHT.items() if kind.startswith(start)), one["msg"]
    )

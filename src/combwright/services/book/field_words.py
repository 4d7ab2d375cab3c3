"""What is wrong with a field of a form, in words that stand beside it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from pydantic import ValidationError

UNITS: Final[Mapping[str, str]] = {
    "_kg": "kg",
    "_g": "g",
    "_mm": "mm",
    "grams": "g",
    "days": "days",
}

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
}


@dataclass(frozen=True, slots=True)
class FieldProblem:
    """One field that cannot be taken, and what would be right."""

    field: str
    what: str
    remedy: str


def in_words(error: ValidationError, kind: str, fields: Mapping[str, str]) -> list[FieldProblem]:
    """Say each problem of an entry beside the field of the form that it was read from.

    Parameters
    ----------
    error
        What the gate found.
    kind
        The kind of entry.
    fields
        The form's field for each field of the entry.

    """
    found = []
    for one in error.errors(include_url=False):
        name = next((str(part) for part in one["loc"] if part != kind), "")
        what, remedy = _said(name, one)
        found.append(FieldProblem(fields.get(name, name), what, remedy))
    return found


def _said(name: str, one: Any) -> tuple[str, str]:  # noqa: ANN401  (pydantic's own mapping)
    words = name.replace("_", " ").removesuffix(" g").removesuffix(" kg").removesuffix(" mm")
    unit = next((unit for end, unit in UNITS.items() if name.endswith(end)), "")
    kind, context = str(one["type"]), one.get("ctx", {})
    if kind == "missing":
        return f"{words.capitalize()} is missing.", "Fill it in, or leave its whole part empty."
    what = f"{words.capitalize()} cannot be “{one['input']}”."
    if kind in BOUNDS:
        return what, "Give " + BOUNDS[kind].format(
            f"{next(iter(context.values())):g} {unit}".strip()
        )
    if kind == "literal_error":
        return what, f"Choose {context.get('expected', 'one of the list')}."
    if kind == "string_too_long":
        return f"{words.capitalize()} is too long.", f"{context['max_length']} signs at most."
    return what, next(
        (right for start, right in RIGHT.items() if kind.startswith(start)), one["msg"]
    )

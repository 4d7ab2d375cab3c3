"""From TOML text to things of the catalogue, with errors that a keeper can put right."""

import difflib
from collections.abc import Iterable, Mapping
from typing import Any

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from combwright.kit import items
from combwright.terms.data_files import tables_in
from combwright.terms.errors import NotFoundError, OutOfRangeError

# In the order in which they refer to one another.
KINDS: dict[str, type[items.Item]] = {
    "material": items.Material,
    "frame": items.Frame,
    "super": items.Super,
    "board": items.Board,
    "hive": items.Hive,
    "spacing": items.Spacing,
    "feeder": items.Feeder,
    "floor": items.Floor,
    "cover": items.Cover,
    "excluder": items.Excluder,
}
LAYERED = ("wall", "crown_board", "roof", "floor_layers", "layers")
REFERS = {"frame": items.Frame, "honey_super": items.Super, "dummy_board": items.Board}
USUAL = {"hive": {"dummy_board": "dummy board"}}  # what a thing has that names no other
SLIPS = {
    "greater_than": "or more",
    "greater_than_equal": "or more",
    "less_than": "or less",
    "less_than_equal": "or less",
}


def read_items(texts: Iterable[tuple[str, str]]) -> dict[str, items.Item]:
    """Read every text, given with the label that errors should name."""
    parsed = [(label, text, _parse(label, text)) for label, text in texts]
    known: dict[str, items.Item] = {}
    for kind in KINDS:
        for label, text, tables in parsed:
            for number, table in enumerate(tables.get(kind, [])):
                place = f"{label}, line {line_of(text, kind, number)}"
                item = _item(kind, table, f"{place}, {kind} “{table.get('key', '?')}”", known)
                if item.key in known:
                    raise OutOfRangeError(
                        f"“{item.key}” is in the catalogue already.",
                        where=place,
                        remedy="Choose another key, such as one with your own name in it.",
                    )
                known[item.key] = item
    return known


def line_of(text: str, kind: str, number: int) -> int:
    """Find the line in which a table of a kind begins, counted from 1."""
    heads = [at for at, line in enumerate(text.splitlines(), 1) if _heads(line, kind)]
    return heads[number] if number < len(heads) else 1


def _heads(line: str, kind: str) -> bool:
    return line.partition("#")[0].replace(" ", "").strip() == f"[[{kind}]]"


def nearest(key: str, known: Iterable[str]) -> str:
    """Words that name the likeliest keys meant."""
    everything = sorted(known)
    near = difflib.get_close_matches(key, everything, n=4, cutoff=0.5)
    near += [k for k in everything if set(key.split()) & set(k.split()) and k not in near]
    return "Did you mean " + " or ".join(f"“{k}”" for k in near[:4]) + "?" if near else ""


def _parse(label: str, text: str) -> dict[str, list[dict[str, Any]]]:
    tables = tables_in(text, label, "See the catalogue for examples.")
    for kind, entries in tables.items():
        if kind not in KINDS:
            raise NotFoundError(
                f"“{kind}” is not a kind of kit.",
                where=label,
                remedy=nearest(kind, KINDS) or f"Kinds are {', '.join(KINDS)}.",
            )
        if not isinstance(entries, list):
            raise OutOfRangeError(
                f"“[{kind}]” needs double brackets.", where=label, remedy=f"Write [[{kind}]]."
            )
    return tables


def _item(
    kind: str, table: Mapping[str, Any], place: str, known: Mapping[str, items.Item]
) -> items.Item:
    said = {**USUAL.get(kind, {}), **table}
    whole = {field: _resolved(field, value, place, known) for field, value in said.items()}
    try:
        return TypeAdapter(KINDS[kind]).validate_python(whole)
    except ValidationError as error:
        raise OutOfRangeError(
            " ".join(_sentence(problem) for problem in error.errors()), where=place
        ) from error


def _resolved(field: str, value: object, place: str, known: Mapping[str, items.Item]) -> object:
    if field in LAYERED and isinstance(value, list):
        return tuple(_layer(field, layer, place, known) for layer in value)
    if field in REFERS and isinstance(value, str):
        return _known(value, REFERS[field], field, place, known)
    return value


def _layer(
    field: str, layer: object, place: str, known: Mapping[str, items.Item]
) -> items.Layer | object:
    if not (isinstance(layer, dict) and isinstance(layer.get("material"), str)):
        return layer
    material = layer["material"]
    conductivity = None
    if material != "air":
        found = _known(material, items.Material, field, place, known)
        conductivity = getattr(found, "conductivity_w_per_m_k", None)
    return {**layer, "conductivity_w_per_m_k": conductivity}


def _known(
    key: str, kind: type[items.Item], field: str, place: str, known: Mapping[str, items.Item]
) -> items.Item:
    item = known.get(key)
    if isinstance(item, kind):
        return item
    of_that_kind = [k for k, other in known.items() if isinstance(other, kind)]
    raise NotFoundError(
        f"{field} names “{key}”, which is no {kind.__name__.lower()} in the catalogue.",
        where=place,
        remedy=nearest(key, of_that_kind) or f"Known: {', '.join(sorted(of_that_kind))}.",
    )


def _sentence(problem: ErrorDetails) -> str:
    field = " ".join(str(part) for part in problem["loc"])
    given = problem["input"]
    kind = problem["type"]
    if kind == "missing":
        return f"{field} is missing."
    if kind in {"unexpected_keyword_argument", "extra_forbidden"}:
        return f"{field} is not a field of this kind."
    if kind in SLIPS:
        limit = next(iter(problem["ctx"].values()))
        looks = _looks_like(field, given, kind)
        return f"{field} is {given}, but must be {limit} {SLIPS[kind]}{looks}."
    return f"{field} is {given!r}: {problem['msg'][0].lower()}{problem['msg'][1:]}."


def _looks_like(field: str, given: object, kind: str) -> str:
    if field.endswith("mm"):
        return (
            " (millimetres; is this in centimetres or inches?)"
            if kind.startswith("greater")
            else " (millimetres; is a decimal point missing?)"
        )
    if field.endswith("kg") and isinstance(given, int | float) and given > 0:
        return " (kilograms; is this in grams?)"
    return ""

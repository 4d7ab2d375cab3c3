"""From the values of one notebook line to its entries, each with an id of its own."""

import json
from collections import Counter
from typing import Any, cast
from uuid import UUID, uuid5

from combwright.records.notebook.headings import HEADINGS, variants
from combwright.terms.entries import ENTRY, KINDS, Colony, Entry, Noted, Yard
from combwright.terms.entries.fields import fields_of

# the name space of ids, so that the same note always gets the same one
NOTEBOOK = UUID("6d0c1a52-3f0e-5c5b-9a39-3f9b6a1f2c77")

# A line's parts in the order of a visit, and what each fixes; yards and colonies enter before them.
PARTS: dict[str, dict[str, Any]] = {
    part: {"kind": kind.model_fields["kind"].default} | dict(variant.fixed)
    for kind in KINDS
    if kind not in (Colony, Yard)
    for part, variant in variants(kind).items()
}

# what a note may be about, by the heading that names it
SUBJECTS = {"colony": "colony", "order": "order", "batch of cells": "batch", "queen": "queen"}


def named_by(kind: type[Entry]) -> dict[str, str]:
    """Give the headings that name what a kind of note is about, and the fields they fill."""
    fields = fields_of(kind)
    return {
        word: name
        for word, name in SUBJECTS.items()
        if name in fields and fields[name].about.heading in ("", word)
    }


NAMED_BY = {kind.model_fields["kind"].default: named_by(kind) for kind in KINDS}

Values = dict[str, Any]


def parts(values: Values, last_hive: str | None) -> dict[str, Values]:
    """Sort the values of a line, by heading, into the contents of the entries they make.

    Only parts of which something is written, in the order of a visit; ``last_hive`` is what an
    earlier line of the same file gave the colony.
    """
    found: dict[str, Values] = {}
    for part, fixed in PARTS.items():
        own = [
            one
            for one in HEADINGS
            if one.part == part and one.word in values and one.word not in SUBJECTS
        ]
        if any(one.field.about.nought_is_none and values[one.word] == 0 for one in own):
            continue
        content: Values = {one.field.name: values[one.word] for one in own}
        if part == "stack" and values.get("hive", last_hive) != last_hive:
            content["hive"] = values["hive"]
        if part == "queen" and content and "queen year" in values:
            content["queen_year"] = values["queen year"]
        if content:
            subjects = NAMED_BY[fixed["kind"]].items()
            about = {name: values[word] for word, name in subjects if word in values}
            found[part] = fixed | about | content
    return found


def new_yard(values: Values) -> Values:
    """Lay out a yard's first entry."""
    told = ("yard", "climate") if "colony" in values else ("yard", "climate", "remark")
    return {"kind": "yard"} | {name: values[name] for name in told if name in values}


def new_colony(values: Values) -> Values:
    """Lay out a colony's first entry."""
    year = {"queen_year": values["queen year"]} if "queen year" in values else {}
    return {"kind": "colony"} | {name: values[name] for name in ("colony", "yard", "hive")} | year


def entry(content: Values, seen: Counter[str]) -> Noted:
    """Make an entry whose id follows from what it says.

    Two equal notes of one file (half a kilo in the morning, half a kilo in the evening) are told
    apart by their order, which ``seen`` counts; the same file read again gives the same ids.
    """
    # only what was written counts: a field that a later version adds must not change old ids
    said = json.dumps(content, sort_keys=True, default=str)
    key = uuid5(NOTEBOOK, f"{said} {seen[said]}")
    noted: Any = ENTRY.validate_python(content | {"id": key})
    seen[said] += 1
    return cast("Noted", noted)

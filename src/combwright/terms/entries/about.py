"""What is said once of each field of an entry: its words, its unit, and where it is asked for.

Headings of the notebook, forms, schema, the words of the book and the docs are made from it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import partial
from typing import Any, Literal

from pydantic import GetJsonSchemaHandler
from pydantic_core import CoreSchema

# where the form at a hive asks for a field; “taken”: not asked, but taken where a note brings it
Place = Literal["", "seen", "done", "more", "last", "taken"]
# what there is to choose from where the program, not the entry, knows it
Source = Literal[
    "",
    "colony",
    "yard",
    "hive",
    "climate",
    "district",
    "item",
    "order",
    "batch",
    "own queen",
    "product",
    "honey",
    "lot",
]


@dataclass(frozen=True, slots=True)
class About:
    """One field in the keeper's words.

    ``label`` stands beside it in forms, ``hint`` small behind the label; ``said`` goes before its
    value in a list, the label where it is left out. ``heading`` is that of its column in the
    notebook, where it is written in ``unit``; ``times`` turns that into the unit of the entry.
    ``words`` are those of its choices in forms, ``nothing`` that of leaving it open. A stepper
    goes by ``step`` from ``start``; without a step a number is typed. ``name`` is that of the
    field in the form at the hive; phones may hold notes for weeks, so it never changes.
    ``personal`` is what tells who somebody else is: it is kept apart, and can be deleted.
    """

    label: str
    meaning: str
    heading: str = ""
    unit: str = ""
    times: float = 1.0
    hint: str = ""
    said: str | None = None
    words: Mapping[str, str] = field(default_factory=dict)
    nothing: str | None = None
    chosen_from: Source = ""
    step: float = 0
    start: float = 0
    at_hive: Place = ""
    name: str = ""
    nought_is_none: bool = False
    personal: bool = False

    def __get_pydantic_json_schema__(
        self, core_schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Say in the schema what the field means."""
        unit = f" [{self.unit}]" if self.unit and self.times == 1 else ""
        return {**handler(core_schema), "title": self.label, "description": self.meaning + unit}


@dataclass(frozen=True, slots=True)
class Variant:
    """A part of a notebook's line that becomes an entry with some values fixed.

    ``headings`` and ``meaning`` take the place of those that the fields have themselves.
    """

    fixed: Mapping[str, Any]
    headings: Mapping[str, str]
    meaning: str = ""


# fields that the form at a hive asks for or takes, by their place in it
seen = partial(About, at_hive="seen")
done = partial(About, at_hive="done")
more = partial(About, at_hive="more")
taken = partial(About, at_hive="taken")

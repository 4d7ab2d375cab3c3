"""A field of an entry as a whole: what it holds, what it may hold, and what is said about it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache, cached_property
from types import MappingProxyType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import NAME, Entry


@dataclass(frozen=True, eq=False)
class EntryField:
    """One field of a kind of entry."""

    kind: type[Entry]
    name: str
    about: About

    @cached_property
    def holds(self) -> Any:  # noqa: ANN401  (a type as the class declares it)
        """The plain type of the value, without “or nothing”."""
        return plain(self.kind.model_fields[self.name].annotation)

    @cached_property
    def choices(self) -> tuple[str, ...]:
        """The words that it may hold, when it is a list."""
        return get_args(self.holds) if get_origin(self.holds) is Literal else ()

    @property
    def is_number(self) -> bool:
        """Tell a number from yes or no, a word, a text, a day."""
        return self.holds in (int, float)

    @cached_property
    def is_name(self) -> bool:
        """Tell a name from other text."""
        return mentions(get_type_hints(self.kind, include_extras=True)[self.name], NAME)

    @cached_property
    def limits(self) -> Mapping[str, float]:
        """What the class demands of a number: ``ge``, ``gt``, ``le``."""
        return {
            name: bound for name in ("ge", "gt", "le") if (bound := self.rule(name)) is not None
        }

    @property
    def longest(self) -> int | None:
        """The most letters of a text."""
        found: int | None = self.rule("max_length")
        return found

    def rule(self, name: str) -> Any:  # noqa: ANN401  (numbers of many kinds)
        """Look up one demand of the class."""
        rules = self.kind.model_fields[self.name].metadata
        return next(
            (found for one in rules if (found := getattr(one, name, None)) is not None), None
        )

    @property
    def is_required(self) -> bool:
        """Tell whether the entry cannot be without it."""
        return self.kind.model_fields[self.name].is_required()

    @property
    def usual(self) -> Any:  # noqa: ANN401  (whatever the field takes)
        """Give the value that it has when nothing is said, if any."""
        return self.kind.model_fields[self.name].get_default()

    @property
    def allowed(self) -> str:
        """What may be written, in the written unit, for the documentation and for errors."""
        if self.choices:
            return ", ".join(self.choices)
        if self.holds is bool:
            return "yes, no"
        if self.holds is date:
            return "a day such as 2026-04-03"
        if not self.is_number:
            return "text"
        written = {name: bound / self.about.times for name, bound in self.limits.items()}
        sort = "whole number" if self.holds is int else "number"
        if "gt" in written:
            return f"{sort}, more than {written['gt']:g}, at most {written['le']:g}"
        return f"{sort}, {written['ge']:g} to {written['le']:g}"


@cache
def fields_of(kind: type[Entry]) -> Mapping[str, EntryField]:
    """Give the fields of a kind that a person is told of, by name, the remark last."""
    found = {
        name: EntryField(kind, name, about)
        for name, field in kind.model_fields.items()
        for about in field.metadata
        if isinstance(about, About)
    }
    last = {"remark": found.pop("remark")}
    return MappingProxyType(found | last)


def plain(annotation: Any) -> Any:  # noqa: ANN401  (types as the classes declare them)
    """Strip “or nothing” and annotations off a type."""
    if get_origin(annotation) is Annotated:
        return plain(get_args(annotation)[0])
    if get_origin(annotation) in (Union, UnionType):
        return plain(next(one for one in get_args(annotation) if one is not type(None)))
    return annotation


def mentions(hint: Any, rule: object) -> bool:  # noqa: ANN401  (types as the classes declare them)
    """Tell whether a rule stands somewhere in a type."""
    return any(part is rule or mentions(part, rule) for part in get_args(hint))

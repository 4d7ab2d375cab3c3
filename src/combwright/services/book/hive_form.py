"""The form at a hive: which fields of which entries it asks for, and in which order."""

from collections.abc import Collection, Iterator, Mapping
from functools import cache
from itertools import groupby
from types import MappingProxyType
from typing import Final

from combwright.belief.following.own_way import counting_on
from combwright.services.book.form_fields import FormField, form_field
from combwright.terms.entries import KINDS, Entry, HowCounted
from combwright.terms.entries.about import Place
from combwright.terms.entries.fields import EntryField, fields_of

# Fields that are set aside by who counts in a way.
NOT_COUNTED: Final[Mapping[str, frozenset[str]]] = {
    "frames filled": frozenset({"combs_with_brood"}),
    "combs with brood": frozenset({"frames_of_brood"}),
    "frames covered": frozenset({"seams_of_bees"}),
    "seams": frozenset({"frames_of_bees"}),
}
__all__ = ["counting_on", "sections", "unasked"]

SECTIONS: Final[tuple[Place, ...]] = ("seen", "done", "more", "last")


@cache
def kinds_at_hive() -> Mapping[str, type[Entry]]:
    """Give the kinds of entry that a note at a hive can make, in the order of a visit."""
    found = {kind.model_fields["kind"].default: kind for kind in KINDS if taken(kind)}
    return MappingProxyType(found)


@cache
def taken(kind: type[Entry]) -> Mapping[str, EntryField]:
    """Give the fields of a kind that a note may bring, by their names in the form."""
    found = (one for one in fields_of(kind).values() if one.about.at_hive)
    return MappingProxyType({form_name(one): one for one in found})


def form_name(field: EntryField) -> str:
    """Give the name that a field has in the form at a hive."""
    return field.about.name or field.name


@cache
def all_taken() -> Mapping[str, EntryField]:
    """Give every field that a note may bring, by its name in the form."""
    return MappingProxyType(
        {name: one for kind in kinds_at_hive().values() for name, one in taken(kind).items()}
    )


@cache
def sections(counting: HowCounted | None = None) -> Mapping[str, tuple[tuple[FormField, ...], ...]]:
    """Give the fields of each section, those that stand side by side in one group.

    What the keeper does not count that way stands with what is seldom noted.
    """
    aside = NOT_COUNTED[counting.brood if counting else "frames filled"]
    aside |= NOT_COUNTED[counting.bees if counting else "frames covered"]
    return MappingProxyType({place: tuple(groups(place, aside)) for place in SECTIONS})


def groups(place: Place, aside: Collection[str]) -> Iterator[tuple[FormField, ...]]:
    """Go through the fields of a section; narrow ones of one kind stand side by side."""
    for _, some in groupby(
        (
            (name, one)
            for name, one in all_taken().items()
            if place == ("more" if name in aside else one.about.at_hive)
        ),
        key=lambda pair: pair[1].kind,
    ):
        made = [form_field(one, name, at_hive=True) for name, one in some]
        for is_narrow, together in groupby(made, key=lambda one: one.is_narrow):
            fields = tuple(together)
            yield from [fields] if is_narrow else [(one,) for one in fields]


def unasked(values: Mapping[str, str]) -> dict[str, str]:
    """Pick the values that a note brings along without asking."""
    return {
        name: values[name]
        for name, one in all_taken().items()
        if one.about.at_hive == "taken" and values.get(name)
    }

from datetime import date
from typing import get_args

from combwright.terms.entries import ENTRY, KINDS, STACK_FIELDS, Entry, Feed, Noted, Stack, Visit
from combwright.terms.entries.fields import EntryField, fields_of

FIELDS = [one for kind in KINDS for one in fields_of(kind).values()]
UNSAID = {"id", "kind"}


def named(field: EntryField) -> str:
    return f"{field.kind.__name__}.{field.name}"


def test_every_kind_that_can_be_noted_is_listed() -> None:
    assert set(KINDS) == set(get_args(get_args(Noted)[0]))
    assert {Visit, Stack, Feed} < set(KINDS)


def test_every_field_is_described() -> None:
    for kind in KINDS:
        assert fields_of(kind).keys() == kind.model_fields.keys() - UNSAID, kind


def test_every_field_has_a_label_and_a_meaning() -> None:
    for field in FIELDS:
        assert field.about.label, named(field)
        assert field.about.meaning, named(field)
        assert field.allowed, named(field)


def test_words_are_only_those_of_values_that_the_field_takes() -> None:
    for field in FIELDS:
        assert [value for value in field.about.words if not takes(field, value)] == [], named(field)


def takes(field: EntryField, value: str) -> bool:
    if field.choices:
        return value in field.choices
    if field.holds is bool:
        return value in {"yes", "no"}
    return field.limits["ge"] <= int(value) <= field.limits["le"]


def test_every_number_has_a_range() -> None:
    numbers = [one for one in FIELDS if one.is_number]
    assert numbers
    assert all({"ge", "gt"} & one.limits.keys() and "le" in one.limits for one in numbers)


def test_the_schema_says_what_a_field_means() -> None:
    found = ENTRY.json_schema()["$defs"]["Visit"]["properties"]["stores_kg"]
    assert found["title"] == "Stores"
    assert found["description"] == "food in the hive [kg]"
    assert found["anyOf"][0]["maximum"] == 120


def test_what_a_field_holds() -> None:
    seen = fields_of(Visit)
    assert seen["eggs"].holds is bool
    assert seen["on"].holds is date
    assert seen["queen_cells"].choices == ("none", "cups", "charged", "sealed")
    assert (seen["colony"].is_name, seen["disease_signs"].is_name) == (True, False)
    assert fields_of(Stack)["hive"].is_name
    assert fields_of(Feed)["sugar_fraction"].allowed == "number, 30 to 95"
    assert list(seen)[-1] == "remark"


def test_the_fields_of_a_stack_are_all_but_what_any_note_has() -> None:
    assert set(STACK_FIELDS) == Stack.model_fields.keys() - Entry.model_fields.keys() - {
        "kind",
        "colony",
    }

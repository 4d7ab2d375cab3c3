"""The form at a hive is made from the entries, and the gate knows every field of it."""

from uuid import uuid4

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.services.book.form_fields import FormField
from combwright.services.book.hive_form import (
    SECTIONS,
    all_taken,
    kinds_at_hive,
    sections,
    taken,
    unasked,
)
from combwright.services.book.notes import note_entries

SHOWN = [one for groups in sections().values() for group in groups for one in group]
NOTE = {"note": str(uuid4()), "on": "2027-04-24", "colony": "Alder"}


def filled(field: FormField) -> st.SearchStrategy[str]:
    """Give what a person may fill in."""
    if field.choices:
        return st.sampled_from([sent for sent, _ in field.choices])
    if field.widget == "stepper":
        steps = int((field.high - field.low) / field.step)
        return st.integers(1, steps).map(lambda n: f"{field.low + n * field.step:g}")
    kinds = {"date": "2027-05-01", "number": "2026", "text": "calm"}
    return st.just(kinds[field.type])


def test_no_two_fields_share_a_name() -> None:
    names = [name for kind in kinds_at_hive().values() for name in taken(kind)]
    assert len(names) == len(set(names)) == len(all_taken())


def test_every_field_that_is_asked_for_is_shown_once() -> None:
    shown = [one.name for one in SHOWN]
    asked = {name for name, one in all_taken().items() if one.about.at_hive in SECTIONS}
    assert sorted(shown) == sorted(asked)


@pytest.mark.parametrize("field", SHOWN, ids=lambda one: one.name)
def test_every_field_of_the_form_is_known_to_the_gate(field: FormField) -> None:
    held = all_taken()[field.name]
    assert field.label == held.about.label
    assert field.high == held.limits.get("le", 0)
    assert field.widget != "stepper" or field.step > 0


@given(st.fixed_dictionaries({one.name: filled(one) for one in SHOWN}))
def test_whatever_is_filled_in_reaches_an_entry(values: dict[str, str]) -> None:
    found = {each.kind: each for each in note_entries(NOTE | values)}
    for name, value in values.items():
        field = all_taken()[name]
        each = found.get(field.kind.model_fields["kind"].default)
        if each is None or not value:
            continue
        told = getattr(each, field.name)
        if field.holds is bool:
            assert told is (value == "yes")
        elif field.is_number:
            assert told == pytest.approx(float(value))
        else:
            assert str(told) == value


def test_what_a_note_brings_along_unasked() -> None:
    assert unasked({"hive": "smith", "feed": "syrup", "pitch_mm": "", "eggs": "yes"}) == {
        "hive": "smith",
        "feed": "syrup",
    }

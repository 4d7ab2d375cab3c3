import pytest
from pydantic import ValidationError

from combwright.services.book.field_words import FieldProblem, in_words
from combwright.services.book.hive_form import form_name
from combwright.terms.entries import ENTRY, Feed, TrayCount

NOTE = {"id": "6d0c1a52-3f0e-5c5b-9a39-3f9b6a1f2c77", "on": "2027-04-24", "colony": "Alder"}


def test_a_problem_stands_beside_the_field_of_the_form_in_its_words() -> None:
    with pytest.raises(ValidationError) as caught:
        TrayCount.model_validate(NOTE | {"mites": 3, "days": 0})
    assert in_words(caught.value, TrayCount, form_name) == [
        FieldProblem("tray_days", "Time the tray lay in cannot be “0”.", "Give more than 0 days.")
    ]


def test_what_is_missing_is_named() -> None:
    with pytest.raises(ValidationError) as caught:
        ENTRY.validate_python(NOTE | {"kind": "feed"})
    (problem,) = in_words(caught.value, Feed, form_name)
    assert (problem.field, problem.what) == ("feed_g", "Feed given is missing.")

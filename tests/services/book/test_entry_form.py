import pytest

from combwright.services.book.entry_form import FORMS, form_fields
from combwright.terms.entries.fields import fields_of
from combwright.terms.errors import NotFoundError

KNOWN = {"colony": ["Alder"], "yard": ["Mill Lane"], "hive": ["smith"], "item": ["super"]}


@pytest.mark.parametrize("kind", FORMS)
def test_a_form_asks_for_every_field_of_its_entry(kind: str) -> None:
    assert [one.name for one in form_fields(kind, KNOWN)] == list(fields_of(FORMS[kind]))


def test_what_the_book_knows_is_there_to_choose() -> None:
    fields = {one.name: one for one in form_fields("unite", KNOWN)}
    assert fields["colony"].choices == fields["into"].choices == (("Alder", "Alder"),)
    assert fields["remark"].widget == "line"


def test_a_form_that_there_is_not_is_named() -> None:
    with pytest.raises(NotFoundError, match="There is no form for “visit”"):
        form_fields("visit", KNOWN)

import pytest

from combwright.sources.json_text import number, parsed
from combwright.terms.errors import SourceError


@pytest.mark.parametrize("value", [10**400, -(10**400), float("inf"), float("nan"), True, "5", []])
def test_what_is_no_finite_number_is_refused(value: object) -> None:
    with pytest.raises(SourceError, match="is no number"):
        number(value, "here")


def test_finite_numbers_and_null_are_taken() -> None:
    assert [number(one, "here") for one in (7, -0.5, None)] == [7.0, -0.5, None]


@pytest.mark.parametrize("text", ["9" * 5000, "[" * 100_000, "{"])
def test_what_cannot_be_read_is_said(text: str) -> None:
    with pytest.raises(SourceError, match="JSON"):
        parsed(text, "here")

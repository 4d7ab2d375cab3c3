"""Every sign that is let through can be printed, in any order and broken over lines."""

import json
import unicodedata

import pytest
import typst
from hypothesis import given
from hypothesis import strategies as st

from combwright.paper.printable import COVERED, printable

PAGE = b"""
#set document(title: "signs", date: datetime(year: 2026, month: 4, day: 14))
#set page(width: 40mm, height: auto)
#set text(lang: "en", font: ("Libertinus Serif", "DejaVu Sans Mono"))
#json(bytes(sys.inputs.text))
"""


def printed(text: str) -> bytes:
    return bytes(
        typst.compile(
            PAGE,
            sys_inputs={"text": json.dumps(text)},
            ignore_system_fonts=True,
            pdf_standards="ua-1",
        )
    )


@pytest.mark.parametrize(("first", "last"), COVERED)
def test_every_covered_sign_has_a_glyph(first: int, last: int) -> None:
    assert printed(printable("".join(f" {chr(i)}" for i in range(first, last + 1))))


@given(st.text(max_size=200))
def test_any_text_can_be_printed(text: str) -> None:
    assert printed(printable(text))


RIGHT_TO_LEFT = "".join(chr(i) for block in ((0x5D0, 0x5EB), (0x600, 0x6FF)) for i in range(*block))


@given(st.text(alphabet=RIGHT_TO_LEFT + " a1(", max_size=120))
def test_right_to_left_text_can_be_printed(text: str) -> None:
    assert printed(printable(text))


@given(st.text())
def test_printing_twice_changes_nothing(text: str) -> None:
    assert printable(printable(text)) == printable(text)


@given(st.text(alphabet=st.characters(max_codepoint=0x24F, categories=["L", "N", "P", "S"])))
def test_latin_text_stays_as_it_is(text: str) -> None:
    assert printable(text) == unicodedata.normalize("NFC", text)

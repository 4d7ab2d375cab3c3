"""The keeper's word for a place with colonies, and the keeper's own words beside it."""

from hypothesis import given
from hypothesis import strategies as st

from combwright.terms.place_word import USUAL, PlaceWord, words_of

OWN = words_of(["Back yard", "the yard gate <open>", "Yard", "Heath"])
APIARY = PlaceWord("apiary", OWN)


def test_names_and_remarks_stay_as_they_were_written() -> None:
    assert OWN == ("Back yard", "the yard gate <open>")
    assert APIARY.into("A yard, Back yard: the yard gate <open>; 2 yards. Yards of a yard’s") == (
        "An apiary, Back yard: the yard gate <open>; 2 apiaries. Apiaries of an apiary’s"
    )


def test_a_page_keeps_its_addresses_fields_and_what_is_typed_in() -> None:
    page = (
        '<a href="/yards?yard=Back+yard" aria-label="To the yard">Yards</a>'
        '<input name="yard" value="the yard"><textarea name="yard">a yard</textarea>'
        "<p>the yard gate &lt;open&gt; in a yard</p>"
    )
    assert APIARY.into_page(page) == (
        '<a href="/yards?yard=Back+yard" aria-label="To the apiary">Apiaries</a>'
        '<input name="yard" value="the yard"><textarea name="yard">a yard</textarea>'
        "<p>the yard gate &lt;open&gt; in an apiary</p>"
    )


def test_data_of_a_paper_is_said_throughout_but_for_drawings() -> None:
    told = {"a": ["A yard", 3, {"b": "yards"}], "svg": "<svg>yard</svg>", "n": None}
    said = {"a": ["An apiary", 3, {"b": "apiaries"}], "svg": "<svg>yard</svg>", "n": None}
    assert APIARY.into_data(told) == said


@given(st.text())
def test_who_says_yard_is_shown_what_we_wrote(text: str) -> None:
    assert USUAL.into(text) == USUAL.into_page(text) == text


@given(st.text(), st.text())
def test_what_is_said_once_stays_so(before: str, after: str) -> None:
    said = APIARY.into(f"{before} yards {after}")
    assert APIARY.into(said) == said

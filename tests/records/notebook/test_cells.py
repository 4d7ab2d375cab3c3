import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.records.notebook.cells import count, number, one_of, words, yes_or_no
from combwright.terms.errors import NotebookError


@given(st.decimals(-9999, 9999, places=3))
def test_a_plain_number_is_read_as_written(value: object) -> None:
    assert number(str(value)) == float(str(value))


@given(st.integers(0, 60), st.sampled_from([("¼", 0.25), ("½", 0.5), ("¾", 0.75), (" 1/2", 0.5)]))
def test_halves_and_quarters_may_be_written_as_such(whole: int, part: tuple[str, float]) -> None:
    assert number(f"{whole}{part[0]}") == whole + part[1]


@pytest.mark.parametrize(
    ("text", "what", "remedy"),
    [
        ("6,5", "decimal comma", "Write 6.5."),
        ("1,500", "has a comma", "Write 1500 or 1.500."),
        ("1,234,567", "has a comma", "Write 1234567."),
        ("500 g", "more than a number", "Write 500 alone"),
        ("~7", "not a number", "Leave the cell blank"),
        ("5-6", "a span", "Write its middle, 5.5."),
        ("5 to 8", "a span", "Write its middle, 6.5."),
        ("?", "not a number", "Leave the cell blank"),
        ("nan", "not a number", "Leave the cell blank"),
        ("inf", "not a number", "Leave the cell blank"),
        ("1e3", "not a number", "Leave the cell blank"),
        ("1_000", "not a number", "Leave the cell blank"),
        ("six", "not a number", "Leave the cell blank"),
    ],
)
def test_what_is_no_number_is_explained(text: str, what: str, remedy: str) -> None:
    with pytest.raises(NotebookError) as caught:
        number(text)
    assert what in caught.value.what
    assert remedy in caught.value.remedy


@given(st.text(max_size=12))
def test_any_text_is_a_finite_number_or_an_error_with_a_remedy(text: str) -> None:
    try:
        assert abs(number(text)) < 1e13
    except NotebookError as error:
        assert error.remedy  # noqa: PT017  (either outcome is right)


def test_a_count_is_whole() -> None:
    assert count("8") == count("8.0") == 8
    with pytest.raises(NotebookError, match="not a whole number"):
        count("8½")


def test_yes_and_no_may_be_short_or_in_capitals() -> None:
    assert [yes_or_no(text) for text in ("yes", "Y", "TRUE", "1", "x")] == [True] * 5
    assert [yes_or_no(text) for text in ("no", "N", "False", "0")] == [False] * 4
    with pytest.raises(NotebookError, match="neither yes nor no"):
        yes_or_no("maybe")


def test_a_word_of_a_list_may_be_in_capitals_and_its_nearest_is_named() -> None:
    choices = ("crown board", "cushion", "vented")
    assert one_of("Crown  Board", choices) == "crown board"
    with pytest.raises(NotebookError) as caught:
        one_of("cushoin", choices)
    assert caught.value.remedy.startswith("Did you mean “cushion”?")
    assert "crown board, cushion, vented" in caught.value.remedy


def test_letters_that_look_the_same_become_the_same() -> None:
    assert words("Rúnda") == words("Ru\u0301nda")


def test_another_word_is_not_guessed_for_one_that_means_something_else() -> None:
    with pytest.raises(NotebookError) as refused:
        one_of("capped", ("none", "cups", "charged", "sealed"))
    assert "Did you mean" not in refused.value.remedy
    assert "sealed" in refused.value.remedy
    with pytest.raises(NotebookError, match=r"is not known") as near:
        one_of("oxalic", ("oxalic acid", "thymol"))
    assert "Did you mean “oxalic acid”" in near.value.remedy

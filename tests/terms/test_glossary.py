"""The glossary has one meaning for one word."""

import pytest

from combwright.terms.glossary import OF_THE_TRADE, OURS


def test_no_word_is_explained_twice() -> None:
    assert not OURS.keys() & OF_THE_TRADE.keys()


@pytest.mark.parametrize(("word", "meaning"), sorted((OURS | OF_THE_TRADE).items()))
def test_a_meaning_is_a_sentence_that_does_not_begin_with_its_word(word: str, meaning: str) -> None:
    assert meaning.endswith(".")
    assert meaning[0].isupper()
    assert not meaning.lower().startswith((f"{word} ", f"a {word} "))

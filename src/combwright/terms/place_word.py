"""“Yard” or “apiary”: the keeper's word for a place with colonies, on every page and paper.

Everything in this program says yard. This is the one place that says it otherwise, on the way out;
what the keeper wrote (names, remarks) stays as it was written.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from html import escape
from typing import Any, Final

OURS: Final = "yard"
OURS_OR_NOT: Final = re.compile(rf"\b{OURS}s?\b", re.IGNORECASE)
SAID: Final = r"\b(?P<a>[Aa] )?(?P<y>[Yy])ard(?P<s>s?)\b"
QUOTED: Final = f"“{OURS}”"  # where the word itself is meant
MARKUP: Final = re.compile(r"(<textarea.*?</textarea>|<script.*?</script>|<[^>]*>)", re.DOTALL)
READ_ALOUD: Final = re.compile(r'(?<= )(aria-label|alt|title|placeholder)="[^"]*"')


@dataclass(frozen=True)
class PlaceWord:
    """The keeper's word, and the keeper's own texts in which ours occurs."""

    word: str = OURS
    own: tuple[str, ...] = ()

    def into(self, text: str) -> str:
        """Say a text of ours in the keeper's word.

        Examples
        --------
        >>> PlaceWord("apiary", ("Back yard",)).into("A yard: Back yard, of 2 yards")
        'An apiary: Back yard, of 2 apiaries'

        """
        return text if self.word == OURS else self._said.sub(self._instead, text)

    def into_page(self, html: str) -> str:
        """Say a page in the keeper's word: what is read, not its addresses and names of fields."""
        if self.word == OURS:
            return html
        parts = MARKUP.split(html)
        parts[::2] = [self._on_page.sub(self._instead, part) for part in parts[::2]]
        parts[1::2] = [
            READ_ALOUD.sub(lambda found: self._on_page.sub(self._instead, found[0]), part)
            for part in parts[1::2]
        ]
        return "".join(parts)

    def into_data(self, told: Any) -> Any:  # noqa: ANN401 - whatever a paper or an answer holds
        """Say every text of plain data in the keeper's word; drawings stay."""
        match told:
            case str():
                return told if told.startswith("<svg") else self.into(told)
            case dict():
                return {name: self.into_data(value) for name, value in told.items()}
            case list() | tuple():
                return [self.into_data(value) for value in told]
        return told

    @cached_property
    def _said(self) -> re.Pattern[str]:
        return _all_but(self.own)

    @cached_property
    def _on_page(self) -> re.Pattern[str]:
        return _all_but(escape(each) for each in self.own)

    def _instead(self, found: re.Match[str]) -> str:
        if not found["y"]:
            return found[0]
        stem = self.word.removesuffix("y")
        word = f"{stem}ies" if found["s"] else self.word
        word = word.capitalize() if found["y"] == "Y" else word
        return (found["a"] or "").replace(" ", "n ") + word


USUAL: Final = PlaceWord()


def _all_but(own: Iterable[str]) -> re.Pattern[str]:
    """Find our word, but where it stands in what the keeper wrote."""
    kept = (re.escape(each) for each in (QUOTED, *sorted(own, key=len, reverse=True)))
    return re.compile("|".join((*kept, SAID)))


def words_of(texts: Iterable[str]) -> tuple[str, ...]:
    """Pick, of what the keeper wrote, that in which our word occurs; alone it cannot be told."""
    found = {text for text in texts if OURS_OR_NOT.search(text)}
    return tuple(sorted(text for text in found if text.lower() not in {OURS, f"{OURS}s"}))

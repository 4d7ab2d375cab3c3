"""The words of a book's entries, found by SQLite's full-text index in memory."""

import sqlite3
from collections.abc import Iterable

from combwright.terms.entries import Noted

NOT_WORDS = ("id", "on")


class WordsIndex:
    """Finds entries by the beginnings of words, whatever their accents and capitals."""

    def __init__(self, entries: Iterable[Noted]) -> None:
        # read by many threads, written by this one alone
        self._db = sqlite3.connect(":memory:", check_same_thread=False)
        self._db.execute(
            "CREATE VIRTUAL TABLE words USING fts5"
            "(said, content='', tokenize='unicode61 remove_diacritics 2', prefix='2 3')"
        )
        self._db.executemany(
            "INSERT INTO words(rowid, said) VALUES (?, ?)",
            ((at, _text(each)) for at, each in enumerate(entries, 1)),
        )

    def find(self, asked: str) -> list[int]:
        """Give the places of the entries in which every word asked for begins a word.

        Examples
        --------
        >>> WordsIndex(()).find("wasps")
        []

        """
        words = [word for word in asked.replace('"', " ").split() if any(map(str.isalnum, word))]
        if not words:
            return []
        wanted = " ".join(f'"{word}"*' for word in words)
        rows = self._db.execute("SELECT rowid FROM words WHERE words MATCH ?", (wanted,))
        return [at - 1 for (at,) in rows]


def _text(each: Noted) -> str:
    """Put the words of an entry together: its kind, names, remark and whatever else is text."""
    values = each.model_dump(exclude=set(NOT_WORDS), exclude_defaults=True)
    return " ".join([each.kind, *(str(value) for value in values.values() if value is not None)])

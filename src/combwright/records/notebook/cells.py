"""Reading one cell of a notebook: numbers, yes or no, words from a list, free text."""

import re
import unicodedata
from collections.abc import Sequence
from difflib import get_close_matches

from combwright.terms.errors import NotebookError

FRACTIONS = {"¼": 0.25, "½": 0.5, "¾": 0.75, "1/4": 0.25, "1/2": 0.5, "3/4": 0.75}
PLAIN = re.compile(r"[+-]?\d+(\.\d+)?|[+-]?\.\d+")
WITH_FRACTION = re.compile(r"([+-]?)(\d*)\s*(¼|½|¾|1/4|1/2|3/4)")
DECIMAL_COMMA = re.compile(r"[+-]?\d+,\d+")
THOUSANDS = re.compile(r"[+-]?\d{1,3}(,\d{3})+(\.\d+)?")
SPAN = re.compile(r"(\d+(?:\.\d+)?)\s*(?:-|–|to)\s*(\d+(?:\.\d+)?)")
WITH_UNIT = re.compile(r"[~<>]?\s*([+-]?\d+(?:\.\d+)?)\s*\D+")
YES = ("yes", "y", "true", "1", "x", "✓")
NO = ("no", "n", "false", "0")
NOT_LOOKED = ("?", "-", "–", "n/a", "na", "none", "nan", "unknown", "not seen", "null")
NEAR = 0.7  # under it another word is meant, as “capped” is not “charged”; judgement
BLANK = "Leave the cell blank if nobody looked."


def number(text: str) -> float:
    """Read a number; halves and quarters may be written as such.

    Examples
    --------
    >>> number("6½"), number("6 1/2"), number("-2"), number("0.5")
    (6.5, 6.5, -2.0, 0.5)
    >>> number("6,5")
    Traceback (most recent call last):
    ...
    combwright.terms.errors.NotebookError: “6,5” has a decimal comma. Write 6.5.

    """
    plain = text.replace("−", "-")
    if PLAIN.fullmatch(plain):
        return float(plain)
    if found := WITH_FRACTION.fullmatch(plain):
        sign, whole, part = found.groups()
        value = float(whole or 0) + FRACTIONS[part]
        return -value if sign == "-" else value
    raise not_a_number(text, plain)


def not_a_number(text: str, plain: str) -> NotebookError:
    """Say why a cell is no number, and what was probably meant."""
    if THOUSANDS.fullmatch(plain):
        points, joined = plain.replace(",", "."), plain.replace(",", "")
        choice = f"{joined} or {points}" if points.count(".") == 1 else joined
        return NotebookError(
            f"“{text}” has a comma: it is not clear what it divides.", remedy=f"Write {choice}."
        )
    if DECIMAL_COMMA.fullmatch(plain):
        return NotebookError(
            f"“{text}” has a decimal comma.", remedy=f"Write {plain.replace(',', '.')}."
        )
    if found := SPAN.fullmatch(plain):
        middle = (float(found[1]) + float(found[2])) / 2
        return NotebookError(f"“{text}” is a span.", remedy=f"Write its middle, {middle:g}.")
    if plain.lower() in NOT_LOOKED:
        return NotebookError(f"“{text}” is not a number.", remedy=BLANK)
    if found := WITH_UNIT.fullmatch(plain):
        return NotebookError(
            f"“{text}” is more than a number.",
            remedy=f"Write {found[1]} alone, in the unit of the heading.",
        )
    return NotebookError(f"“{text}” is not a number.", remedy=BLANK)


def count(text: str) -> int:
    """Read a whole number."""
    value = number(text)
    if not value.is_integer():
        raise NotebookError(f"“{text}” is not a whole number.", remedy="Write a whole number.")
    return int(value)


def yes_or_no(text: str) -> bool:
    """Read yes or no.

    Examples
    --------
    >>> yes_or_no("Yes"), yes_or_no("n")
    (True, False)

    """
    word = text.lower()
    if word in YES:
        return True
    if word in NO:
        return False
    raise NotebookError(f"“{text}” is neither yes nor no.", remedy=f"Write yes or no. {BLANK}")


def one_of(text: str, choices: Sequence[str]) -> str:
    """Read a word of a list, in capitals or not."""
    word = " ".join(text.lower().split())
    if word in choices:
        return word
    near = get_close_matches(word, choices, n=1, cutoff=NEAR)
    guess = f"Did you mean “{near[0]}”? " if near else ""
    raise NotebookError(
        f"“{text}” is not known here.", remedy=f"{guess}Write one of: {', '.join(choices)}."
    )


def words(text: str) -> str:
    """Read free text; letters that look the same become the same."""
    return unicodedata.normalize("NFC", text)

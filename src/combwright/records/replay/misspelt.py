"""Yards that enter the book under a name that is nearly that of another."""

from collections.abc import Iterator
from difflib import SequenceMatcher
from typing import Final

from combwright.records.problems import Problem, odd
from combwright.terms.entries import Noted, Yard

ALIKE: Final = 0.8  # letters in the same order, by which a slip is told; judgement
SHORT: Final = 3  # letters of words that tell yards apart, such as A and B; judgement


def misspelt(each: Noted, spelt: set[str]) -> Iterator[Problem]:
    """Find a yard that is spelt nearly like one before it, which ``spelt`` holds."""
    if not isinstance(each, Yard) or each.yard in spelt:
        return
    for known in sorted(spelt):
        if nearly(each.yard, known):
            what = f"The yard “{each.yard}” is new to the book."
            yield odd(each, what, f"Correct its name if “{known}” is meant.")
            break
    spelt.add(each.yard)


def nearly(one: str, other: str) -> bool:
    """Tell whether two names differ by a slip of the pen alone.

    Examples
    --------
    >>> nearly("Quary Bottom", "Quarry Bottom"), nearly("mill lane", "Mill Lane")
    (True, True)
    >>> nearly("Mill Lane A", "Mill Lane B"), nearly("Home 1", "Home 2"), nearly("Moor", "Marsh")
    (False, False, False)

    """
    words = [name.casefold().split() for name in (one, other)]
    if len(words[0]) != len(words[1]):
        return False
    differ = [two for two in zip(*words, strict=True) if two[0] != two[1]]
    return all(_is_a_slip(*two) for two in differ)


def _is_a_slip(one: str, other: str) -> bool:
    if max(len(one), len(other)) <= SHORT or any(sign.isdigit() for sign in one + other):
        return False
    return SequenceMatcher(a=one, b=other).ratio() >= ALIKE

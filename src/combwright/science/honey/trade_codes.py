"""The text under a trade code: article, best before, lot and net weight by GS1 identifiers."""

from datetime import date
from typing import Final

from combwright.terms.errors import OutOfRangeError

DIGITS: Final = 14  # of an article number
LONGEST_LOT: Final = 20
MOST_G: Final = 999_999  # six digits of grams


def check_digit(first: str) -> int:
    """Give the digit that ends an article number, from those before it.

    Every second digit from the right counts threefold, and the sum is filled up to the next ten
    (from memory).

    Examples
    --------
    >>> check_digit("0950110153000")
    3

    """
    total = sum(int(one) * (1 if at % 2 else 3) for at, one in enumerate(reversed(first)))
    return -total % 10


def trade_text(article: str, best_before: date, lot: str, net_g: float) -> str:
    """Write what a trade code of a jar says, in brackets the identifier of each part.

    References
    ----------
    .. [1] GS1 identifiers (01), (10), (15), (310n), as documentation of libraries lists them
       (read second-hand); six digits of weight from memory.

    Examples
    --------
    >>> trade_text("09501101530003", date(2028, 7, 14), "26195-1", 340)
    '(01)09501101530003(15)280714(10)26195-1(3103)000340'

    """
    whole = article.strip().zfill(DIGITS)
    if len(whole) != DIGITS or not whole.isdecimal() or check_digit(whole[:-1]) != int(whole[-1]):
        raise OutOfRangeError(
            f"“{article}” is no article number: its last digit does not fit the others.",
            remedy="Copy all its digits once more; GS1 gives such numbers out, for money.",
        )
    if len(lot) > LONGEST_LOT or not lot.isascii() or not 0 < net_g <= MOST_G:
        raise OutOfRangeError(
            f"The lot “{lot}” of {net_g:g} g does not fit into a trade code.",
            remedy=f"A lot has at most {LONGEST_LOT} plain letters and digits.",
        )
    return f"(01){whole}(15){best_before:%y%m%d}(10){lot}(3103){round(net_g):06}"

"""How the advice writes days, chances and amounts: to the digits that a keeper can use."""

import re
from datetime import date
from typing import Final

from combwright.terms.percent import in_percent

SYRUP_G_PER_L: Final = 1287.0  # 60 % at 20 °C: ICUMSA polynomial, see science/syrup
MANY: Final = {"colony": "colonies", "box": "boxes"}  # whose plural takes more than an s


def day_words(day: date) -> str:
    """Write a day without its year.

    Examples
    --------
    >>> day_words(date(2027, 5, 1))
    '1 May'

    """
    return f"{day.day} {day:%b}"


def chance_words(chance: float) -> str:
    """Write a chance in whole percent; nothing is certain.

    Examples
    --------
    >>> chance_words(0.004), chance_words(0.127), chance_words(1.0)
    ('under 1 %', '13 %', 'over 99 %')

    """
    if chance < 0.01:
        return "under 1 %"
    return in_percent(chance) if chance < 0.995 else "over 99 %"


def grams_words(grams: float) -> str:
    """Write grams to the step that a kitchen scale and a keeper care for.

    Examples
    --------
    >>> grams_words(263.0), grams_words(1234.0)
    ('260 g', '1,250 g')

    """
    step = 10 if grams < 500 else 50
    return f"{step * round(grams / step):,.0f} g"


def amount_words(grams: int, feed: str) -> str:
    """Write a portion as it is weighed, and for syrup as it is poured.

    Examples
    --------
    >>> amount_words(1750, "syrup"), amount_words(800, "fondant")
    ('1,750 g (1.4 L) of syrup', '800 g of fondant')

    """
    litres = f" ({grams / SYRUP_G_PER_L:.1f} L)" if feed == "syrup" else ""
    return f"{grams:,} g{litres} of {feed}"


def span_words(low: float, mid: float, high: float, unit: str) -> str:
    """Write an amount in whole units with its ends, where they can be told from it.

    Examples
    --------
    >>> span_words(9.2, 11.4, 13.0, "kg"), span_words(10.9, 11.0, 11.1, "kg")
    ('11 kg (9 to 13)', '11 kg')

    """
    ends = f"{low:.0f}", f"{high:.0f}"
    return f"{mid:.0f} {unit}" + (f" ({ends[0]} to {ends[1]})" if ends[0] != ends[1] else "")


def many(count: int, thing: str) -> str:
    """Write a number of things.

    Examples
    --------
    >>> many(1, "dummy board"), many(2, "frame of foundation"), many(0, "colony")
    ('1 dummy board', '2 frames of foundation', '0 colonies')

    """
    first = re.split(" of | with ", thing)[0]
    named = first if count == 1 else MANY.get(first, f"{first}s")
    return f"{count} {named}{thing.removeprefix(first)}"


def count_words(count: float) -> str:
    """Write a count of bees, cells or mites to two or three digits.

    Examples
    --------
    >>> count_words(25108), count_words(370), count_words(14)
    ('25,000', '370', '14')

    """
    digits = 3 if 1000 <= count < 10000 else 2
    return f"{float(f'{count:.{digits}g}'):,.0f}"

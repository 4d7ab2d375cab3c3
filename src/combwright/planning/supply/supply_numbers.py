"""Numbers of the plan of nucs and queens, from ``data/supply.toml``."""

from typing import Final

from combwright.terms.data_files import parameters

NUMBERS: Final = parameters("planning/supply")


def number(name: str) -> float:
    """Give the value of one number.

    Examples
    --------
    >>> number("kept")
    0.9

    """
    return NUMBERS[name].value

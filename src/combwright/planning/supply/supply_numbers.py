"""Numbers of the plan of nucs and queens, from ``data/supply.toml``."""

from typing import Final

from combwright.terms.data_files import contents
from combwright.terms.parameters import Parameter

NUMBERS: Final = {name: Parameter(**told) for name, told in contents("planning/supply").items()}


def number(name: str) -> float:
    """Give the value of one number.

    Examples
    --------
    >>> number("kept")
    0.9

    """
    return NUMBERS[name].value

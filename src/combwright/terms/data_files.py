"""Numbers and tables that stand in data files beside the code; a place is a package and a file."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from combwright.terms.errors import OutOfRangeError
from combwright.terms.parameters import Parameter


@cache
def contents(place: str) -> dict[str, Any]:
    """Give all of a file, as it is written."""
    package, name = place.split("/")
    text = files(f"combwright.{package}").joinpath(f"data/{name}.toml").read_text("utf-8")
    return tomllib.loads(text)


def tables_in(text: str, where: str, remedy: str) -> dict[str, Any]:
    """Read TOML that a person wrote; what is none is said with its line."""
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise OutOfRangeError(f"This is not TOML: {error}.", where=where, remedy=remedy) from error


def parameter(place: str, name: str) -> Parameter:
    """Give one number of a file.

    Examples
    --------
    >>> parameter("science/queens", "dry_below_mm").unit
    'mm/day'

    """
    return Parameter(**contents(place)[name])


def parameters(place: str, *table: str) -> dict[Any, Parameter]:
    """Give the numbers of a table in a file, by name.

    Examples
    --------
    >>> parameters("science/queens", "clock")["sealed"].value
    8.0

    """
    found = contents(place)
    for name in table:
        found = found[name]
    return {name: Parameter(**fields) for name, fields in found.items()}


def rows(place: str, name: str) -> list[dict[str, Any]]:
    """Give the rows of a list in a file, their lists as tuples.

    Examples
    --------
    >>> rows("science/levels", "level")[0]["place"]
    'United Kingdom'

    """
    return [
        {field: tuple(value) if isinstance(value, list) else value for field, value in row.items()}
        for row in contents(place)[name]
    ]

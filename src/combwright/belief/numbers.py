"""Every number of the belief, by name; units, ranges and sources are in the data file."""

from collections.abc import Mapping
from typing import Any, Final

import numpy as np

from combwright.terms.data_files import contents
from combwright.terms.parameters import Parameter

Row = Mapping[Any, Parameter]  # a value at each of several places


def _read() -> tuple[dict[str, Parameter], dict[str, Row]]:
    told = contents("belief/belief")
    single = {name: Parameter(**said) for name, said in told.items() if "value" in said}
    return single, {name: _row(**said) for name, said in told.items() if "values" in said}


def _row(
    at: list[Any], values: list[float], factor: float, most: float = np.inf, **said: Any
) -> Row:
    """Lay out a row; the range of each value is that over and times the factor."""
    return {
        place: Parameter(value=value, low=value / factor, high=min(most, value * factor), **said)
        for place, value in zip(at, values, strict=True)
    }


PARAMETERS, ROWS = _read()
WEEK_DAYS: Final = 7.0


def number(name: str) -> float:
    """Give a number by its name in the data file."""
    return PARAMETERS[name].value


def row(name: str) -> dict[Any, float]:
    """Give a row of numbers by the places at which they hold."""
    return {place: parameter.value for place, parameter in ROWS[name].items()}


def on_day(name: str, day_of_year: int) -> float:
    """Give a number that changes with the season, on a day of the year."""
    known = row(name)
    return float(np.interp(day_of_year, list(known), list(known.values())))

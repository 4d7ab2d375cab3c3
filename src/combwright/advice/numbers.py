"""The numbers that decisions weigh by; values, units, ranges and sources are in ``data``."""

from collections.abc import Mapping
from datetime import date

from combwright.terms.data_files import parameters
from combwright.terms.parameters import Parameter


def is_between(month: int, first: int, last: int) -> bool:
    """Tell whether a month lies between two others, over the turn of the year where they ask it.

    Examples
    --------
    >>> [is_between(month, 11, 1) for month in (10, 12, 1, 2)]
    [False, True, True, False]

    """
    if first <= last:
        return first <= month <= last
    return month >= first or month <= last


def is_in_season(on: date, room: Mapping[str, Parameter], name: str) -> bool:
    """Tell whether a day lies in a season of a room, from day to day of the year."""
    first, last = (room[f"{name}_{end}"].value for end in ("from", "to"))
    return first <= on.timetuple().tm_yday <= last


def is_in_months(on: date, room: Mapping[str, Parameter], name: str) -> bool:
    """Tell whether a day lies in the months of a room that have a name."""
    return is_between(on.month, *(int(room[f"{name}_{end}_month"].value) for end in ("from", "to")))


def numbers(room: str) -> Mapping[str, Parameter]:
    """Read the numbers of one room of the advice, by name.

    Examples
    --------
    >>> numbers("winter")["light_kg"].value
    5.0

    """
    return parameters(f"advice/{room}")

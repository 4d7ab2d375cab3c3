"""The colour that marks the queens of a year."""

from typing import Final, Literal

Colour = Literal["white", "yellow", "red", "green", "blue"]
COLOURS: Final[tuple[Colour, ...]] = ("blue", "white", "yellow", "red", "green")


def mark_colour(year: int) -> Colour:
    """Name the international colour of queens of a year.

    Five colours in turn, by the last figure of the year: 1 and 6 white, 2 and 7 yellow, 3 and 8
    red, 4 and 9 green, 5 and 0 blue (trade code, from memory).

    Examples
    --------
    >>> [mark_colour(year) for year in (2026, 2027, 2025)]
    ['white', 'yellow', 'blue']

    """
    return COLOURS[year % len(COLOURS)]

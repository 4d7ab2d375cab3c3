"""Worlds that colonies may live in: sets of the model's numbers that nothing published rules out.

``make fit`` searches for them and writes the data; ``docs/validation/fit.md`` tells what came of
it. Each row of the data is a world and holds the numbers that were searched; all others stand in
``data/biology.toml``.
"""

import csv
from functools import cache
from importlib.resources import files
from typing import Final

from combwright.simulation.biology import BIOLOGY, Biology

FILE: Final = "data/worlds.csv"


@cache
def worlds() -> tuple[Biology, ...]:
    """Give the worlds that fit, the most plausible first.

    Examples
    --------
    >>> len(worlds()) >= 20
    True

    """
    text = files("combwright.simulation").joinpath(FILE).read_text("utf-8")
    return tuple(
        BIOLOGY._replace(**{name: float(value) for name, value in row.items()})
        for row in csv.DictReader(text.splitlines())
    )

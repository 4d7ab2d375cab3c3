"""Places by name, found without a network: towns and villages of Ireland and Britain."""

import csv
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from math import cos, hypot, radians

from combwright.weather.climates import climate, climates


@dataclass(frozen=True, slots=True)
class Town:
    """A town or village, to about a kilometre."""

    name: str
    region: str
    latitude: float
    longitude: float

    @property
    def label(self) -> str:
        """Name it so that it is told from others of the same name."""
        return f"{self.name}, {self.region} ({self.latitude:.2f}, {self.longitude:.2f})"


@cache
def places() -> tuple[Town, ...]:
    """Give all places that are known, by region and name."""
    text = files("combwright.weather").joinpath("data/places.csv").read_text("utf-8")
    return tuple(
        Town(row["name"], row["region"], float(row["latitude"]), float(row["longitude"]))
        for row in csv.DictReader(text.splitlines())
    )


def find_places(words: str, most: int = 8) -> Sequence[Town]:
    """Find places by a label, a name, or how a name begins; the nearest fit first.

    Examples
    --------
    >>> [place.label for place in find_places("bantry")]
    ['Bantry, Ireland, Munster (51.68, -9.45)']
    >>> find_places("Bantry, Ireland, Munster (51.68, -9.45)")[0].name
    'Bantry'

    """
    asked = " ".join(words.casefold().split())
    if not asked:
        return ()
    fits = [(fit, place) for place in places() if (fit := _fit(asked, place)) is not None]
    best = min((fit for fit, _ in fits), default=0)
    if best == 0:  # the label itself: nothing else is meant
        fits = [pair for pair in fits if pair[0] == 0]
    return [place for _, place in sorted(fits, key=lambda pair: pair[0])[:most]]


def _fit(asked: str, place: Town) -> int | None:
    name, whole = place.name.casefold(), place.label.casefold()
    ranks = (asked == whole, asked == name, whole.startswith(asked), asked in whole)
    return ranks.index(True) if any(ranks) else None


def nearest_climate(latitude: float, longitude: float) -> str:
    """Name the built-in climate of the station that is nearest.

    Examples
    --------
    >>> nearest_climate(51.68, -9.45)
    'Valentia Observatory'

    """

    def distance(name: str) -> float:
        there = climate(name)
        east = (there.longitude_deg - longitude) * cos(radians(latitude))
        return hypot(there.latitude_deg - latitude, east)

    return min(climates(), key=distance)

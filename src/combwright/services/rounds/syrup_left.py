"""What is left in the van while portions are given."""

from collections.abc import Iterable
from dataclasses import dataclass

from combwright.planning.sheet import RoundSheet
from combwright.science.syrup.strength import density_kg_per_l
from combwright.terms.entries import Feed, Noted


@dataclass(frozen=True, slots=True)
class SyrupLeft:
    """Syrup and fondant that were loaded, and what the notes say was given, in grams."""

    loaded_g: float
    given_g: float
    grams_per_litre: float
    fondant_loaded_g: float
    fondant_given_g: float

    @property
    def litres(self) -> float:
        """Syrup that should be left; below nothing when more was given, in litres."""
        return (self.loaded_g - self.given_g) / self.grams_per_litre


def syrup_left(sheet: RoundSheet, noted: Iterable[Noted]) -> SyrupLeft:
    """Take from what was loaded for a round what its notes say was given."""
    colonies = {each.colony for each in sheet.colonies}
    feeds = [each for each in noted if isinstance(each, Feed) and each.colony in colonies]
    per_litre = 1000.0 * float(density_kg_per_l(sheet.bench.sugar_fraction, 20.0))
    return SyrupLeft(
        1000.0 * (sheet.bench.sugar_kg + sheet.bench.water_kg),
        sum(each.grams for each in feeds if each.feed == "syrup"),
        per_litre,
        1000.0 * sum(stop.fondant_kg for stop in sheet.load),
        sum(each.grams for each in feeds if each.feed == "fondant"),
    )

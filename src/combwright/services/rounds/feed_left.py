"""What is left in the van while portions are given."""

from collections.abc import Iterable
from dataclasses import dataclass

from combwright.planning.sheet import RoundSheet
from combwright.science.syrup.strength import density_kg_per_l
from combwright.terms.entries import Feed, Noted


@dataclass(frozen=True, slots=True)
class FeedLeft:
    """One feed: what was loaded, and what the notes say was given [g], told in its own unit."""

    feed: str
    loaded_g: float
    given_g: float
    unit: str
    grams_a_unit: float

    @property
    def loaded(self) -> float:
        """What was loaded, in the feed's unit."""
        return self.loaded_g / self.grams_a_unit

    @property
    def left(self) -> float:
        """What should be left; below nothing when more was given."""
        return (self.loaded_g - self.given_g) / self.grams_a_unit


def feed_left(sheet: RoundSheet, noted: Iterable[Noted]) -> tuple[FeedLeft, ...]:
    """Take from what was loaded for a round what its notes say was given; of feeds that were."""
    colonies = {each.colony for each in sheet.colonies}
    feeds = [each for each in noted if isinstance(each, Feed) and each.colony in colonies]
    litre_g = 1000.0 * float(density_kg_per_l(sheet.bench.sugar_fraction, 20.0))
    syrup_g = 1000.0 * (sheet.bench.sugar_kg + sheet.bench.water_kg)
    fondant_g = 1000.0 * sum(stop.fondant_kg for stop in sheet.load)
    told = (("syrup", syrup_g, "L", litre_g), ("fondant", fondant_g, "kg", 1000.0))
    return tuple(
        FeedLeft(feed, loaded, sum(e.grams for e in feeds if e.feed == feed), unit, unit_g)
        for feed, loaded, unit, unit_g in told
        if loaded > 0
    )

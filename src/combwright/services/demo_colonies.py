"""The colonies of the demo on its first day: out of a winter, and chosen for their stories."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linear_sum_assignment

from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.columns import LAYING
from combwright.simulation.hands.keeper import Keeping, keep
from combwright.simulation.luck import luck
from combwright.terms.set_up import SetUp
from combwright.terms.weather import DailyWeather
from combwright.weather.climates import climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

Floats = NDArray[np.float64]

CLIMATE: Final = "Dublin Airport"
FIRST: Final = date(2027, 3, 6)
SEED: Final = 20270306
LIVED: Final = 300  # colonies that lived up to the first day, of which the demo's are chosen
# Relative: bees, stores, mites, age of the queen. Judgement: as near as the stories need.
ALIKE: Final = np.array([0.15, 0.25, 0.8, 0.5])


@dataclass(frozen=True)
class Cast:
    """One colony of the demo, and what it shall be like at its first note."""

    name: str
    yard: str
    hive: str
    bees: float
    stores_kg: float
    queen_year: int
    frames: int
    boards: int
    mites: float
    trouble: str = ""

    @property
    def set_up(self) -> SetUp:
        """How its stack stands."""
        return SetUp(
            hive=self.hive,
            frames=self.frames,
            dummy_boards=self.boards,
            entrance_mm=60,
            tray_open_mm=100 if catalogue().hive(self.hive).floor == "mesh" else 0,
        )


CASTS: Final = (
    Cast("Bramble", "Alder Bank", "national timber", 8.5, 15.0, 2026, 10, 1, 15),
    Cast("Teasel", "Alder Bank", "national timber", 5.5, 11.0, 2025, 7, 2, 20),
    Cast("Sorrel", "Alder Bank", "national timber", 4.5, 11.0, 2026, 6, 2, 10),
    Cast("Yarrow", "Alder Bank", "national polystyrene", 6.0, 9.0, 2025, 8, 2, 90, "mites"),
    Cast("Clary", "Alder Bank", "national timber", 3.0, 8.0, 2025, 5, 2, 20),
    Cast("Burdock", "Quarry Field", "national timber", 8.5, 10.0, 2026, 11, 0, 20, "wide"),
    Cast("Vetch", "Quarry Field", "national timber", 6.0, 6.0, 2025, 8, 2, 15),
    Cast("Sedge", "Quarry Field", "national timber", 6.0, 12.0, 2026, 8, 2, 12, "queen"),
    Cast("Tansy", "Quarry Field", "national polystyrene", 7.5, 12.0, 2026, 10, 1, 15),
    Cast("Comfrey", "Mill Orchard", "national timber", 5.5, 13.0, 2025, 6, 2, 25, "tight"),
    Cast("Mallow", "Mill Orchard", "national timber", 7.0, 11.0, 2026, 9, 1, 12),
    Cast("Thrift", "Mill Orchard", "national timber", 4.0, 9.0, 2025, 5, 2, 15),
    Cast("Nuc Ash", "Mill Orchard", "nuc 6 polystyrene", 3.0, 6.0, 2026, 6, 0, 12),
    Cast("Nuc Elm", "Mill Orchard", "nuc 6 polystyrene", 2.2, 5.0, 2026, 5, 1, 10),
    Cast("Nuc Holly", "Alder Bank", "nuc 6 polystyrene", 3.5, 6.0, 2026, 6, 0, 15),
    Cast("Nuc Rowan", "Quarry Field", "nuc 5 ply", 2.7, 5.0, 2026, 5, 0, 8),
)


def wintered() -> dict[str, NDArray[np.void]]:
    """Give each colony of the demo by name, an ensemble of one, as it came out of the winter.

    Many colonies live through one weather under the usual keeper, hives for two years and nucs
    from the summer before; those stand in the demo that are most like what its stories ask for.
    """
    hives = [cast for cast in CASTS if not cast.hive.startswith("nuc")]
    nucs = [cast for cast in CASTS if cast.hive.startswith("nuc")]
    lived = [
        (hives, _lived(SetUp(frames=11), 6.0, 6.0, date(2025, 4, 5))),
        (nucs, _lived(SetUp(hive="nuc 6 polystyrene", frames=6), 4.0, 4.0, date(2026, 7, 10))),
    ]
    return {
        cast.name: one for casts, all_of_them in lived for cast, one in _cast(casts, all_of_them)
    }


def days_of(weather: DailyWeather, *, seed: int) -> Floats:
    """Give the conditions of days at the demo's yards, [1, day, column]."""
    place = climate(CLIMATE)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, place, seed=seed)
    return conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)


def _lived(set_up: SetUp, bees: float, stores_kg: float, first: date) -> NDArray[np.void]:
    """Let colonies live from a day up to the demo's first; give those with a laying queen."""
    hive, days = catalogue().hive(set_up.hive), (FIRST - first).days
    described = Described(
        frames_of_bees=bees, stores_kg=stores_kg, queen_year=first.year, has_queen=True
    )
    colonies = begin(
        hive, set_up, described, on=first, members=LIVED, seed=SEED, colony=set_up.hive
    )
    keep(
        colonies,
        hive,
        set_up,
        days_of(generate(climate(CLIMATE), first, days, 1, SEED), seed=SEED),
        luck(SEED, set_up.hive, first, days, LIVED),
        first=first,
        keeping=Keeping(),
        seed=SEED,
    )
    laying: NDArray[np.void] = colonies[colonies["queen"] == LAYING]
    return laying


def _cast(casts: Sequence[Cast], lived: NDArray[np.void]) -> list[tuple[Cast, NDArray[np.void]]]:
    """Choose for each story a colony of its own, so that all together are most alike."""
    are = [
        observe.frames_of_bees(lived),
        observe.stores_kg(lived),
        observe.mites(lived),
        lived["queen_age"],
    ]
    ages = [(FIRST - date(cast.queen_year, 6, 20)).days for cast in casts]
    wanted = [
        (cast.bees, cast.stores_kg, cast.mites, age) for cast, age in zip(casts, ages, strict=True)
    ]
    apart = np.log(np.array(wanted))[:, None] - np.log(np.stack(are, axis=1))[None]
    _, chosen = linear_sum_assignment(((apart / ALIKE) ** 2).sum(axis=2))
    return [(cast, lived[at : at + 1].copy()) for cast, at in zip(casts, chosen, strict=True)]

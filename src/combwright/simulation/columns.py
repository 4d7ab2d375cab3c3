"""How one simulated colony is held: a record of numbers, its columns named here once.

An ensemble is an array [member] of such records. All columns are floating-point numbers, so that
resampling, copying and storing an ensemble are single array operations, and one member's record
stays in the processor's cache during a day's step. NumPy itself copies and joins records number by
number, some twenty times slower: it is left to ``take``, ``compress`` and the two functions here.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Column:
    """One quantity of the state: its name, how many numbers it holds, unit and meaning."""

    name: str
    width: int
    unit: str
    meaning: str


_TABLE: Final = (
    # worker brood, by day of age
    ("eggs", 3, "cells", "worker eggs by day"),
    ("larvae", 6, "cells", "open worker larvae by day"),
    ("sealed", 12, "cells", "sealed worker brood by day"),
    # drones, coarser
    ("drone_open", 3, "cells", "drone eggs and larvae in three equal spells"),
    ("drone_sealed", 5, "cells", "sealed drone brood in five equal spells"),
    ("drones", 1, "bees", "adult drones"),
    # adult workers
    ("nest", 1, "bees", "nest bees"),
    ("foragers", 1, "bees", "foragers"),
    ("winter", 1, "bees", "long-lived bees, as all are in winter"),
    ("hurt_nest", 1, "share", "share of nest bees that mites fed on as pupae"),
    ("hurt_winter", 1, "share", "share of winter bees that mites fed on as pupae"),
    # queen
    (
        "queen",
        1,
        "code",
        "0 absent, 1 cell, 2 virgin, 3 laying, 4 caged, 5 drone layer, 6 laying workers",
    ),
    ("queen_clock", 1, "days", "days since the present queen state began"),
    ("queen_age", 1, "days", "days since this queen began to lay"),
    ("mating_flights", 1, "days", "good mating days used so far by a virgin"),
    ("swarm_clock", 1, "days", "days since an egg was laid in a swarm cell; 0 when none"),
    # comb
    ("drawn", 1, "cells", "drawn worker cells below the excluder"),
    ("foundation", 1, "cells", "cells of foundation still to be drawn below the excluder"),
    ("super_drawn", 1, "cells", "drawn cells in supers"),
    ("super_foundation", 1, "cells", "cells of foundation still to be drawn in supers"),
    # stores
    ("ripe", 1, "g sugar", "ripe stores below the excluder"),
    ("far", 1, "g sugar", "ripe stores that a cold cluster cannot reach"),
    ("super_ripe", 1, "g sugar", "ripe stores in supers"),
    ("unripe", 1, "g sugar", "sugar in unripe nectar and syrup"),
    ("water", 1, "g", "water in unripe nectar and syrup"),
    ("pollen", 1, "g", "stored pollen"),
    ("syrup_share", 1, "share", "share of the unripe sugar that came from feed"),
    ("super_syrup", 1, "g sugar", "fed sugar that ended up in supers"),
    ("feeder", 1, "g sugar", "sugar in the feeder"),
    ("feeder_water", 1, "g", "water in the feeder"),
    ("feeder_days", 1, "days", "days that the feeder's content has stood"),
    ("feeder_warmth", 1, "K", "how much warmer than the air the feed still is"),
    # mites
    ("mites", 1, "mites", "on adult bees"),
    ("mites_worker", 12, "mites", "in sealed worker cells, mothers by day"),
    ("mites_drone", 5, "mites", "in sealed drone cells, mothers by spell"),
    ("fallen", 1, "mites", "fallen on the tray today"),
    ("kill_bees", 1, "1/day", "treatment: death rate of mites on bees"),
    ("kill_cells", 1, "1/day", "treatment: death rate of mites in cells"),
    ("lay_brake", 1, "share", "treatment: share of laying that it stops"),
    ("kill_per_k", 1, "1/K", "treatment: how much faster it kills a kelvin warmer, as a logarithm"),
    ("kill_pace", 1, "factor", "treatment: how fast it kills in today's warmth"),
    ("treated_days", 1, "days", "treatment: days that it still works"),
    ("invaders", 1, "mites/day", "re-invasion pressure of the yard in autumn"),
    # set-up
    ("frames", 1, "frames", "frames in the brood box or boxes"),
    ("boards", 1, "boards", "dummy boards"),
    ("supers", 1, "boxes", "supers"),
    ("excluder", 1, "0 or 1", "queen excluder on"),
    ("entrance", 1, "mm", "width of the entrance"),
    ("tray_open", 1, "mm", "how far the tray is drawn out"),
    ("loss_base", 1, "W/K", "heat loss of the nest that does not grow with its frames"),
    ("loss_per_frame", 1, "W/K", "heat loss of each frame of the nest"),
    ("cells_per_frame", 1, "cells", "worker cells of a frame, both sides"),
    ("bees_per_frame", 1, "bees", "bees that cover a frame, both sides"),
    ("sugar_per_cell", 1, "g", "sugar in a cell full of ripe stores"),
    # the colony's own parameters
    ("queen_potential", 1, "factor", "laying at its best, against the published curve"),
    ("forager_mortality", 1, "factor", "deaths of foragers and of long-lived bees"),
    ("forage_success", 1, "factor", "nectar and pollen per flight hour"),
    ("consumption", 1, "factor", "sugar that adults and brood use"),
    ("brood_mortality", 1, "factor", "daily deaths of brood"),
    ("mite_growth", 1, "factor", "live mites that leave a cell per mite that entered"),
    ("swarm_readiness", 1, "factor", "hazard of starting swarm cells"),
    ("heat_loss", 1, "factor", "heat loss of the enclosure against the computed one"),
    ("rearing", 1, "factor", "larvae that a nurse rears, against the usual; a doubt of beliefs"),
    ("world", 1, "code", "which set of the model's numbers holds for it, of those it is run with"),
    # what happened
    ("laid", 1, "cells", "eggs laid today"),
    ("room", 1, "cells", "drawn, empty, warm and covered cells"),
    ("wanted", 1, "cells", "eggs that the queen would have laid with room to spare"),
    ("warm_frames", 1, "frames", "frames that the bees can keep at brood warmth"),
    ("heat_w", 1, "W", "heat that the nest loses"),
    ("tied", 1, "bees", "bees tied up in heating"),
    ("intake", 1, "g sugar", "sugar brought in or taken down today"),
    ("gathered", 1, "g sugar", "sugar of nectar brought in today"),
    ("used", 1, "g sugar", "sugar used today"),
    ("unmet", 1, "share", "share of today's need that could not be met"),
    ("starving", 1, "share", "share of what bees need barely to live that they went without"),
    ("starved", 1, "days", "days without food, those long past forgotten"),
    ("lost_to", 1, "code", "what the colony died of; 0 while it lives"),
    ("hungry_days", 1, "days", "days of hunger so far"),
    ("short_of_room_days", 1, "days", "days in a row with less room than half of what was wanted"),
    ("short_of_room_most", 1, "days", "longest such spell so far"),
    ("chilled", 1, "cells", "brood lost to cold so far"),
    ("sour_days", 1, "days", "days on which fed syrup stood untouched too long, so far"),
    ("swarmed", 1, "count", "swarms that left so far"),
    ("robbed", 1, "count", "days on which the colony was robbed so far"),
    ("taken_down", 1, "g", "syrup or fondant taken from the feeder so far"),
    ("gathered_total", 1, "g sugar", "sugar of nectar brought in so far"),
    ("laid_total", 1, "cells", "eggs laid so far"),
    ("pollen_total", 1, "g", "pollen used so far"),
    ("used_total", 1, "g sugar", "sugar used so far"),
    ("fallen_total", 1, "mites", "mites fallen so far"),
)


COLUMNS: Final = tuple(Column(*row) for row in _TABLE)
STATE: Final = np.dtype(
    [
        (column.name, np.float64) if column.width == 1 else (column.name, np.float64, column.width)
        for column in COLUMNS
    ]
)


def plain(colonies: NDArray[np.void]) -> NDArray[np.void]:
    """Give the same records in the one form that is compiled for, whatever shape they are in."""
    flat = np.asarray(colonies).reshape(-1)
    return flat if type(colonies) is np.ndarray else flat.view(STATE)


def copied(members: NDArray[np.void]) -> NDArray[np.void]:
    """Copy members, [member], of any kind of record."""
    return np.asarray(members.take(np.arange(len(members))))


def joined(parts: Sequence[NDArray[np.void]]) -> NDArray[np.void]:
    """Put members of one kind of record one after the other, [member]."""
    kind = parts[0].dtype
    plain = [np.ascontiguousarray(part).view((np.void, kind.itemsize)) for part in parts]
    return np.concatenate(plain).view(kind)


# The colony's own parameters: uncertain, slowly drifting, learned from the notes.
TRAITS: Final = (
    "queen_potential",
    "forager_mortality",
    "forage_success",
    "consumption",
    "brood_mortality",
    "mite_growth",
    "swarm_readiness",
    "heat_loss",
)

# Codes of the column "queen".
QUEENLESS: Final = 0.0
CELL: Final = 1.0
VIRGIN: Final = 2.0
LAYING: Final = 3.0
CAGED: Final = 4.0
DRONE_LAYER: Final = 5.0  # a queen whose eggs are not fertilised: all her brood is of drones
LAYING_WORKERS: Final = 6.0

# Codes of the column "lost_to", and their words.
HUNGER: Final = 1.0
NO_QUEEN: Final = 2.0
MITES: Final = 3.0
DWINDLED: Final = 4.0
ROBBERS: Final = 5.0
CAUSES: Final = {
    HUNGER: "hunger",
    NO_QUEEN: "no queen",
    MITES: "mites",
    DWINDLED: "dwindled",
    ROBBERS: "robbed",
}

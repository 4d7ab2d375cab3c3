"""What the plan of nucs and queens is made from: plain data, weeks counted from its first day."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Product = Literal["nuc", "mated queen"]
Way = Literal["by cell", "by bought queen", "mating nuc"]
PRODUCTS: tuple[Product, ...] = ("nuc", "mated queen")
WAYS: tuple[Way, ...] = ("by cell", "by bought queen", "mating nuc")
PRODUCT: Mapping[Way, Product] = {
    "by cell": "nuc",
    "by bought queen": "nuc",
    "mating nuc": "mated queen",
}


@dataclass(frozen=True)
class Donor:
    """A colony that may give brood and bees.

    ``brood`` and ``bees`` are its frames if it gives nothing, [member, week]; ``lost`` is the
    money given up with the first nuc taken in a week, [week]; ``kept`` what its season ahead is
    worth as it stands.
    """

    colony: str
    yard: str
    brood: Floats
    bees: Floats
    lost: Floats
    kept: float = 0.0


@dataclass(frozen=True)
class WantedOrder:
    """An order still to be served; ``promised`` is the week of a promise already given."""

    order: str
    customer: str
    product: Product
    count: int
    price: float
    wanted: int
    promised: int | None = None


@dataclass(frozen=True)
class Shelf:
    """What there is to work with; ``None`` where nobody counted.

    ``queens_a_week`` are mated queens that can be bought.
    """

    nuc_boxes: int | None = None
    mating_boxes: int | None = None
    frames: int | None = None
    hours: float = 12.0
    queens_a_week: int = 0


@dataclass(frozen=True)
class Money:
    """What things cost in the plan, in the keeper's own money."""

    nuc: float
    queen: float
    mating_nuc: float
    graft: float
    hour: float
    left: float

    def of(self, way: Way) -> float:
        """Give what one nuc costs that is made in a way, its queen counted."""
        bought = self.nuc + self.queen
        return {"by cell": self.nuc, "by bought queen": bought, "mating nuc": self.mating_nuc}[way]


@dataclass(frozen=True)
class SupplyTask:
    """All that is known of a season of nucs: what is wanted, from what, with which luck.

    ``success`` and ``waits`` are those of cells given in each week, [scenario, week];
    ``in_hand`` counts nucs that stand already and are ready by each week, [member, week];
    ``cells`` are those to come from batches already begun, by week, with no further choice.
    """

    weeks: int
    until: int
    donors: Sequence[Donor]
    orders: Sequence[WantedOrder]
    success: Floats
    waits: Floats
    in_hand: Floats
    cells: Sequence[float]
    shelf: Shelf
    money: Money
    first_queen: int = 0

    def in_hand_by(self, scenarios: int) -> Floats:
        """Give the nucs that stand and are ready by each week, [scenario, week]."""
        return np.asarray(self.in_hand[np.arange(scenarios) % len(self.in_hand)], np.float64)

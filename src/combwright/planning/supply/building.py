"""The programme of a season of nucs under construction, and where its variables are."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.rows import Programme
from combwright.planning.supply.wanted import Product, SupplyTask, WantedOrder, Way

Floats = NDArray[np.float64]


@dataclass
class Build:
    """The programme so far: variables by donor, way and week, and by order and week."""

    task: SupplyTask
    margin: Mapping[Product, Floats]
    programme: Programme = field(default_factory=Programme)
    gives: dict[tuple[str, int], int] = field(default_factory=dict)
    made: dict[tuple[Way, int], int] = field(default_factory=dict)
    grafts: dict[int, int] = field(default_factory=dict)
    begun: dict[int, int] = field(default_factory=dict)
    placed: dict[tuple[str, int], int] = field(default_factory=dict)
    left_out: dict[str, int] = field(default_factory=dict)

    def order(self, name: str) -> WantedOrder:
        """Look an order up."""
        return next(each for each in self.task.orders if each.order == name)

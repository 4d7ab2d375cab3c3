"""A linear programme put together row by row, and solved: the only place that knows the solver."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_array

from combwright.terms.errors import OutOfRangeError

Floats = NDArray[np.float64]


@dataclass
class Programme:
    """Variables and rows of a mixed-integer programme that earns as much as it can."""

    worth: list[float] = field(default_factory=list)
    whole: list[int] = field(default_factory=list)
    most: list[float] = field(default_factory=list)
    rows: list[NDArray[np.intp]] = field(default_factory=list)
    columns: list[NDArray[np.intp]] = field(default_factory=list)
    values: list[Floats] = field(default_factory=list)
    bounds: list[float] = field(default_factory=list)

    def variable(self, worth: float, most: float = np.inf, *, whole: bool = True) -> int:
        """Add a variable from 0 up, and give its number."""
        self.worth.append(worth)
        self.whole.append(int(whole))
        self.most.append(most)
        return len(self.worth) - 1

    def at_most(self, terms: Mapping[int, float], bound: float) -> None:
        """Ask that a sum stays within a bound."""
        self.all_at_most(np.array(list(terms)), np.array([list(terms.values())]), [bound])

    def all_at_most(self, columns: NDArray[np.intp], table: Floats, bounds: list[float]) -> None:
        """Ask the same of many sums over the same variables, [row, variable]."""
        row, at = np.nonzero(table)
        self.rows.append(row + len(self.bounds))
        self.columns.append(columns[at])
        self.values.append(table[row, at])
        self.bounds += bounds

    def solve(self, gap: float, nodes: int, seconds: float) -> tuple[Floats, float, float]:
        """Give the best values found, what they earn, and how far from the best that may be.

        ``nodes`` ends a long search at the same place on every machine; ``seconds`` guards it.
        """
        shape = (len(self.bounds), len(self.worth))
        at = (np.concatenate(self.rows), np.concatenate(self.columns))
        table = coo_array((np.concatenate(self.values), at), shape=shape).tocsr()
        found = milp(
            -np.array(self.worth),
            integrality=np.array(self.whole),
            bounds=Bounds(0.0, np.array(self.most)),
            constraints=LinearConstraint(table, -np.inf, np.array(self.bounds)),
            options={"mip_rel_gap": gap, "node_limit": nodes, "time_limit": seconds},
        )
        if found.x is None:
            raise OutOfRangeError(
                f"No plan was found in {seconds:.0f} seconds.",
                remedy="Plan fewer weeks, or allow more time.",
            )
        values = np.where(np.array(self.whole) == 1, np.round(found.x), found.x)
        return values, -float(found.fun), float(found.mip_gap)

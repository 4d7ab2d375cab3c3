"""History matching in waves: worlds that nothing rules out, from the whole ranges of the data.

The first wave covers the ranges evenly. After each wave a quick emulator of every cell is learned
from what was tried, far more worlds are drawn around the best so far, and the next wave is taken
from those that the emulator does not rule out. A world is kept for what its colonies did, never
for what an emulator says; held-out targets are not looked at.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.stats import qmc
from tests.validation.simulation.emulating import Emulator
from tests.validation.simulation.trying import FREE, Cell, cells, chance, ends, implausible, tried

from combwright.evidence.targets import targets

Floats = NDArray[np.float64]
FITS: Final = 0.95  # share of the fitted cells that must lie within the edge of their bands
EDGE: Final = 2.0
RULED_OUT: Final = 3.0  # in any cell
LEARNED_FROM: Final = 220  # of the best worlds so far, at least
PARENTS: Final = 40
DRAWN: Final = 20000  # worlds that the emulator judges for a wave
WIDER: Final = 0.06  # of the range, added to the spread of the parents
CROSSED: Final = 0.3  # share of a drawn world's numbers that come from a second parent


@dataclass(frozen=True)
class WorldsTried:
    """Worlds that were tried: free numbers between 0 and 1, and what came of each cell."""

    unit: Floats
    found: dict[Cell, Floats]
    chance: dict[Cell, float]

    def __add__(self, more: "WorldsTried") -> "WorldsTried":
        """Join with more of them."""
        found = {cell: np.concatenate([self.found[cell], more.found[cell]]) for cell in self.found}
        return replace(self, unit=np.concatenate([self.unit, more.unit]), found=found)

    def some(self, which: NDArray[np.intp]) -> "WorldsTried":
        """Give some of them, in that order."""
        found = {cell: values[which] for cell, values in self.found.items()}
        return replace(self, unit=self.unit[which], found=found)

    def implausible(self, *, held_out: bool = False) -> Floats:
        """How implausible each world is by each cell, [world, cell]."""
        return np.stack([self.off(cell, self.found[cell]) for cell in cells(held_out=held_out)], 1)

    def off(self, cell: Cell, values: Floats, unsure: float = 0.0) -> Floats:
        """How implausible values of a cell are, [world]."""
        return implausible(targets()[cell[1]], values, self.chance[cell], unsure)

    def best_first(self) -> NDArray[np.intp]:
        """Places of the worlds, the least amiss first."""
        return np.argsort(amiss(self.implausible()), kind="stable")

    def fits(self) -> NDArray[np.bool_]:
        """Tell which worlds fit."""
        off = self.implausible()
        return np.asarray(((off <= EDGE).mean(axis=1) >= FITS) & (off.max(axis=1) <= RULED_OUT))


def amiss(off: Floats) -> Floats:
    """How far a world lies beyond bands in all; a little for what is near an edge, [world]."""
    return np.asarray((np.maximum(off - 0.8 * EDGE, 0.0) ** 2).sum(axis=1))


def search(
    *, first: int, waves: int, number: int, seed: int, tell: Callable[[str], object]
) -> WorldsTried:
    """Search; gives all worlds that were tried."""
    rng = np.random.default_rng(seed)
    known = _try(qmc.LatinHypercube(len(FREE), seed=seed).random(first))
    tell(f"wave 0: {_told(known)}")
    for wave in range(1, waves + 1):
        known = known + _try(next_wave(known, number, rng))
        tell(f"wave {wave} of {waves}: {_told(known)}")
    return known


def _told(known: WorldsTried) -> str:
    off = known.implausible()
    held = (off <= EDGE).mean(axis=1)
    return (
        f"{len(off)} worlds tried, {known.fits().sum()} fit, "
        f"best {amiss(off).min():.1f} amiss, {held.max():.0%} of cells held"
    )


def _try(unit: Floats) -> WorldsTried:
    low, high = ends()
    return WorldsTried(unit, tried(low + (high - low) * unit), chance())


def next_wave(known: WorldsTried, number: int, rng: np.random.Generator) -> Floats:
    """Draw worlds around the best so far, and take those that the emulators rule out least."""
    order = known.best_first()
    near = known.some(order[: max(LEARNED_FROM, len(order) // 2)])
    drawn = _offspring(near.unit[:PARENTS], rng)
    off = []
    for cell in cells(held_out=False):
        emulator = Emulator.learned(near.unit, near.found[cell])
        off.append(near.off(cell, emulator.says(drawn), emulator.error))
    wrong = amiss(np.stack(off, axis=1))
    likely = np.argsort(wrong, kind="stable")[: 5 * number]
    return np.asarray(drawn[rng.choice(likely, number, replace=False)])


def _offspring(parents: Floats, rng: np.random.Generator) -> Floats:
    """Draw worlds of the numbers of two parents each, moved within the spread of all."""
    mother, father = rng.integers(len(parents), size=(2, DRAWN))
    crossed = rng.random((DRAWN, parents.shape[1])) < CROSSED
    mixed = np.where(crossed, parents[father], parents[mother])
    spread = 0.5 * parents.std(axis=0) + WIDER
    moved = np.abs(mixed + spread * rng.standard_normal(mixed.shape))
    return np.asarray(np.clip(np.where(moved > 1.0, 2.0 - moved, moved), 0.0, 1.0))

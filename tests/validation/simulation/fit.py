"""Search for worlds that fit, and keep them: ``make fit``.

Writes ``simulation/data/worlds.csv``, ``docs/validation/fit.md`` and its figure.
"""

import sys
import time
from pathlib import Path
from typing import Final

import numpy as np
from tests.validation.simulation.fit_page import write
from tests.validation.simulation.searching import WorldsTried, search
from tests.validation.simulation.trying import FREE, ends

from combwright.simulation.worlds import FILE

ROOT: Final = Path(__file__).parents[3]
WORLDS: Final = ROOT / "src" / "combwright" / "simulation" / FILE
SEED, FIRST, WAVES, NUMBER, MOST = 20261127, 240, 8, 110, 40


def main() -> None:
    """Search, keep the worlds, tell what came of it."""
    began = time.process_time()
    known = search(first=FIRST, waves=WAVES, number=NUMBER, seed=SEED, tell=tell)
    if not known.fits().any():
        sys.exit("No world fits: nothing was written.")
    kept = fitting(known)
    WORLDS.write_text(as_csv(kept), encoding="utf-8")
    minutes = (time.process_time() - began) / 60.0
    write(known, kept, f"seed {SEED}, in {minutes:.0f} minutes of one core")


def tell(line: str) -> None:
    """Show how far the search has come."""
    print(line, file=sys.stderr, flush=True)  # noqa: T201


def fitting(known: WorldsTried) -> WorldsTried:
    """Give worlds that fit: the most plausible, then always the one least like those taken."""
    fits = known.fits()
    order = known.best_first()
    all_of_them = known.some(order[fits[order]])
    taken = [0]
    apart = np.full(len(all_of_them.unit), np.inf)
    while len(taken) < min(MOST, len(apart)):
        newest = all_of_them.unit[taken[-1]]
        apart = np.minimum(apart, np.sum((all_of_them.unit - newest) ** 2, axis=1))
        taken.append(int(np.argmax(apart)))
    return all_of_them.some(np.array(taken, dtype=np.intp))


def as_csv(kept: WorldsTried) -> str:
    """Write worlds as they are kept, a row each, with five figures."""
    low, high = ends()
    rows = [[f"{value:.5g}" for value in one] for one in low + (high - low) * kept.unit]
    return "".join(",".join(row) + "\n" for row in [list(FREE), *rows])


if __name__ == "__main__":
    main()

"""The chance of a swarm comes as often as it says, on colonies not used to fit it."""

from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path
from typing import Final

import numpy as np
import pytest
from tests.validation.belief.grown import OwnWorld, Untold
from tests.validation.belief.swarms import FLAGGED, Week, figure, page, weeks_of

pytestmark = pytest.mark.validation
DOCS: Final = Path(__file__).parents[3] / "docs" / "validation"
WORLDS: Final = {
    "the model's own worlds": Untold(world=OwnWorld, cells=True),
    "other rules": Untold(cells=True),
}
FIRST, COLONIES, WORKERS = 300, 60, 1
SPREADS: Final = 3.0  # standard errors


@pytest.fixture(scope="module")
def by_world() -> dict[str, list[Week]]:
    found = {}
    with ProcessPoolExecutor(WORKERS) as workers:
        for world, untold in WORLDS.items():
            each = workers.map(partial(weeks_of, untold=untold), range(FIRST, FIRST + COLONIES))
            found[world] = [week for weeks in each for week in weeks]
    (DOCS / "swarm.md").write_text(page(found), encoding="utf-8")
    (DOCS / "swarm-reliability.svg").write_text(figure(found), encoding="utf-8")
    return found


@pytest.mark.parametrize("world", WORLDS)
def test_swarms_come_as_often_as_is_said(by_world: dict[str, list[Week]], world: str) -> None:
    weeks = by_world[world]
    said = np.array([each.chance for each in weeks])
    came = sum(each.swarmed for each in weeks)
    spread = float(np.sqrt(np.sum(said * (1.0 - said))))
    assert abs(came - said.sum()) <= SPREADS * spread


@pytest.mark.parametrize("world", WORLDS)
def test_most_swarms_are_seen_coming(by_world: dict[str, list[Week]], world: str) -> None:
    came = [each for each in by_world[world] if each.swarmed]
    assert sum(each.chance >= FLAGGED for each in came) >= 0.5 * len(came)

"""The compiled day against a plain one written from its description, on colonies of any kind."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from tests.simulation import samples
from tests.simulation.reference.day import one_day, plain, record

from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.columns import COLUMNS
from combwright.simulation.run import run

Floats = NDArray[np.float64]


def agrees(fast: np.void, slow: dict[str, Any]) -> None:
    for column in COLUMNS:
        mine, plain_one = fast[column.name], np.asarray(slow[column.name])
        close = np.allclose(mine, plain_one, rtol=1e-9, atol=1e-7)
        assert close, f"{column.name}: {mine} compiled, {plain_one} plain"


@pytest.mark.compiled
@given(samples.states(), samples.weather_of_days(3), st.integers(0, 2**32 - 1))
def test_the_compiled_day_agrees_with_the_plain_one(
    colony: dict[str, Any], days: Floats, seed: int
) -> None:
    luck = samples.chance(seed, 1, 3)
    fast = record(colony)
    slow = plain(fast[0])
    run(fast, days, luck)
    for day in range(3):
        one_day(slow, days[0, day].tolist(), luck[0, day].tolist(), BIOLOGY)
    agrees(fast[0], slow)


@pytest.mark.compiled
@given(samples.states(), samples.weather_of_days(1), samples.biologies(), st.integers(0, 2**32 - 1))
def test_they_agree_whatever_the_numbers_of_the_model(
    colony: dict[str, Any], days: Floats, biology: Biology, seed: int
) -> None:
    luck = samples.chance(seed, 1, 1)
    fast = record(colony)
    slow = plain(fast[0])
    run(fast, days, luck, worlds=(biology,))
    one_day(slow, days[0, 0].tolist(), luck[0, 0].tolist(), biology)
    agrees(fast[0], slow)


@pytest.mark.compiled
def test_they_agree_over_a_whole_season() -> None:
    colonies = samples.usual(members=2)
    days = samples.dublin()[:, :200]
    luck = samples.chance(3, 2, 200)
    slow = [plain(one) for one in colonies]
    run(colonies, days, luck)
    for i, colony in enumerate(slow):
        for day in range(200):
            one_day(colony, days[i % len(days), day].tolist(), luck[i, day].tolist(), BIOLOGY)
        for column in COLUMNS:
            assert colonies[i][column.name] == pytest.approx(
                np.asarray(colony[column.name]), rel=1e-6, abs=1e-4
            ), column.name


def test_each_colony_lives_in_the_world_that_it_names() -> None:
    """Three worlds at once give what each gives alone; an unknown one is the first."""
    worlds = tuple(BIOLOGY._replace(lay_peak=peak) for peak in (1000.0, 1500.0, 2000.0))
    together = np.concatenate([samples.usual(members=4) for _ in range(4)])
    together["world"] = np.repeat([0.0, 1.0, 2.0, 7.0], 4)
    days, luck = samples.dublin()[:1, :15], samples.chance(5, 4, 15)
    run(together, days, luck, worlds=worlds)
    for place, world in enumerate((*worlds, worlds[0])):
        alone = samples.usual(members=4)
        run(alone, days, luck, worlds=(world,))
        for one, other in zip(together[4 * place : 4 * place + 4], alone, strict=True):
            agrees(one, plain(other) | {"world": float(one["world"])})

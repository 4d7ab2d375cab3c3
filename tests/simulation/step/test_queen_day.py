"""The queen and the swarm, day by day."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples

from combwright.simulation.columns import (
    CELL,
    DRONE_LAYER,
    LAYING,
    LAYING_WORKERS,
    QUEENLESS,
    VIRGIN,
)
from combwright.simulation.luck import MATED, QUEEN_LOST, SWARM_LEAVES, SWARM_STARTS
from combwright.simulation.step.queen_day import leave, queen_day, swarm_hazard, swarming

BIO = samples.numbers()


def luck(*happens: int) -> Any:
    """Luck in which nothing happens but what is named."""
    drawn = np.ones(9)
    drawn[list(happens)] = 0.0
    return drawn


def crowded(**columns: float) -> Any:
    colony = {"nest": 25_000.0, "foragers": 12_000.0, "drawn": 50_000.0, "ripe": 16_000.0}
    colony |= {"bees_per_frame": 1800.0, "frames": 11.0, "sugar_per_cell": 0.336}
    colony |= {"swarm_readiness": 1.0, "queen": LAYING, "queen_age": 500.0}
    return samples.row({**colony, **columns})


@given(samples.colonies(), st.floats(1, 366))
def test_no_cells_are_begun_out_of_season(colony: Any, day: float) -> None:
    hazard = swarm_hazard(colony, day, 0.0, BIO)
    assert hazard >= 0.0
    if day <= BIO.swarm_from or day >= BIO.swarm_until:
        assert hazard == 0.0


def test_crowding_and_an_old_queen_raise_the_hazard() -> None:
    hazard = swarm_hazard(crowded(), 150.0, 0.0, BIO)
    assert hazard > 0.0
    assert swarm_hazard(crowded(queen_age=60.0), 150.0, 0.0, BIO) < hazard
    assert swarm_hazard(crowded(ripe=2000.0), 150.0, 0.0, BIO) < hazard
    assert swarm_hazard(crowded(supers=3.0), 150.0, 0.0, BIO) < hazard


def test_a_swarm_leaves_once_a_cell_is_sealed_on_a_day_to_fly() -> None:
    colony, day = crowded(), 0
    starts, ready = luck(SWARM_STARTS), luck(SWARM_LEAVES)
    assert swarming(colony, samples.today(starts, flight=8.0), 0.0, BIO) == 0.0
    indoors = samples.today(ready, flight=0.0)
    while swarming(colony, samples.today(ready, day=150.0 + day, flight=8.0), 0.0, BIO) == 0.0:
        day += 1
        assert swarming(crowded(swarm_clock=12.0), indoors, 0.0, BIO) == 0.0
    assert 7 <= day <= 9
    assert colony.queen == CELL


def test_bees_that_cannot_leave_give_up() -> None:
    colony = crowded(swarm_clock=1.0)
    for _ in range(int(BIO.swarm_gives_up)):
        assert swarming(colony, samples.today(luck()), 0.0, BIO) == 0.0
    assert colony.swarm_clock == 0.0
    assert colony.queen == LAYING


@given(samples.colonies(), st.floats(0, 1))
def test_who_leaves_is_gone_with_full_crops(colony: Any, share: float) -> None:
    bees, ripe = colony.nest + colony.foragers + colony.winter, float(colony.ripe)
    gone, sugar = leave(colony, share, BIO)
    left = colony.nest + colony.foragers + colony.winter
    assert left + gone == pytest.approx(bees)
    assert colony.ripe + sugar == pytest.approx(ripe)
    assert sugar <= gone * BIO.swarm_honey * (1 + 1e-12)


def days_until(colony: Any, state: float, mating: float, chance: Any) -> int:
    today = samples.today(chance, mating=mating)
    for day in range(1, 80):
        queen_day(colony, today, BIO)
        if colony.queen == state:
            return day
    return 0


def test_a_lost_queen_is_raised_anew_from_young_larvae() -> None:
    """Virgin twelve days after the loss (trade clock), laying two to three weeks later."""
    colony = crowded()
    colony.larvae[:] = 500.0
    queen_day(colony, samples.today(luck(QUEEN_LOST), mating=1.0), BIO)
    assert colony.queen == QUEENLESS
    assert days_until(colony, VIRGIN, 1.0, luck()) == 13
    assert 9 <= days_until(colony, LAYING, 1.0, luck()) <= 21
    assert colony.queen_age == 0.0


def test_without_larvae_she_is_not() -> None:
    assert days_until(crowded(queen=QUEENLESS), CELL, 1.0, luck()) == 0


@pytest.mark.parametrize(("mating", "chance"), [(0.0, luck()), (1.0, luck(MATED))])
def test_a_virgin_that_finds_no_day_or_no_way_home_is_lost(mating: float, chance: Any) -> None:
    colony = crowded(queen=VIRGIN)
    assert days_until(colony, QUEENLESS, mating, chance) > 0


def test_a_queen_that_runs_dry_lays_on_and_is_not_followed_by_another() -> None:
    colony, chance = crowded(queen_age=100.0), luck()
    colony.larvae[:] = 500.0
    chance[QUEEN_LOST] = BIO.queen_loss * (1.0 - 0.5 * BIO.runs_dry)
    queen_day(colony, samples.today(chance, mating=1.0), BIO)
    assert colony.queen == DRONE_LAYER
    assert days_until(colony, CELL, 1.0, luck()) == 0


def test_a_virgin_that_finds_no_day_may_lay_drones() -> None:
    chance = luck()
    chance[MATED] = 0.5 * BIO.lays_unmated
    assert 20 <= days_until(crowded(queen=VIRGIN), DRONE_LAYER, 0.0, chance) <= 30


def test_long_without_queen_and_brood_workers_lay_but_not_out_of_season() -> None:
    found = days_until(crowded(queen=QUEENLESS), LAYING_WORKERS, 1.0, luck())
    assert 21 <= found <= 42  # three to four weeks: common practice
    assert days_until(crowded(queen=QUEENLESS), LAYING_WORKERS, 0.0, luck()) == 0


def test_a_cast_follows_only_a_swarm_and_only_from_many_bees() -> None:
    cast = luck(QUEEN_LOST)
    for swarmed, bees, leaves in ((1.0, 25_000.0, True), (0.0, 25_000.0, False), (1.0, 0.0, False)):
        colony = crowded(queen=CELL, queen_clock=15.0, swarmed=swarmed, nest=bees, foragers=0.0)
        assert (queen_day(colony, samples.today(cast), BIO) > 0.0) == leaves
        assert colony.queen == VIRGIN

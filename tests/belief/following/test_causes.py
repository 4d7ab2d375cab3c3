"""What may have happened unseen, and how a clear note of it is believed."""

from functools import cache

import numpy as np
import pytest
from tests.belief.samples import Loose, day, enters, entry, replay

from combwright.belief.following.asking import suspected
from combwright.belief.following.causes import (
    ASKED_FROM,
    CAUSES,
    EMERGES_ON,
    MATES_BY,
    OLDEST_DAYS,
    TOO_WEAK,
    begin_cells,
    fail_queen,
    lose_queen,
)
from combwright.belief.following.followed import Followed
from combwright.belief.following.looking import look
from combwright.belief.following.replay import CROWD
from combwright.belief.weighing.filter import Belief
from combwright.simulation import observe
from combwright.simulation.columns import (
    CELL,
    DRONE_LAYER,
    LAYING,
    LAYING_WORKERS,
    QUEENLESS,
    VIRGIN,
)
from combwright.terms.entries import Visit

MAY = 40  # days after the first note: the middle of May
MEMBERS = 60
CELLS = next(cause for cause in CAUSES if cause.name == "cells begun")


@cache
def followed() -> Followed:
    """Follow a strong colony into May, all of whose members lay and have begun no cells."""
    notes = [
        *enters(),
        entry(Visit, 26, frames_of_bees=9, frames_of_brood=6, stores_kg=8),
        entry(Visit, MAY - 7, frames_of_bees=9.5, frames_of_brood=6, queen_cells="none"),
    ]
    found = replay(notes, members=CROWD * MEMBERS).follow("Sorrel", day(MAY))
    assert found is not None
    found.belief.colonies["queen"], found.belief.colonies["swarm_clock"] = LAYING, 0.0
    return found


def after(seed: int, **seen: Loose) -> Belief:
    """Give what is believed after a note, by as many members as are handed on."""
    note = entry(Visit, MAY, **seen)
    return look(followed(), [note], versions=20, seed=seed).belief.every(CROWD)


def in_state(belief: Belief, *states: float) -> float:
    return float(np.mean(np.isin(belief.colonies["queen"], states)))


def test_drone_brood_only_is_believed_and_worker_brood_clears_it() -> None:
    for kind in ("drone brood only", "several eggs a cell"):
        seen = np.mean(
            [
                in_state(
                    after(seed, brood_kind=kind, queen_seen=False), DRONE_LAYER, LAYING_WORKERS
                )
                for seed in range(4)
            ]
        )
        assert seen > 0.5, kind
    assert in_state(after(0, brood_kind="worker brood"), DRONE_LAYER, LAYING_WORKERS) < 0.02


def test_several_eggs_speak_for_workers_and_a_drone_layer_is_told_from_them() -> None:
    many = [after(seed, brood_kind="several eggs a cell") for seed in range(4)]
    workers = np.mean([in_state(belief, LAYING_WORKERS) for belief in many])
    assert workers > np.mean([in_state(belief, DRONE_LAYER) for belief in many])


def test_a_colony_found_weaker_is_not_believed_better_off() -> None:
    found = [
        [after(seed, frames_of_bees=bees).colonies for seed in range(4)]
        for bees in (3.0, 7.0, 11.0)
    ]
    for quantity in (observe.frames_of_bees, observe.frames_of_brood):
        believed = [np.mean([np.median(quantity(one)) for one in each]) for each in found]
        assert believed == sorted(believed), quantity.__name__


def preparing(belief: Belief) -> float:
    return float(np.mean(belief.colonies["swarm_clock"] > 0.0))


def as_expected() -> dict[str, float]:
    bees = observe.frames_of_bees(followed().belief.colonies)
    return {"frames_of_bees": float(np.median(bees))}


@pytest.mark.parametrize("cells", ["charged", "sealed"])
def test_clear_cells_are_believed_where_no_swarm_is_missing(cells: str) -> None:
    beliefs = [after(seed, queen_cells=cells, **as_expected()) for seed in range(4)]
    assert np.mean([preparing(belief) for belief in beliefs]) > 0.5
    assert {belief.members for belief in beliefs} == {MEMBERS}
    for trouble, enough in ASKED_FROM.items():  # by all of them, for few members are lucky or not
        assert np.mean([belief.chances[trouble] for belief in beliefs]) < enough


@pytest.mark.parametrize("seed", range(4))
def test_charged_cells_are_believed_without_any_other_note(seed: int) -> None:
    assert preparing(after(seed, queen_cells="charged")) > 0.5


def test_sealed_cells_alone_may_also_be_what_a_swarm_has_left() -> None:
    """Whoever does not look at the bees is asked whether they have gone."""
    belief = after(1, queen_cells="sealed")
    assert preparing(belief) > 0.1
    assert preparing(belief) + belief.chances["swarmed"] > 0.7
    assert suspected(belief)


@pytest.mark.parametrize("seen", [{"queen_cells": "none"}, {"queen_cells": "cups"}, {"eggs": True}])
def test_no_clear_cells_leave_swarming_near_what_it_was(seen: dict[str, object]) -> None:
    belief = after(1, **seen, **as_expected())
    assert preparing(belief) <= 2.0 * CELLS.within(day(MAY).timetuple().tm_yday, 7.0)
    assert not suspected(belief)


@pytest.mark.parametrize(("days", "oldest"), [(1.0, 3.0), (5.0, 7.0), (30.0, OLDEST_DAYS)])
def test_cells_are_begun_where_a_queen_lays_among_many_bees(days: float, oldest: float) -> None:
    colonies: Loose = followed().belief.colonies.copy()
    colonies["queen"][::2] = VIRGIN
    colonies["swarm_clock"][::5] = 4.0
    colonies["nest"][::3] = colonies["foragers"][::3] = colonies["winter"][::3] = 100.0
    before = colonies.copy()
    begin_cells(colonies, days, np.random.default_rng(1))
    begun = colonies["swarm_clock"] != before["swarm_clock"]
    may = (before["queen"] == LAYING) & (before["swarm_clock"] == 0.0)
    may &= observe.frames_of_bees(before) >= TOO_WEAK
    assert (begun == may).all()
    ages = np.unique(colonies["swarm_clock"][begun])
    assert set(ages) <= set(np.arange(1.0, oldest + 1.0))
    assert ages.max() == oldest


def test_cells_are_begun_in_the_swarm_season_and_no_more_often_after_a_long_wait() -> None:
    assert CELLS.within(15, 7.0) == CELLS.within(300, 7.0) == 0.0
    assert CELLS.within(150, 7.0) > CELLS.within(110, 7.0) > 0.0
    assert CELLS.within(150, 9.0) == CELLS.within(150, 60.0)


def test_a_queen_may_have_gone_while_her_eggs_still_stood_at_the_last_note() -> None:
    colonies = followed().belief.colonies.copy()
    colonies["larvae"] = 100.0
    lose_queen(colonies, 4.0, np.random.default_rng(1))
    gone = colonies["larvae"][:, 2] == 0.0  # of an egg of five and a half days ago
    assert 0.1 < gone.mean() < 0.5
    assert (colonies["larvae"][:, 4] == 100.0).all()


def test_after_a_long_wait_her_successor_is_a_cell_a_virgin_or_lays_since_she_mated() -> None:
    colonies = followed().belief.colonies.copy()
    lose_queen(colonies, 60.0, np.random.default_rng(1))
    queen, clock = colonies["queen"], colonies["queen_clock"]
    assert set(queen) == {CELL, VIRGIN, LAYING}
    assert clock[queen == CELL].max() <= EMERGES_ON
    assert clock[queen == VIRGIN].max() <= MATES_BY
    assert (colonies["queen_age"][queen != LAYING] == 0.0).all()
    assert colonies["queen_age"][queen == LAYING] == pytest.approx(
        clock[queen == LAYING] - MATES_BY
    )


def test_where_a_queen_failed_no_larva_is_left_to_raise_another_from() -> None:
    colonies = followed().belief.colonies.copy()
    colonies["larvae"] = 100.0
    fail_queen(colonies, 1.0, np.random.default_rng(1))
    assert np.isin(colonies["queen"], (QUEENLESS, DRONE_LAYER, LAYING_WORKERS)).all()
    assert (colonies["eggs"] == 0.0).all()
    assert (colonies["larvae"][:, :2] == 0.0).all()
    assert (colonies["larvae"][:, 2:] == 100.0).all()


def test_a_colony_long_without_eggs_and_brood_in_summer_is_not_taken_for_one_short_of_room() -> (
    None
):
    notes = [
        *enters(),
        entry(Visit, MAY, frames_of_bees=9.5, frames_of_brood=6, stores_kg=8, eggs=True),
        entry(Visit, MAY + 7, frames_of_bees=10, frames_of_brood=5, eggs=True),
        entry(Visit, MAY + 35, frames_of_bees=10, frames_of_brood=0.5, stores_kg=20, eggs=False),
        entry(Visit, MAY + 42, frames_of_bees=9, frames_of_brood=0.0, stores_kg=20, eggs=False),
        entry(Visit, MAY + 49, frames_of_bees=8.5, frames_of_brood=0.0, stores_kg=20, eggs=False),
    ]
    found = replay(notes, members=2 * MEMBERS).follow("Sorrel", day(MAY + 50))
    assert found is not None
    assert np.mean(found.belief.colonies["queen"] == LAYING) < 0.2

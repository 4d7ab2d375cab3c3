"""Members moved apart: what goes with what is kept, copies part, and nothing else is touched."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.belief.samples import Loose
from tests.simulation.samples import usual

from combwright.belief.sharing.shared import EYES, draw_shared
from combwright.belief.weighing.spreading import (
    FEWEST,
    GROUPS,
    LOST,
    MOST_LOG,
    SCALED,
    SHRINK,
    spread_out,
)
from combwright.simulation.columns import COLUMNS, LAYING, VIRGIN

MOVED = {column for group in GROUPS for column in group}


def some(members: int, seed: int = 1) -> tuple[Loose, Loose]:
    colonies = usual(members=members, seed=seed)
    colonies["foragers"] = 0.3 * colonies["nest"]
    colonies["mites_worker"][:, 4] = 0.5 * colonies["mites"]
    return colonies, draw_shared(members, 5, np.random.default_rng(seed))


def moved(colonies: Loose, shared: Loose, seed: int = 3) -> tuple[Loose, Loose]:
    after, eyes = colonies.copy(), shared.copy()
    spread_out(after, eyes, SHRINK, np.random.default_rng(seed))
    return after, eyes


def total(colonies: Loose, group: tuple[str, ...]) -> Loose:
    return sum(colonies[name].reshape(len(colonies), -1).sum(axis=1) for name in group)


@given(st.integers(0, 1000))
@settings(max_examples=20)
def test_a_group_keeps_its_proportions_and_moves_no_further_than_it_may(seed: int) -> None:
    colonies, shared = some(60, seed)
    after, _ = moved(colonies, shared, seed)
    for group in SCALED:
        factor = total(after, group) / np.maximum(total(colonies, group), 1e-12)
        for name in group:
            before = colonies[name].reshape(60, -1)
            assert after[name].reshape(60, -1) == pytest.approx(before * factor[:, None])
        some_there = total(colonies, group) > 0
        assert (np.abs(np.log(factor[some_there])) <= MOST_LOG + 1e-9).all()


def test_nothing_else_of_a_colony_is_touched_and_nothing_comes_of_nothing() -> None:
    colonies, shared = some(50)
    colonies["pollen"][:20] = 0.0
    after, eyes = moved(colonies, shared)
    for column in COLUMNS:
        if column.name not in MOVED:
            assert (after[column.name] == colonies[column.name]).all(), column.name
    assert (after["pollen"][:20] == 0.0).all()
    assert (eyes["year"] == shared["year"]).all()


def test_copies_come_apart() -> None:
    colonies, shared = some(10)
    copies = np.repeat(np.arange(10), 20)
    after, eyes = moved(colonies[copies], shared[copies])
    for values in (after["mites"], after["ripe"], after["queen_potential"], eyes["bees_eye"]):
        assert len(np.unique(values)) == 200


def test_middles_stay_and_spreads_grow_by_what_picking_lost() -> None:
    members = 4000
    colonies, shared = some(members)
    after, eyes = moved(colonies, shared)
    looked_at = [(np.log(colonies["mites"]), np.log(after["mites"]))]
    looked_at += [(shared[eye], eyes[eye]) for eye in EYES]
    for before, now in looked_at:
        sure = 5 * before.std() / members**0.5
        assert now.mean() == pytest.approx(before.mean(), abs=sure)
        assert now.var() == pytest.approx(before.var() * (1 + LOST / members), rel=0.1)
    known = np.corrcoef(np.log(colonies["ripe"]), np.log(colonies["mites"]))[0, 1]
    kept = np.corrcoef(np.log(after["ripe"]), np.log(after["mites"]))[0, 1]
    assert kept == pytest.approx(known, abs=0.1)


@pytest.mark.parametrize(("without", "parted"), [(FEWEST, True), (FEWEST - 1, False)])
def test_colonies_with_and_without_a_laying_queen_are_moved_by_their_own_spread(
    without: int, parted: bool
) -> None:
    """Those with a queen agree to the mite, so they stay; unless the others are too few to part."""
    colonies, shared = some(60)
    colonies["queen"] = LAYING
    colonies["queen"][:without] = VIRGIN
    colonies["mites"][without:] = 100.0
    colonies["mites_worker"] = 0.0
    colonies["mites"][:without] = np.linspace(5.0, 500.0, without)
    after, _ = moved(colonies, shared)
    stayed = np.isclose(after["mites"][without:], 100.0, rtol=1e-6).all()
    assert stayed == parted

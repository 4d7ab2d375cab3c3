"""What is remembered of a day, and how a colony ends."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples

from combwright.simulation import observe
from combwright.simulation.columns import (
    DWINDLED,
    HUNGER,
    LAYING,
    MITES,
    NO_QUEEN,
    ROBBERS,
    VIRGIN,
)
from combwright.simulation.run import run
from combwright.simulation.step.remembered import TRACED, cause_of_loss, lie_dead, note

BIO = samples.numbers()


def test_what_is_traced_is_what_the_colonies_hold_at_the_end_of_the_day() -> None:
    colonies = samples.usual(members=3)
    trace = run(colonies, samples.dublin()[:, :10], samples.chance(1, 3, 10), traced=True)
    assert trace.values.shape == (10, 3, len(TRACED))
    last = {name: trace[name][-1] for name in TRACED}
    assert last["adults"] == pytest.approx(observe.adults(colonies))
    assert last["mites"] == pytest.approx(observe.mites(colonies))
    for name, column in (
        *(("eggs_laid", "laid"), ("room_cells", "room"), ("super_sugar_g", "super_ripe")),
        *(("syrup_taken_g", "taken_down"), ("fallen", "fallen"), ("swarms", "swarmed")),
        *(("gathered_g", "gathered"), ("used_g", "used"), ("foragers", "foragers")),
        ("heat_w", "heat_w"),
    ):
        assert (last[name] == colonies[column]).all(), name
    assert (last["queen_lays"] == (colonies["queen"] == LAYING)).all()
    stores = colonies["ripe"] + colonies["super_ripe"] + colonies["unripe"]
    assert last["sugar_g"] == pytest.approx(stores)


def test_a_trace_changes_nothing() -> None:
    seen, unseen = samples.usual(members=3), samples.usual(members=3)
    run(seen, samples.dublin()[:, :10], samples.chance(1, 3, 10), traced=True)
    run(unseen, samples.dublin()[:, :10], samples.chance(1, 3, 10))
    assert (seen == unseen).all()


@given(samples.colonies())
def test_the_dead_hold_no_bees_brood_or_mites_but_keep_their_comb_and_stores(colony: Any) -> None:
    kept = {name: getattr(colony, name) for name in ("drawn", "foundation", "ripe", "frames")}
    lie_dead(colony)
    bees = ("nest", "foragers", "winter", "drones")
    brood = ("eggs", "larvae", "sealed", "drone_open", "drone_sealed")
    for name in (*bees, *brood, "mites", "mites_worker", "mites_drone"):
        assert np.sum(getattr(colony, name)) == 0.0, name
    assert {name: getattr(colony, name) for name in kept} == kept


@pytest.mark.parametrize(
    ("found", "cause"),
    [
        ({"starved": 1.0, "robbed": 0.0}, HUNGER),
        ({"starved": 1.0, "robbed": 2.0}, ROBBERS),
        ({"starved": 0.0, "queen": VIRGIN, "hurt_nest": 1.0}, NO_QUEEN),
        ({"starved": 0.0, "queen": LAYING, "hurt_nest": 1.0}, MITES),
        ({"starved": 0.0, "queen": LAYING, "hurt_winter": 1.0}, MITES),
        ({"starved": 0.0, "queen": LAYING}, DWINDLED),
    ],
)
def test_a_lost_colony_tells_what_it_died_of(found: dict[str, float], cause: float) -> None:
    colony = samples.usual(members=1).view(np.recarray)[0]
    colony.hurt_nest = colony.hurt_winter = 0.0
    for name, value in found.items():
        setattr(colony, name, value)
    assert cause_of_loss(colony, BIO) == cause


@given(samples.colonies(), st.floats(0, 3000), st.floats(0, 6000))
def test_days_short_of_room_are_counted_while_they_last_and_the_longest_spell_is_kept(
    colony: Any, wanted: float, room: float
) -> None:
    days, most = 2.0, 5.0
    colony.short_of_room_days, colony.short_of_room_most = days, most
    note(colony, wanted, 0.0, room, 0.0, 0.0, 0.0, BIO)
    short = (
        colony.queen == LAYING and wanted > BIO.wanted_least and room < BIO.short_of_room * wanted
    )
    assert colony.short_of_room_days == (days + 1.0 if short else 0.0)
    assert colony.short_of_room_most == most
    colony.short_of_room_days = most
    note(colony, wanted, 0.0, room, 0.0, 0.0, 0.0, BIO)
    assert colony.short_of_room_most == (most + 1.0 if short else most)

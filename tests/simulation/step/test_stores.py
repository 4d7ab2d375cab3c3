"""Eating, what lies out of reach, ripening and the feeder."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from tests.simulation import samples

from combwright.evidence.simulated_colonies import even_days
from combwright.simulation import observe
from combwright.simulation.columns import HUNGER
from combwright.simulation.run import run
from combwright.simulation.step.feeding import take_down, turns_sour
from combwright.simulation.step.stores import drawing, drying, eat, out_of_reach, ripen

BIO = samples.numbers()
Grams = st.floats(0, 60_000)


@given(samples.colonies(), Grams)
def test_bees_eat_what_is_there_the_thinnest_first(colony: Any, wanted: float) -> None:
    colony.far = 0.0
    before = colony.unripe + colony.ripe + colony.super_ripe
    water = float(colony.water)
    eaten, water_eaten = eat(colony, wanted)
    assert eaten == pytest.approx(min(wanted, before))
    assert colony.unripe + colony.ripe + colony.super_ripe + eaten == pytest.approx(before)
    assert colony.water + water_eaten == pytest.approx(water)
    assert colony.ripe == 0.0 or colony.unripe <= 1e-9 or eaten == pytest.approx(wanted)


@given(samples.colonies(), st.floats(-10, 25), st.floats(0, 0.9))
def test_ripening_keeps_sugar_and_drives_water_off(
    colony: Any, mean_c: float, above: float
) -> None:
    sugar = colony.unripe + colony.ripe + colony.super_ripe
    water = float(colony.water)
    driven_off = ripen(colony, drying(mean_c, BIO), above, BIO)
    assert colony.unripe + colony.ripe + colony.super_ripe == pytest.approx(sugar)
    assert driven_off >= 0.0
    assert colony.water <= water - driven_off + 1e-6


@given(samples.colonies(), st.floats(-10, 25), st.floats(0, 10), Grams)
def test_no_more_is_taken_down_than_the_feeder_holds(
    colony: Any, mean_c: float, warmer: float, free: float
) -> None:
    sugar, water = take_down(colony, mean_c, mean_c + warmer, 0.0, free, BIO)
    assert 0.0 <= sugar <= colony.feeder * (1 + 1e-12)
    assert 0.0 <= water <= colony.feeder_water * (1 + 1e-12)
    gathered, _ = take_down(colony, mean_c, mean_c + warmer, 2000.0, free, BIO)
    assert gathered <= sugar * (1 + 1e-12)


def test_cold_syrup_stays_where_it_is_but_fondant_is_eaten() -> None:
    for water, taken in ((700.0, False), (150.0, True)):
        colony = samples.row({"feeder": 1000.0, "feeder_water": water, "nest": 15_000.0})
        sugar, _ = take_down(colony, -2.0, 2.0, 0.0, 20_000.0, BIO)
        assert (sugar > 0.0) == taken


@pytest.mark.parametrize(
    ("share", "days", "sour"),
    [(0.5, 3.0, False), (0.5, 8.0, True), (0.62, 8.0, False), (0.62, 40.0, True), (0.8, 90, False)],
)
def test_thin_feed_turns_before_thick(share: float, days: float, *, sour: bool) -> None:
    feed = {"feeder": 1000.0 * share, "feeder_water": 1000.0 * (1 - share), "feeder_days": days}
    assert turns_sour(samples.row(feed), 20.0, BIO) == sour
    assert not turns_sour(samples.row(feed), 5.0, BIO)


@given(samples.colonies(), st.floats(0, 12))
def test_comb_is_drawn_from_foundation_with_food_coming_in(colony: Any, warm: float) -> None:
    below, above = drawing(colony, warm, BIO)
    assert 0.0 <= below <= colony.foundation
    assert 0.0 <= above <= colony.super_foundation
    colony.intake, colony.used = 0.0, 500.0
    assert drawing(colony, warm, BIO) == (0.0, 0.0)


@given(samples.colonies(), st.floats(-10, 25), st.floats(0, 10))
def test_no_more_is_out_of_reach_than_there_is_and_nothing_in_loose_weather(
    colony: Any, mean_c: float, warmer: float
) -> None:
    today = samples.today(mean_c=mean_c, max_c=mean_c + warmer, night_c=mean_c - 2.0)
    far = out_of_reach(colony, today, BIO)
    assert 0.0 <= far <= colony.ripe
    if mean_c >= BIO.reach_loose_c:
        assert far == 0.0


def wintering(bees: float, mean_c: float) -> NDArray[np.void]:
    """Colonies without brood through forty days of even weather, their stores beside them."""
    colonies = samples.usual(members=40, bees=bees, brood=0.0, stores=6.0)
    for stage in ("eggs", "larvae", "sealed"):
        colonies[stage] = 0.0
    colonies["far"] = 0.97 * colonies["ripe"]
    weather = even_days(40, day=10, mean_c=mean_c, hours=0.0, pollen=0.0)
    run(colonies, weather, samples.chance(2, 40, 40))
    return colonies


@pytest.mark.compiled
def test_a_small_cluster_starves_beside_its_stores_in_lasting_cold_alone() -> None:
    cold, mild = wintering(1.6, 0.0), wintering(1.6, 12.0)
    assert np.mean(cold["lost_to"] == HUNGER) > 0.5
    assert observe.stores_kg(cold).mean() > 3.0
    assert not (mild["lost_to"] == HUNGER).any()

"""Adult workers: who lives, who flies, who stays for the winter."""

from datetime import date
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from tests.simulation import samples

from combwright.evidence.simulated_colonies import even_days
from combwright.simulation import observe
from combwright.simulation.columns import QUEENLESS
from combwright.simulation.run import run
from combwright.simulation.step.adults import (
    ageing_winter_bees,
    hours_out,
    long_lived_share,
    nursing_load,
    recruitment,
    resting,
    survival,
    turning,
)
from combwright.simulation.step.warmth import brood_of

BIO = samples.numbers()
Hours = st.floats(0, 14)
Loads = st.floats(0.0, 2.0)


@given(samples.colonies(), Hours, st.floats(0, 100))
def test_survival_is_a_share_and_mites_cost_lives(colony: Any, hours: float, heat: float) -> None:
    today = samples.today(flight=hours)
    now = survival(colony, brood_of(colony), today, heat, BIO)
    assert all(0.0 <= share <= 1.0 for share in now)
    colony.hurt_nest = colony.hurt_winter = 0.0
    whole = survival(colony, brood_of(colony), today, heat, BIO)
    assert all(hurt <= well for hurt, well in zip(now, whole, strict=True))


@given(samples.colonies(), Hours)
def test_no_more_bees_change_than_there_are(colony: Any, hours: float) -> None:
    turned = recruitment(colony, turning(hours, BIO), BIO)
    assert -BIO.turn_back_most * colony.foragers <= turned <= colony.nest
    colony.nest = colony.foragers = 0.0
    assert recruitment(colony, turning(hours, BIO), BIO) == 0.0


@given(Loads, Loads)
def test_the_fewer_larvae_a_bee_feeds_the_likelier_it_lives_long(one: float, other: float) -> None:
    few, many = sorted((one, other))
    assert 0.0 <= long_lived_share(many, BIO) <= long_lived_share(few, BIO) <= 1.0


@given(samples.colonies())
def test_no_more_bees_rest_or_age_than_there_are_and_none_age_without_larvae(colony: Any) -> None:
    load = nursing_load(colony, BIO)
    assert 0.0 <= resting(colony, long_lived_share(load, BIO), BIO) <= colony.nest
    assert 0.0 <= ageing_winter_bees(colony, load, BIO) <= colony.winter
    assert ageing_winter_bees(colony, 0.0, BIO) == 0.0


@given(Hours, Hours)
def test_a_longer_day_keeps_a_forager_out_longer_but_never_beyond_her_most(
    one: float, other: float
) -> None:
    short, long = sorted((one, other))
    assert hours_out(short, BIO) <= hours_out(long, BIO) <= min(long, BIO.hours_out)


def summer(*, queenless: bool) -> NDArray[np.void]:
    colonies = samples.usual(members=30, bees=11.0, brood=7.0, stores=20.0, on=date(2026, 6, 20))
    if queenless:
        colonies["queen"] = QUEENLESS
        for stage in ("eggs", "larvae"):
            colonies[stage] = 0.0
    colonies["swarm_readiness"] = 0.0
    run(
        colonies,
        even_days(35, day=171, mean_c=15.0, hours=5.0, nectar=0.4),
        samples.chance(1, 30, 35),
    )
    return colonies


@pytest.mark.compiled
def test_bees_without_brood_to_rear_live_long_even_in_june() -> None:
    without, reared = summer(queenless=True), summer(queenless=False)
    assert np.median(without["winter"] / observe.adults(without)) > 0.5
    assert np.median(reared["winter"] / observe.adults(reared)) < 0.05

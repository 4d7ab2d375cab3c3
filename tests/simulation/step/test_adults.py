"""Adult workers: who lives, who flies, who stays for the winter."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st
from tests.simulation import samples

from combwright.simulation.step.adults import (
    ageing_winter_bees,
    recruitment,
    survival,
    winter_share,
)

BIO = samples.numbers()
Hours = st.floats(0, 14)


@given(samples.colonies(), Hours)
def test_survival_is_a_share_and_mites_cost_lives(colony: Any, hours: float) -> None:
    now = survival(colony, hours, BIO)
    assert all(0.0 <= share <= 1.0 for share in now)
    colony.hurt_nest = colony.hurt_winter = 0.0
    whole = survival(colony, hours, BIO)
    assert all(hurt <= well for hurt, well in zip(now, whole, strict=True))


@given(samples.colonies(), Hours)
def test_no_more_bees_change_than_there_are(colony: Any, hours: float) -> None:
    turned = recruitment(colony, hours, BIO)
    assert -BIO.turn_back_most * colony.foragers <= turned <= colony.nest
    colony.nest = colony.foragers = 0.0
    assert recruitment(colony, hours, BIO) == 0.0


@given(st.floats(61, 366), st.floats(0, 60))
def test_the_later_in_the_year_the_more_winter_bees(day: float, later: float) -> None:
    assert 0.0 <= winter_share(day, BIO) <= winter_share(min(366.0, day + later), BIO) <= 1.0


@given(samples.colonies(), st.floats(1, 366))
def test_winter_bees_age_in_spring_only(colony: Any, day: float) -> None:
    ageing = ageing_winter_bees(colony, day, BIO)
    assert 0.0 <= ageing <= colony.winter
    if day <= BIO.winter_ageing_from or day > BIO.winter_ageing_until:
        assert ageing == 0.0

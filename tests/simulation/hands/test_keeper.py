"""A keeper by rules of thumb: what is done to whom, and that both variants share their luck."""

import numpy as np
import pytest
from tests.simulation import samples

from combwright.simulation import observe
from combwright.simulation.hands.keeper import Keeping, Kept, keep
from combwright.simulation.luck import luck
from combwright.terms.set_up import SetUp

MEMBERS, DAYS = 30, 240
STAND = SetUp(frames=11)


def kept(keeping: Keeping, *, members: int = MEMBERS, mites: float = 40.0) -> Kept:
    return keep(
        samples.usual(members=members, mites=mites),
        samples.TIMBER,
        STAND,
        samples.dublin()[:, :DAYS],
        luck(2, "kept", samples.SPRING, DAYS, members),
        first=samples.SPRING,
        keeping=keeping,
        seed=2,
    )


USUAL = kept(Keeping())


def test_the_same_keeper_gives_the_same_season() -> None:
    again = kept(Keeping())
    assert (again.trace.values == USUAL.trace.values).all()


def test_feeding_some_colonies_does_not_change_the_luck_of_others() -> None:
    hungry = kept(Keeping(feeding="none"))
    not_yet_fed = USUAL.sugar_given_kg[30] == 0.0
    assert 0 < not_yet_fed.sum() < MEMBERS
    for name in ("adults", "mites", "gathered_g", "eggs_laid"):
        same = hungry.trace[name][:30, not_yet_fed] == USUAL.trace[name][:30, not_yet_fed]
        assert same.all(), name


def test_who_is_not_fed_is_given_nothing_and_more_of_them_starve() -> None:
    hungry = kept(Keeping(feeding="none"))
    assert (hungry.sugar_given_kg == 0.0).all()
    assert (hungry.trace["syrup_taken_g"] == 0.0).all()
    assert (USUAL.sugar_given_kg[-1] > 0.0).all()
    assert np.median(hungry.trace["adults"][60]) < np.median(USUAL.trace["adults"][60])


def test_a_full_feeder_leaves_less_room_in_spring_than_portions() -> None:
    flooded = kept(Keeping(feeding="full feeder"))
    spring = slice(25, 60)
    assert np.median(flooded.trace["room_cells"][spring]) < np.median(
        USUAL.trace["room_cells"][spring]
    )


def test_honey_is_taken_once_in_august_and_only_from_supers() -> None:
    taken = USUAL.honey_taken_kg
    days = np.flatnonzero(np.diff(taken.max(axis=1)) > 0.0)
    assert len(days) == 1
    assert 140 < days[0] < 150
    without = kept(Keeping(supers=False))
    assert (without.honey_taken_kg == 0.0).all()


def test_enough_is_left_to_the_bees_in_august() -> None:
    day = int(np.flatnonzero(np.diff(USUAL.honey_taken_kg.max(axis=1)) > 0.0)[0]) + 1
    took = USUAL.honey_taken_kg[day] > 1.0
    left = USUAL.trace["sugar_g"][day] / 1000.0 / observe.SUGAR_IN_HONEY
    assert took.any()
    assert (left[took] > 7.0).all()


def test_untreated_colonies_have_more_mites_in_autumn() -> None:
    untreated = kept(Keeping(treating="none"))
    assert np.median(untreated.trace["mites"][-1]) > 2.0 * np.median(USUAL.trace["mites"][-1])


def test_without_swarm_control_more_swarms_leave() -> None:
    careless = kept(Keeping(swarm_control=False))
    assert careless.trace["swarms"][-1].mean() > USUAL.trace["swarms"][-1].mean() + 0.1


@pytest.mark.parametrize("feeding", ["portions", "full feeder", "none"])
def test_sugar_is_never_taken_that_was_not_given(feeding: str) -> None:
    season = kept(Keeping(feeding=feeding))  # type: ignore[arg-type]
    given = season.sugar_given_kg[-1] * 1000.0 / 0.6
    assert (season.trace["syrup_taken_g"][-1] <= given + 1.0).all()

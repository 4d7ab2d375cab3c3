"""What keepers know of food and room: amounts from common practice, unless a source is named."""

from datetime import date

import numpy as np
import pytest
from numpy.typing import NDArray
from tests.simulation import samples

from combwright.evidence.simulated_colonies import even_days
from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import Described, begin
from combwright.simulation.hands import actions
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.set_up import SetUp

SYRUP = 0.6
NUC = SetUp(hive="nuc 6 polystyrene", frames=6)
AVERAGE = date(2026, 4, 25)


def spring(set_up: SetUp, bees: float, brood: float, on: date) -> NDArray[np.void]:
    return begin(
        catalogue().hive(set_up.hive),
        set_up,
        Described(frames_of_bees=bees, frames_of_brood=brood, stores_kg=4.0, has_queen=True),
        on=on,
        members=200,
        seed=5,
        colony="trade",
    )


def average() -> NDArray[np.void]:
    return spring(SetUp(frames=9, dummy_boards=1), 7.0, 4.5, AVERAGE)


@pytest.mark.parametrize(
    ("set_up", "bees", "brood", "on", "mean_c", "use"),
    [
        (SetUp(frames=11), 11.0, 8.0, date(2026, 5, 15), 12.0, (500, 700)),
        (SetUp(frames=9, dummy_boards=1), 7.0, 4.5, AVERAGE, 10.0, (300, 500)),
        (NUC, 3.5, 2.0, date(2026, 5, 5), 11.0, (150, 200)),
    ],
    ids=["strong", "average", "nuc"],
)
def test_what_a_colony_uses_a_day_without_a_flow(
    *, set_up: SetUp, bees: float, brood: float, on: date, mean_c: float, use: tuple[int, int]
) -> None:
    """As 60 % syrup, in the middle of the ensemble."""
    colonies = spring(set_up, bees, brood, on)
    first = on.timetuple().tm_yday
    for day in range(5):
        actions.feed(colonies, 450.0, SYRUP)
        weather = even_days(1, day=first + day, mean_c=mean_c, hours=4.0)
        run(colonies, weather, luck(5, "trade", on, 1, 200))
    assert use[0] <= np.median(colonies["used"]) / SYRUP <= use[1]


def test_two_and_a_half_litres_at_once_are_taken_in_two_days_and_cost_the_queen_room() -> None:
    room: dict[float, list[float]] = {}
    taken = []
    for grams in (0.0, 3200.0):
        colonies = average()
        actions.feed(colonies, grams, SYRUP)
        room[grams] = []
        for day in range(7):
            weather = even_days(1, day=115 + day, mean_c=11.0, hours=4.0)
            run(colonies, weather, luck(5, "trade", AVERAGE, day + 1, 200)[:, day : day + 1])
            room[grams].append(float(np.median(colonies["room"])))
            if grams:
                taken.append(float(np.median(colonies["taken_down"])))
    assert taken[1] > 0.7 * 3200
    assert taken[2] == pytest.approx(3200, rel=0.05)
    without, fed = np.array(room[0.0]), np.array(room[3200.0])
    assert fed[0] == without[0]  # room is what there was in the morning
    assert (fed[2:4] < 0.75 * without[2:4]).all()
    assert (fed[1:] < without[1:]).all()


def test_what_is_fed_to_one_colony_leaves_the_luck_of_others_alone() -> None:
    days = samples.dublin()[:, :60]
    alone, beside, fed = (samples.usual(members=20, seed=s) for s in (1, 1, 2))
    run(alone, days, luck(3, "one", samples.SPRING, 60, 20))
    actions.feed(fed, 5000.0, SYRUP)
    both = np.concatenate([beside, fed])
    run(both, days, luck(3, "one", samples.SPRING, 60, 20))
    for name in ("nest", "laid_total", "gathered_total", "mites", "queen"):
        assert (both[:20][name] == alone[name]).all(), name


def test_feeding_changes_nothing_but_what_feed_does() -> None:
    """Two plans share their luck: where both have the same food, they are the same."""
    days = samples.dublin()[:, :30]
    chance = luck(3, "one", samples.SPRING, 30, 20)
    fed, not_fed = samples.usual(members=20), samples.usual(members=20)
    actions.feed(fed, 1000.0, SYRUP)
    actions.empty_feeder(fed)
    run(fed, days, chance)
    run(not_fed, days, chance)
    assert (fed == not_fed).all()


def test_syrup_is_not_taken_from_a_cold_feeder_but_fondant_is() -> None:
    cold = even_days(3, day=60, mean_c=1.0)
    cold[:, :, 2] = 4.0
    for share, least in ((SYRUP, 0.0), (0.85, 500.0)):
        colonies = samples.usual(members=10, on=date(2026, 3, 1))
        actions.feed(colonies, 2500.0, share)
        run(colonies, cold, samples.chance(1, 10, 3))
        taken = colonies["taken_down"]
        assert (taken > least).all() if least else (taken == 0.0).all()


def test_a_colony_without_food_dies_within_ten_days() -> None:
    colonies = samples.usual(members=10, stores=0.05)
    before = observe.adults(colonies)
    run(colonies, even_days(10, day=80, mean_c=8.0), samples.chance(2, 10, 10))
    assert (observe.adults(colonies) < 0.05 * before).all()

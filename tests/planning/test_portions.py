"""Portions on simulated colonies without a flow, 60 % syrup, against figures of the trade.

Every figure here is common practice of keepers, without a published source.
"""

from datetime import date

import numpy as np
import pytest
from tests.planning import standing
from tests.planning.standing import Kind, situation

from combwright.advice.decisions.food import food
from combwright.simulation.hands.actions import feed
from combwright.simulation.run import run

# The trade's portions are for colonies that live from hand to mouth: on what they need by then.
FROM_HAND_TO_MOUTH = ((standing.STRONG, 3.4), (standing.AVERAGE, 2.3), (standing.NUC, 1.15))
STRONG, AVERAGE, NUC = (kind._replace(stores_kg=kg) for kind, kg in FROM_HAND_TO_MOUTH)


def portion_g(kind: Kind, days: int, on: date) -> int:
    asked = situation(kind, days=days, on=on)
    return food(asked, asked.standing.set_up).portion.grams


@pytest.mark.parametrize("on", [date(2027, 4, 24), date(2027, 5, 15)])
@pytest.mark.parametrize(
    ("kind", "low", "high"), [(STRONG, 500, 700), (AVERAGE, 300, 500), (NUC, 150, 200)]
)
def test_a_day_s_portion_grows_with_strength(kind: Kind, low: int, high: int, on: date) -> None:
    assert low <= portion_g(kind, 1, on) <= high


@pytest.mark.parametrize("kind", [STRONG._replace(stores_kg=3.3), AVERAGE, NUC])
@pytest.mark.parametrize("days", [2, 3])
def test_a_visit_every_so_many_days_gives_so_many_portions(kind: Kind, days: int) -> None:
    on = date(2027, 4, 24)
    assert portion_g(kind, days, on) == pytest.approx(days * portion_g(kind, 1, on), rel=0.1)


def test_use_is_what_the_portion_follows() -> None:
    asked = situation(AVERAGE, days=3)
    decided = food(asked, asked.standing.set_up)
    assert decided.portion.per_day_g == pytest.approx(decided.inputs["use_g_a_day"], abs=25)


def test_nothing_is_given_to_a_colony_well_above_its_reserve() -> None:
    asked = situation(AVERAGE._replace(stores_kg=8.0), days=3)
    given = food(asked, asked.standing.set_up).portion
    assert (given.grams, given.days, given.sugar_fraction) == (0, 0, 0.0)


def test_less_is_given_where_nectar_comes_in() -> None:
    asked = situation(AVERAGE, days=3)
    asked.conditions[:, :, 4] = 0.5  # nectar, half of the district's best
    with_flow = food(asked, asked.standing.set_up).portion
    assert with_flow.per_day_g < portion_g(AVERAGE, 1, asked.on)


def test_two_and_a_half_litres_at_once_are_taken_and_cost_room() -> None:
    """Trade: an average colony takes them within about two days, and the queen loses room."""
    asked = situation(AVERAGE, days=7)
    fed, unfed = asked.colonies.copy(), asked.colonies.copy()
    grams = 2.5 * 1287.0
    feed(fed, grams, 0.6, warmer_k=10.0)
    left = []
    for day in range(3):
        ahead = slice(day, day + 1)
        run(fed, asked.conditions[:, ahead], asked.luck[:, ahead])
        run(unfed, asked.conditions[:, ahead], asked.luck[:, ahead])
        left.append(float(np.median(fed["feeder"])) / 0.6 / grams)
    assert left[1] < 0.33
    assert left[2] < 0.10
    lost = 1.0 - np.median(fed["room"]) / np.median(unfed["room"])
    assert lost > 0.15

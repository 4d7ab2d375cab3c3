"""Days that went otherwise than the model says."""

from functools import cache
from typing import Any

import numpy as np
import pytest
from tests.belief.samples import day, enters, replay

from combwright.belief.numbers import number
from combwright.belief.weighing.otherwise import DIFFER, OWN, gone_otherwise
from combwright.simulation import observe


@cache
def colonies() -> Any:  # noqa: ANN401  # records
    followed = replay(enters(), members=2000).follow("Sorrel", day(7))
    assert followed is not None
    made = followed.belief.colonies.copy()
    made["ripe"], made["super_ripe"] = 4000.0, 0.0
    return made


def after(days: float, wider: float = 1.0) -> Any:  # noqa: ANN401  # records
    return gone_otherwise(colonies(), days, np.random.default_rng(1), wider=wider)


def test_food_that_went_as_it_goes_with_robbers_counts_as_robbed_and_no_other() -> None:
    moved = after(14.0, 2.0)
    left = moved["ripe"] / colonies()["ripe"]
    robbed = moved["robbed"] > colonies()["robbed"]
    assert robbed.any()
    assert (robbed == (left < number("robbed_left_high"))).all()


def test_little_food_that_is_gone_was_eaten() -> None:
    poor = colonies().copy()
    poor["ripe"] = 800.0
    assert (gone_otherwise(poor, 28.0, np.random.default_rng(1), wider=2.0)["robbed"] == 0.0).all()


@pytest.mark.parametrize("quantity", [observe.adults, observe.brood, observe.stores_kg])
def test_nobody_goes_quite_as_the_model_says_and_few_go_far(quantity: Any) -> None:  # noqa: ANN401
    before = quantity(colonies())
    off = np.abs(np.log(quantity(after(7.0)) / before))
    assert (off > 0.0).all()
    assert np.quantile(off, 0.5) < 0.1 < np.quantile(off, 0.98)


def test_more_days_and_surprises_move_further() -> None:
    spread = [np.std(np.log(after(*more)["nest"])) for more in ((7.0,), (21.0,), (21.0, 2.0))]
    assert spread == sorted(spread)


def test_own_parameters_stay_what_a_colonys_can_be_over_years_without_news() -> None:
    """Two hundred notes that tell nothing, some four years of them, leave what was drawn before."""
    moved, rng = colonies(), np.random.default_rng(2)
    for _ in range(200):
        moved = gone_otherwise(moved, 7.0, rng)
    for trait, differ in DIFFER.items():
        logs, wrong = np.log(moved[trait]), number(OWN[trait]) if trait in OWN else 0.0
        most = float(np.hypot(differ, wrong))
        assert 0.8 * differ < np.std(logs) <= 1.1 * most, trait
        assert abs(np.mean(logs) + 0.5 * differ**2) < 0.1 * most, trait

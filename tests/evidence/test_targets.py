"""The targets of a life are quantities that a life gives, with bands that mean something."""

import pytest
from pydantic import ValidationError

from combwright.evidence.simulated_lives import live, seen
from combwright.evidence.targets import Target, targets
from combwright.simulation.biology import BIOLOGY


def test_every_target_is_a_quantity_of_a_life() -> None:
    life, _ = live("Dublin Airport", worlds=(BIOLOGY, BIOLOGY), colonies=10, years=1)
    assert set(targets()) <= set(seen(life, 1))


def test_some_targets_are_held_out_and_most_are_not() -> None:
    held = [name for name, target in targets().items() if target.held_out]
    assert 5 <= len(held) < len(targets()) / 2


def test_a_value_in_the_middle_holds_and_one_beyond_the_edge_does_not() -> None:
    target = targets()["bees_november"]
    assert target.holds(13000.0)
    assert target.off(target.high) == pytest.approx(1.0)
    assert not target.holds(target.high + 1.0)


def test_a_band_the_wrong_way_round_is_refused() -> None:
    with pytest.raises(ValidationError, match="least of a band"):
        Target(says="x", unit="kg", low=2.0, high=1.0, source="y", verified="read")


def test_colonies_of_two_worlds_differ_as_the_worlds_do() -> None:
    worlds = (BIOLOGY, BIOLOGY._replace(winter_death=2.0 * BIOLOGY.winter_death))
    usual, hard = live("Dublin Airport", worlds=worlds, colonies=10, years=1)
    assert seen(hard, 1)["bees_march"] < seen(usual, 1)["bees_march"]

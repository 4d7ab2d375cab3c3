"""Worlds that colonies may live in."""

import numpy as np
from tests.simulation import samples

from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY, PARAMETERS
from combwright.simulation.run import run
from combwright.simulation.worlds import worlds


def test_there_are_enough_of_them_and_no_two_alike() -> None:
    assert 20 <= len(worlds()) <= 60
    assert len(set(worlds())) == len(worlds())


def test_every_number_of_every_world_lies_in_its_range() -> None:
    for world in worlds():
        for name, parameter in PARAMETERS.items():
            assert parameter.low <= getattr(world, name) <= parameter.high, name


def test_they_differ_in_what_was_searched_alone() -> None:
    moved = {
        name
        for world in worlds()
        for name in PARAMETERS
        if getattr(world, name) != getattr(BIOLOGY, name)
    }
    assert {"lay_peak", "winter_death", "nectar_per_hour"} <= moved
    assert not {"leave_worker", "swarm_hazard"} & moved


def test_colonies_of_many_worlds_differ_more_than_those_of_one() -> None:
    """After two months from one start, with the same weather and luck in all."""
    count = len(worlds())
    spread = []
    for world in (np.arange(count, dtype=np.float64), np.zeros(count)):
        colonies = np.repeat(samples.usual(members=1), count)
        colonies["world"] = world
        run(colonies, samples.dublin()[:1, :60], samples.chance(5, 1, 60), worlds=worlds())
        spread.append(float(np.std(observe.adults(colonies))))
    assert spread[0] > 500.0
    assert spread[1] < 1e-6

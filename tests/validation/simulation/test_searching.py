"""Waves of worlds, on a world whose answers are known."""

import numpy as np
import pytest
from numpy.typing import NDArray
from tests.validation.simulation.searching import WorldsTried, next_wave
from tests.validation.simulation.trying import FREE, cells

from combwright.evidence.targets import targets

EVERY = [*cells(held_out=False), *cells(held_out=True)]


def made_up(unit: NDArray[np.float64]) -> WorldsTried:
    """Worlds of which each cell shows the edge of its band where one number is at an end."""
    found = {}
    for count, cell in enumerate(EVERY):
        target = targets()[cell[1]]
        off = 4.0 * (unit[:, count % len(FREE)] - 0.5)
        found[cell] = (target.low + target.high) / 2.0 + off * (target.high - target.low) / 2.0
    return WorldsTried(unit, found, dict.fromkeys(EVERY, 0.0))


@pytest.fixture(scope="module")
def first() -> WorldsTried:
    return made_up(np.random.default_rng(1).random((300, len(FREE))))


def test_the_middle_fits_and_the_ends_do_not() -> None:
    places = np.array([np.full(len(FREE), 0.5), np.ones(len(FREE))])
    assert made_up(places).fits().tolist() == [True, False]


def test_a_wave_stays_in_the_ranges_and_lies_nearer_to_what_fits(first: WorldsTried) -> None:
    wave = next_wave(first, 50, np.random.default_rng(2))
    assert wave.shape == (50, len(FREE))
    assert ((wave >= 0.0) & (wave <= 1.0)).all()
    was, now = (np.median(one.implausible().mean(axis=1)) for one in (first, made_up(wave)))
    assert now < 0.8 * was


def test_what_is_held_out_moves_no_wave(first: WorldsTried) -> None:
    found = {**first.found, **{cell: first.found[cell] + 1e6 for cell in cells(held_out=True)}}
    other = WorldsTried(first.unit, found, first.chance)
    waves = [next_wave(one, 20, np.random.default_rng(3)) for one in (first, other)]
    assert (waves[0] == waves[1]).all()
    assert (first.fits() == other.fits()).all()


def test_worlds_are_joined_and_the_best_come_first(first: WorldsTried) -> None:
    middle = made_up(np.full((1, len(FREE)), 0.5))
    both = first + middle
    assert both.best_first()[0] == len(first.unit)
    best = both.some(both.best_first()[:2])
    assert (best.unit[0] == middle.unit[0]).all()
    assert len(best.found[EVERY[0]]) == 2

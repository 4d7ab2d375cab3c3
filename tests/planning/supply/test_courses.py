"""Nucs that stand live on: with a ripe cell as many come to lay as were counted at Sheffield."""

from dataclasses import replace

import numpy as np
import pytest
from tests.planning.standing import NUC, ON, situation, without_flow

from combwright.advice.season_ahead import SeasonDays
from combwright.advice.situation import Situation
from combwright.planning.supply.courses import MEMBERS, nuc_course
from combwright.simulation.columns import CELL, VIRGIN
from combwright.weather.conditions import MATING

WEEKS = 5


def nuc(queen: float, clock: float) -> Situation:
    """Give a nuc with a queen still to mate, in weather in which every day is fit for it."""
    stood = situation(NUC, days=7)
    colonies = stood.colonies.copy()
    colonies["queen"], colonies["queen_clock"] = queen, clock
    fine = without_flow(ON, 7 * WEEKS + 1)
    fine[:, :, MATING] = 1.0
    every = np.zeros(len(colonies), np.intp)
    season = SeasonDays(fine, every)
    return replace(stood, colonies=colonies, season=season, known_swarm_loss=0.0)


def lays(queen: float, clock: float) -> float:
    return float(nuc_course(nuc(queen, clock), "Yard", WEEKS).laying[:, -1].mean())


def test_a_cell_may_fail_before_she_flies_and_a_virgin_only_in_mating() -> None:
    """Pérez-Sato & Ratnieks 2006: 70 % of ripe cells lay, 87.5 % of those alive to fly."""
    spread = 2.0 * (0.7 * 0.3 / MEMBERS) ** 0.5
    assert lays(CELL, 14.0) == pytest.approx(0.70, abs=spread)
    assert lays(VIRGIN, 1.0) == pytest.approx(0.875, abs=spread)
    assert lays(CELL, 14.0) < lays(VIRGIN, 1.0)

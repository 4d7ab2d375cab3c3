"""Scores; exact values of Gneiting & Raftery's forms, and the package scoringrules."""

from datetime import date, timedelta

import numpy as np
import pytest
import scoringrules
from hypothesis import given
from hypothesis import strategies as st

from combwright.belief.scoring import LADDER, Scored, crps, straight_trend

MEMBERS = st.lists(st.floats(-100, 100), min_size=2, max_size=40).map(np.array)


@pytest.mark.parametrize(
    ("seen", "plain", "fair"), [(3, 2 / 3, 1 / 3), (0, 5 / 3, 4 / 3), (2, 1 / 3, 0)]
)
def test_published_values(seen: float, plain: float, fair: float) -> None:
    members = np.array([1.0, 2.0, 4.0])
    assert crps(members, seen, fair=False) == pytest.approx(plain)
    assert crps(members, seen) == pytest.approx(fair, abs=1e-12)


def test_five_members() -> None:
    members = np.array([12.1, 9.8, 15.4, 11.0, 10.3])
    assert crps(members, 13.0, fair=False) == pytest.approx(1.2)
    assert crps(members, 13.0) == pytest.approx(0.94)


@given(MEMBERS, st.floats(-100, 100))
def test_scoringrules_agrees(members: np.ndarray, seen: float) -> None:
    fair = scoringrules.crps_ensemble(seen, members, estimator="fair")
    plain = scoringrules.crps_ensemble(seen, members, estimator="nrg")
    assert crps(members, seen) == pytest.approx(float(fair), abs=1e-9)
    assert crps(members, seen, fair=False) == pytest.approx(float(plain), abs=1e-9)


def test_a_ladder_of_quantiles_scores_as_its_distribution() -> None:
    ladder = np.quantile(np.random.default_rng(1).standard_normal(200_000), LADDER)
    assert crps(ladder, 0.0, fair=False) == pytest.approx(0.23369497725510913, abs=0.002)


def test_one_number_scores_as_its_distance() -> None:
    assert crps(np.array([4.0]), 6.5) == 2.5


@given(MEMBERS, st.floats(0.1, 0.5))
def test_a_wider_band_covers_more(members: np.ndarray, share: float) -> None:
    ladder = np.sort(members)
    score = Scored(
        "a", date(2025, 5, 1), "stores_kg", float(ladder[len(ladder) // 2]), ladder, None
    )
    assert score.within(share) <= score.within(2 * share)


@given(st.floats(0, 10), st.floats(-1, 1), st.integers(1, 20), st.integers(1, 20))
def test_a_straight_line_goes_on_straight(start: float, slope: float, gap: int, lead: int) -> None:
    first = date(2025, 5, 1)
    notes = [(first, start), (first + timedelta(days=gap), start + slope * gap)]
    found = straight_trend(notes, first + timedelta(days=gap + lead))
    assert found == pytest.approx(max(0.0, start + slope * (gap + lead)), abs=1e-9)


def test_no_line_through_one_note_or_old_ones() -> None:
    first = date(2025, 5, 1)
    assert straight_trend([(first, 3.0)], first + timedelta(days=7)) is None
    notes = [(first, 3.0), (first + timedelta(days=7), 4.0)]
    assert straight_trend(notes, first + timedelta(days=90)) is None

"""Scores; exact values of Gneiting & Raftery's forms, and the package scoringrules."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.belief.samples import entry
from tests.simulation.samples import usual

from combwright.belief.following.causes import Since
from combwright.belief.scoring import (
    LADDER,
    SCORED,
    Scored,
    crps,
    ladder_of,
    noted,
    score,
    straight_trend,
)
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.filter import Belief
from combwright.simulation import observe
from combwright.terms.entries import Visit

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
    import scoringrules  # compiles itself for seconds

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


def test_a_line_downwards_ends_at_nothing_and_two_notes_of_one_day_make_none() -> None:
    first = date(2025, 5, 1)
    falling = [(first, 4.0), (first + timedelta(days=7), 1.0)]
    assert straight_trend(falling, first + timedelta(days=14)) == 0.0
    assert straight_trend([(first, 4.0), (first, 1.0)], first + timedelta(days=7)) is None


def test_frames_of_stores_count_where_no_weight_was_noted() -> None:
    assert noted(entry(Visit, 0, frames_of_stores=3), 2.2) == {"stores_kg": pytest.approx(6.6)}
    assert noted(entry(Visit, 0, frames_of_stores=3, stores_kg=5), 2.2) == {"stores_kg": 5.0}
    assert noted(entry(Visit, 0, eggs=True), 2.2) == {}


def believed() -> Belief:
    colonies = usual(members=200)
    shared = draw_shared(200, 5, np.random.default_rng(1))
    since = Since.now(colonies)
    first = date(2026, 3, 20)
    return Belief("Sorrel", first, colonies, shared, (since, since), first)


def test_each_quantity_seen_is_held_against_its_forecast_and_two_rules_of_thumb() -> None:
    visit = entry(Visit, 7, frames_of_bees=7, stores_kg=4)
    earlier = {"stores_kg": [(visit.on - timedelta(days=14), 6.0)]}
    earlier["stores_kg"].append((visit.on - timedelta(days=7), 5.0))
    bees, stores = score(believed(), [visit], earlier, 2.2, seed=3)
    assert (bees.quantity, bees.seen, bees.last_time, bees.trend) == (
        "frames_of_bees",
        7,
        None,
        None,
    )
    assert (stores.quantity, stores.seen, stores.last_time, stores.trend) == ("stores_kg", 4, 5, 4)
    counted = {"frames_of_bees", "seams_of_bees", "frames_of_brood", "combs_with_brood"}
    assert set(SCORED) == {*counted, "stores_kg"}


def test_the_forecast_is_what_the_keeper_would_note_eye_and_slips_included() -> None:
    belief, visit = believed(), entry(Visit, 7, frames_of_bees=7)
    (found,) = score(belief, [visit], {}, 2.2, seed=3)
    true = observe.frames_of_bees(belief.colonies)
    assert np.median(found.ladder) == pytest.approx(np.median(true), rel=0.1)
    low, high = np.quantile(found.ladder, (0.1, 0.9))
    assert high - low > np.subtract(*np.quantile(true, (0.9, 0.1)))
    assert (np.diff(found.ladder) >= 0).all()


def test_a_score_is_the_same_every_time() -> None:
    visits = [entry(Visit, 7, frames_of_bees=7, stores_kg=4)]
    once, again = (score(believed(), visits, {}, 2.2, seed=3) for _ in range(2))
    assert [one.crps for one in once] == [one.crps for one in again]
    assert [one.crps for one in once] != [one.crps for one in score(believed(), visits, {}, 2.2, 4)]


@given(st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=60))
def test_a_ladder_is_of_numpys_quantiles_to_the_last_digit(values: list[float]) -> None:
    told = np.array(values)
    assert np.array_equal(ladder_of(told), np.quantile(told, LADDER))

"""One note: what is offered, what is picked, and what the note was worth."""

from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.belief.samples import Loose
from tests.simulation.samples import usual

from combwright.belief.following.causes import CAUSES, ELSE_CHANCE, Since
from combwright.belief.sharing.shared import draw_shared
from combwright.belief.weighing.filter import LEAST_LOG, Belief, offer, update
from combwright.simulation.columns import LAYING

MEMBERS = 80
NOBODY = usual(members=1)[:0]
JUNE, WINTER = date(2026, 6, 10), date(2026, 1, 10)


def belief(on: date = JUNE, *, days: int = 7, members: int = MEMBERS) -> Belief:
    colonies = usual(members=members)
    since = Since.now(colonies)
    shared = draw_shared(members, 5, np.random.default_rng(1))
    return Belief("Sorrel", on, colonies, shared, (since, since), on - timedelta(days=days))


def flat(worth: float) -> Loose:
    return lambda colonies, _shared, _fresh: np.full(len(colonies), worth)


def told(before: Belief, likely: Loose, fresh: Loose = NOBODY) -> Belief:
    return update(before, likely, fresh, versions=5, seed=7)


@given(st.dates(date(2026, 1, 1), date(2026, 12, 31)), st.integers(0, 300), st.integers(0, 9))
@settings(max_examples=30)
def test_chances_of_all_that_is_offered_make_one(on: date, days: int, begun: int) -> None:
    before = belief(on, days=days)
    now = offer(before, usual(members=begun + 1)[:begun], np.random.default_rng(2))
    each = np.exp(now.log_prior)
    assert each.sum() == pytest.approx(1.0)
    assert each[now.fresh].sum() == pytest.approx(ELSE_CHANCE if begun else 0.0)
    untold = [cause.within(on.timetuple().tm_yday, max(1.0, days)) for cause in CAUSES]
    as_it_is = 1.0 - sum(untold) - (ELSE_CHANCE if begun else 0.0)
    assert each[:MEMBERS].sum() == pytest.approx(as_it_is)


def test_every_member_is_offered_as_it_is_and_the_belief_itself_is_left_alone() -> None:
    before = belief()
    kept = before.colonies.copy()
    now = offer(before, NOBODY, np.random.default_rng(2))
    assert (now.colonies[:MEMBERS] == kept).all()
    assert (before.colonies == kept).all()
    assert len(now.colonies) == MEMBERS + len(CAUSES) * MEMBERS // 2


def test_no_swarm_is_thought_of_in_winter() -> None:
    now = offer(belief(WINTER), NOBODY, np.random.default_rng(2))
    assert (now.colonies["swarmed"] == 0.0).all()
    assert (offer(belief(), NOBODY, np.random.default_rng(2)).colonies["swarmed"] > 0.0).any()


@given(st.floats(-50.0, 5.0))
@settings(max_examples=10)
def test_a_note_as_likely_from_every_colony_is_worth_just_that(worth: float) -> None:
    assert told(belief(), flat(worth)).log_evidence == pytest.approx(worth, abs=1e-9)


def test_what_notes_are_worth_adds_up() -> None:
    once = told(belief(), flat(-1.5))
    again = told(replace(once, on=once.on + timedelta(days=7)), flat(-2.0))
    assert again.log_evidence == pytest.approx(-3.5)


def test_a_note_moves_the_belief_as_far_as_bayes_says() -> None:
    """Logarithms of mites are near to normal, and so is this note: the answer is known."""
    before, error = belief(WINTER, members=2000), 0.4
    logs = np.log(before.colonies["mites"])
    middle, sd = logs.mean(), logs.std()
    said = middle + sd

    def mites(colonies: Loose, _shared: Loose, _fresh: Loose) -> Loose:
        return -0.5 * ((np.log(colonies["mites"]) - said) / error) ** 2

    after = told(before, mites)
    found = np.log(after.colonies["mites"])
    trust = sd**2 / (sd**2 + error**2)
    assert found.mean() == pytest.approx(middle + trust * (said - middle), abs=0.04)
    assert found.std() == pytest.approx(error * trust**0.5, rel=0.08)
    assert after.members == len(np.unique(after.colonies["mites"])) == 2000


def test_a_note_that_speaks_of_a_lost_queen_raises_the_chance_of_one() -> None:
    def no_queen(colonies: Loose, _shared: Loose, _fresh: Loose) -> Loose:
        return np.where(colonies["queen"] == LAYING, -8.0, 0.0)

    assert told(belief(WINTER), no_queen).chances["queen lost"] > 0.9
    assert told(belief(WINTER), flat(0.0)).chances["queen lost"] < 0.1


def test_colonies_begun_from_the_note_win_where_no_other_explains_it() -> None:
    strangers = usual(members=40, bees=3.0, mites=900.0)

    def only_they(_colonies: Loose, _shared: Loose, fresh: Loose) -> Loose:
        return np.where(fresh, 0.0, -60.0)

    after = told(belief(), only_they, strangers)
    for what in ("mites", "winter"):
        known = np.median(strangers[what])
        assert np.median(after.colonies[what]) == pytest.approx(known, rel=0.2)
    assert after.log_evidence == pytest.approx(np.log(ELSE_CHANCE), abs=1.0)


@pytest.mark.parametrize("impossible", [-np.inf, np.nan])
def test_a_note_that_nothing_explains_leaves_a_belief_and_a_finite_worth(impossible: float) -> None:
    after = told(belief(), flat(impossible))
    assert after.members == MEMBERS
    assert after.log_evidence == LEAST_LOG


def test_the_note_before_last_is_remembered_and_then_forgotten() -> None:
    before = belief()
    after = told(before, flat(0.0))
    assert after.last_note == before.on
    assert (after.since[1].laying == (after.colonies["queen"] == LAYING)).all()
    assert len(after.since[0].laying) == MEMBERS


def test_the_same_seed_gives_the_same_belief_and_another_colony_has_luck_of_its_own() -> None:
    once, again = told(belief(), flat(0.0)), told(belief(), flat(0.0))
    assert (once.colonies == again.colonies).all()
    assert (once.shared == again.shared).all()
    other = told(replace(belief(), colony="Thyme"), flat(0.0))
    assert (other.colonies["mites"] != once.colonies["mites"]).any()


def test_a_thinned_belief_holds_every_third_member_with_all_that_is_its_own() -> None:
    before = belief()
    thin = before.every(3)
    assert thin.members == len(before.colonies[::3])
    assert (thin.colonies == before.colonies[::3]).all()
    assert (thin.shared == before.shared[::3]).all()
    assert (thin.since[0].swarms == before.since[0].swarms[::3]).all()
    thin.colonies["mites"] = 0.0
    assert (before.colonies["mites"] > 0.0).any()

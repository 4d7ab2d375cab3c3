"""What was done, done to the members of a belief: by its kind, with its own uncertainty."""

import numpy as np
import pytest
from tests.belief.samples import Loose, day, enters, entry, replay

from combwright.belief.following.acting import act
from combwright.belief.following.followed import Followed
from combwright.kit.catalogue import catalogue
from combwright.simulation.columns import LAYING
from combwright.terms.entries import Change, Feed, Queen, Stack, Treatment, Visit

BOOK = replay([*enters(), entry(Stack, 0, frames=9)])


@pytest.fixture
def followed() -> Followed:
    found = BOOK.follow("Sorrel", day(1))
    assert found is not None
    return found


def acted(followed: Followed, note: Loose) -> Loose:
    """Give copies of the members before and after a note."""
    before, after = (followed.belief.colonies.copy() for _ in range(2))
    act(note, after, followed.standing, catalogue(), np.random.default_rng(1))
    return before, after


def test_feed_is_in_the_feeder_about_as_weighed_and_gone_with_it(followed: Followed) -> None:
    _, fed = acted(followed, entry(Feed, 1, grams=1000, sugar_fraction=0.6))
    assert np.median(fed["feeder"]) == pytest.approx(600.0, rel=0.1)
    assert fed["feeder"].std() > 0.0
    _, bare = acted(followed, entry(Change, 1, part="feeder", count=-1))
    assert (bare["feeder"] == 0.0).all()


def test_a_brood_frame_brings_or_takes_sealed_brood_and_its_mites(followed: Followed) -> None:
    before, given = acted(followed, entry(Change, 1, part="brood frame", count=1))
    assert (given["sealed"].sum(axis=1) > before["sealed"].sum(axis=1)).all()
    _, taken = acted(followed, entry(Change, 1, part="brood frame", count=-1))
    assert (taken["sealed"].sum(axis=1) <= before["sealed"].sum(axis=1)).all()
    assert (taken["mites_worker"] <= before["mites_worker"]).all()
    assert (taken["sealed"] >= 0.0).all()


def test_a_treatment_works_not_the_same_in_all(followed: Followed) -> None:
    before, treated = acted(followed, entry(Treatment, 1, substance="thymol"))
    assert (treated["kill_bees"] >= before["kill_bees"]).all()
    assert treated["kill_bees"].std() > 0.0


def test_a_new_queen_is_as_old_as_her_year_and_a_marked_one_was_there(followed: Followed) -> None:
    _, new = acted(followed, entry(Queen, 1, event="introduced", queen_year=2024))
    assert (new["queen_age"] > 200.0).all()
    _, marked = acted(followed, entry(Queen, 1, event="marked"))
    assert (marked["queen"] == LAYING).all()


def test_a_mere_look_changes_nothing(followed: Followed) -> None:
    before, after = acted(followed, entry(Visit, 1, frames_of_bees=9))
    assert all((before[name] == after[name]).all() for name in before.dtype.names)

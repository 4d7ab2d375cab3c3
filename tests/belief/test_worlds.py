"""Each member lives in a world of its own; notes weigh worlds, and neighbours teach them."""

from datetime import timedelta

import numpy as np
import pytest
from tests.belief.samples import FIRST, day, enters, entry, nuc, replay

from combwright.belief.sharing.pooling import Pooled, moments_of, pool
from combwright.belief.worlds import NAMES, WORLDS, draw_worlds, renew_worlds, shares, taught_by
from combwright.simulation.biology import BIOLOGY
from combwright.terms.entries import Visit

MEMBERS = 200


def rng() -> np.random.Generator:
    return np.random.default_rng(5)


def test_worlds_are_shared_out_evenly_at_the_start() -> None:
    drawn = draw_worlds(10 * len(WORLDS), {}, rng())
    counts = np.bincount(drawn.astype(int), minlength=len(WORLDS))
    assert counts.max() - counts.min() <= 1
    assert WORLDS[0] == BIOLOGY
    assert len(set(WORLDS)) == len(WORLDS)


def test_what_neighbours_taught_counts() -> None:
    drawn = draw_worlds(1000, {NAMES[1]: 2.0}, rng())
    share = np.exp(2.0) / (np.exp(2.0) + len(WORLDS) - 1)
    assert (drawn == 1).mean() == pytest.approx(share, abs=0.01)


def test_worlds_that_several_colonies_lean_to_are_taught() -> None:
    leaning = dict.fromkeys(NAMES, 0.5 / (len(NAMES) - 1)) | {NAMES[1]: 0.5}
    told = taught_by([leaning] * 4)
    assert max(told, key=lambda name: told[name]) == NAMES[1]
    assert taught_by([dict.fromkeys(NAMES, 1.0 / len(NAMES))] * 4) == dict.fromkeys(NAMES, 0.0)


def test_members_keep_their_world_but_for_a_few() -> None:
    found = replay([*enters()], members=MEMBERS).follow("Sorrel", day(1))
    assert found is not None
    colonies = found.belief.colonies.copy()
    renew_worlds(colonies, rng())
    assert 0.9 < (colonies["world"] == found.belief.colonies["world"]).mean() < 1.0


def test_a_nuc_lives_in_the_worlds_of_its_parent() -> None:
    notes = [*enters(), nuc(7)]
    parent, young = (
        replay(notes, members=MEMBERS).follow(name, day(8)) for name in ("Sorrel", "Nuc")
    )
    assert parent is not None
    assert young is not None
    assert (parent.belief.colonies["world"] == young.belief.colonies["world"]).all()
    assert (young.belief.colonies["rearing"] > 0.0).all()


def test_notes_weigh_worlds_and_a_yard_takes_them_on() -> None:
    """Worlds whose members agree with the notes have more of them afterwards than before."""
    notes = [
        *enters(),
        *(entry(Visit, week, frames_of_bees=9.0, frames_of_brood=6.0) for week in (14, 28)),
    ]
    found = replay(notes, members=MEMBERS).follow("Sorrel", FIRST + timedelta(days=29))
    assert found is not None
    after = np.array(list(shares(found.belief.colonies).values()))
    assert after.sum() == pytest.approx(1.0)
    assert after.max() > 1.8 / len(WORLDS)
    taught = pool([moments_of(found.belief)] * 4)
    assert taught.middle[NAMES[int(after.argmax())]] > 0.0
    assert isinstance(taught, Pooled)

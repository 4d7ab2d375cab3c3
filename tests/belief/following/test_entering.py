"""How a colony enters: what its first visit tells, in frames, and no more."""

import numpy as np
import pytest
from tests.belief.samples import entry
from tests.simulation import samples

from combwright.belief.following.entering import SEEN, counted_as_other, described, see_through
from combwright.belief.weighing.counting import in_frames
from combwright.terms.entries import Visit


def test_nobody_looked_is_no_information() -> None:
    told = described([], 2024, 2.2)
    assert (told.frames_of_bees, told.stores_kg, told.has_queen) == (None, None, None)
    assert told.queen_year == 2024


def test_the_last_visit_of_the_day_counts_and_frames_of_stores_are_weighed() -> None:
    seen = [
        entry(Visit, 0, frames_of_bees=9),
        entry(Visit, 0, frames_of_bees=6, frames_of_stores=2, queen_seen=True),
    ]
    told = described(seen, None, 2.2)
    assert (told.frames_of_bees, told.has_queen) == (6, True)
    assert told.stores_kg == pytest.approx(4.4)
    assert counted_as_other(seen) == frozenset()


def test_seams_and_combs_are_turned_into_frames_and_known_less_well() -> None:
    other = [entry(Visit, 0, seams_of_bees=7, combs_with_brood=6)]
    told, in_frames = described(other, None, 2.2), described([entry(Visit, 0)], None, 2.2)
    assert counted_as_other(other) == {"seams_of_bees", "combs_with_brood"}
    assert told.frames_of_bees is not None
    assert told.frames_of_brood is not None
    assert 0.0 < told.frames_of_brood < 6.0
    assert told.brood_sd != in_frames.brood_sd


def test_what_an_eye_sees_too_few_of_is_more_and_the_rest_stays_as_it_is() -> None:
    colonies = samples.usual(members=4)
    before, eyes = colonies.copy(), np.log([0.5, 0.8, 1.0, 1.25])
    shared = {name: np.zeros(4) for eye, other, _ in SEEN.values() for name in (eye, other) if name}
    told = described([entry(Visit, 0, frames_of_bees=6, frames_of_brood=3)], None, 2.2)
    see_through(colonies, shared | {"bees_eye": eyes, "brood_eye": 2.0 * eyes}, told)
    for column in ("nest", "foragers", "winter"):
        assert colonies[column] == pytest.approx(before[column] / [0.5, 0.8, 1.0, 1.25])
    ages = before["sealed"] / np.array([[0.25], [0.64], [1.0], [1.5625]])
    assert colonies["sealed"] == pytest.approx(ages)
    assert (colonies["ripe"] == before["ripe"]).all()


def test_who_counts_seams_and_calls_them_frames_has_as_many_bees_as_fill_the_seams() -> None:
    colonies = samples.usual(members=4)
    before, likely = colonies.copy(), np.array([0.0, 1.0, 0.0, 1.0])
    shared = {name: np.zeros(4) for eye, other, _ in SEEN.values() for name in (eye, other) if name}
    told = described([entry(Visit, 0, frames_of_bees=6)], None, 2.2)
    see_through(colonies, shared | {"bees_otherwise": likely}, told)
    truly = in_frames("seams_of_bees", 6) / 6.0
    assert colonies["nest"] / before["nest"] == pytest.approx(np.where(likely > 0.0, truly, 1.0))

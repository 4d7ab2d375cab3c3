"""How a colony enters: what its first visit tells, in frames, and no more."""

import pytest
from tests.belief.samples import entry

from combwright.belief.following.entering import counted_as_other, described
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

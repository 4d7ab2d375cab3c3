from datetime import timedelta
from typing import Any

import numpy as np
import pytest
from tests.belief.samples import FIRST, KEY, day, enters, entry, replay

from combwright.belief.following.own_way import as_counted, counting_on, doubts
from combwright.belief.numbers import number
from combwright.terms.entries import HowCounted, Noted, Visit


def says(brood: str, bees: str = "frames covered", *, on: int = 0) -> HowCounted:
    return HowCounted.model_validate({"id": KEY, "on": day(on), "brood": brood, "bees": bees})


def seen(number: int, **fields: Any) -> Visit:  # noqa: ANN401  (of any field)
    made: Visit = entry(Visit, number, **fields)
    return made


def test_what_is_said_holds_from_its_day_on_and_the_first_before_it_too() -> None:
    combs, frames = says("combs with brood", on=10), says("frames filled", on=20)
    said: list[Noted] = [frames, combs]
    assert counting_on(said, FIRST) == combs
    assert counting_on(said, day(19)) == combs
    assert counting_on(said, day(20)) == frames
    assert counting_on([], FIRST) is None


def test_frames_are_read_as_the_keeper_counts_unless_both_are_given() -> None:
    notes: list[Noted] = [
        seen(1, frames_of_brood=5, frames_of_bees=6),
        seen(2, frames_of_brood=3, combs_with_brood=6),
        seen(3, combs_with_brood=6),
    ]
    read = as_counted([says("combs with brood", "seams"), *notes])
    told = [(v.frames_of_brood, v.combs_with_brood) for v in read if isinstance(v, Visit)]
    assert told == [(None, 5), (3, 6), (None, 6)]
    assert [v.seams_of_bees for v in read if isinstance(v, Visit)] == [6, None, None]
    assert as_counted(notes) == notes


def test_what_was_said_is_doubted_less() -> None:
    assert doubts([says("combs with brood")])["brood_otherwise"] == number("said_but_otherwise")
    assert doubts([])["brood_otherwise"] > number("said_but_otherwise")


@pytest.mark.parametrize("way", ["frames", "combs"])
def test_a_colony_comes_in_alike_whichever_way_it_was_counted(way: str) -> None:
    colony = enters()[0]
    brood = {"frames_of_brood": 3.0} if way == "frames" else {"combs_with_brood": 5.3}
    notes = [colony, seen(0, frames_of_bees=6, stores_kg=6, **brood)]
    followed = replay(notes, members=200).follow("Sorrel", FIRST + timedelta(days=1))
    assert followed is not None
    members = followed.belief.colonies
    as_said = followed.belief.shared["brood_otherwise"] == 0
    cells = sum(members[name].sum(axis=1) for name in ("eggs", "larvae", "sealed"))
    full = 0.82 * members["cells_per_frame"]
    assert np.median((cells / full)[as_said]) == pytest.approx(3.0, rel=0.12)

"""Keys change with all that led to a belief, and with nothing else."""

from collections.abc import Sequence
from datetime import date
from itertools import groupby

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from tests.belief.samples import Loose, day, enters, entry, nuc, season

from combwright.belief.following.keys import Keys
from combwright.belief.sharing.pooling import Pooled
from combwright.terms.entries import HoneySource, Move, Noted, Unite, Visit

LESSON = Pooled({"forage_success": 0.2})


def looks(*bees: float, colony: str = "Sorrel") -> list[Noted]:
    return [
        entry(Visit, 7 * at, colony, frames_of_bees=seen) for at, seen in enumerate(bees, start=1)
    ]


def chain(
    entries: Sequence[Loose],
    colony: str = "Sorrel",
    *,
    weather: Loose = season,
    pooled: dict[str, Pooled] | None = None,
    root: str = "seed 1",
) -> list[str]:
    """Keys of a colony's days, from the notes of all."""
    of: dict[str, list[Loose]] = {}
    for each in sorted(entries, key=lambda each: each.on):
        of.setdefault(each.colony, []).append(each)
        other = getattr(each, "new_colony", None) or getattr(each, "into", None)
        if other:
            of.setdefault(other, []).append(each)
    days = [(on, list(found)) for on, found in groupby(of[colony], lambda each: each.on)]
    return list(Keys(of, weather, pooled or {}, root).chain(colony, days))


BEES = st.lists(st.sampled_from([4.0, 5.5, 7.0]), min_size=1, max_size=6)


@given(BEES, st.sampled_from([4.0, 7.0]))
def test_a_new_note_leaves_all_earlier_keys(bees: list[float], new: float) -> None:
    before = chain([*enters(), *looks(*bees)])
    after = chain([*enters(), *looks(*bees, new)])
    assert after[:-1] == before
    assert after[-1] not in before


@given(BEES, st.data())
def test_a_changed_note_changes_its_own_key_and_all_later_ones(
    bees: list[float], data: st.DataObject
) -> None:
    at = data.draw(st.integers(0, len(bees) - 1))
    changed = [*bees[:at], bees[at] + 0.5, *bees[at + 1 :]]
    before, after = (chain([*enters(), *looks(*each)]) for each in (bees, changed))
    same = [one == other for one, other in zip(before, after, strict=True)]
    assert same == [True] * (at + 1) + [False] * (len(bees) - at)  # the first is of its beginning


def test_no_two_days_and_no_two_roots_share_a_key() -> None:
    notes = [*enters(), *looks(5, 5, 5)]
    one, other = chain(notes), chain(notes, root="seed 2")
    assert len({*one, *other}) == len(one) + len(other)


def test_weather_counts_from_the_day_on_which_it_differs() -> None:
    def other(yard: str, first: date, until: date) -> Loose:
        table = season(yard, first, until).copy()
        days = np.arange(first.toordinal(), until.toordinal())
        table[:, days == day(10).toordinal(), 1] += 1.0
        return table

    notes = [*enters(), *looks(5, 5, 5)]
    before, after = chain(notes), chain(notes, weather=other)
    assert before[:2] == after[:2]
    assert not set(before[2:]) & set(after[2:])


def test_lessons_of_the_own_yard_count_and_those_of_another_do_not() -> None:
    notes = [*enters(), *looks(5)]
    assert chain(notes) == chain(notes, pooled={"Away": LESSON})
    assert not set(chain(notes)) & set(chain(notes, pooled={"Home": LESSON}))


def test_a_nuc_hangs_on_its_parent_up_to_the_split_and_no_longer() -> None:
    made = nuc(14)
    notes = [*enters(), *looks(5), made, *looks(4, 4, 4, colony="Nuc")[2:]]
    before = chain(notes, "Nuc")
    later = chain([*notes, entry(Visit, 28, frames_of_bees=9)], "Nuc")
    earlier = chain([*notes, entry(Visit, 8, frames_of_bees=9)], "Nuc")
    assert before == later
    assert not set(before) & set(earlier)


def test_the_parent_does_not_hang_on_its_nuc() -> None:
    notes = [*enters(), nuc(14), *looks(5, 6, 7)[2:]]
    assert chain(notes) == chain([*notes, entry(Visit, 16, "Nuc", frames_of_bees=2)])


def test_a_colony_that_took_another_in_hangs_on_what_was_noted_of_that() -> None:
    notes = [*enters(), *enters("Thyme"), entry(Unite, 14, "Thyme", into="Sorrel"), *looks(5, 5, 5)]
    known = chain([*notes, entry(Visit, 5, "Thyme", frames_of_bees=3)])
    assert chain(notes)[:2] == known[:2]
    assert not set(chain(notes)[2:]) & set(known[2:])


def test_two_colonies_that_begin_from_each_other_have_keys_all_the_same() -> None:
    """A book may say so by mistake; it is refused elsewhere, but nothing hangs here."""
    notes = [nuc(3, "Nuc", "Sorrel"), nuc(3, "Sorrel", "Nuc")]
    assert len(chain(notes, "Nuc")) == 1


def test_the_key_before_a_day_is_that_of_the_last_day_noted() -> None:
    of = {"Sorrel": sorted([*enters(), *looks(5, 6)], key=lambda each: each.on)}
    keys = Keys(of, season, {}, "seed 1")
    days = [(on, list(found)) for on, found in groupby(of["Sorrel"], lambda each: each.on)]
    first, second, third = ((key, "Home") for key in keys.chain("Sorrel", days))
    assert keys.before("Sorrel", day(0)) == ("", "")
    assert [keys.before("Sorrel", day(at)) for at in (1, 7, 8, 15)] == [first, first, second, third]
    assert keys.before("Thyme", day(15)) == ("", "")


def test_a_colony_stands_where_it_was_taken_and_a_nuc_where_its_parent_stood() -> None:
    """A place that a paper about it leaves open is none."""
    made, paper = nuc(14), entry(HoneySource, 10, honey="spring")
    moved = entry(Move, 7, yard="Away")
    of = {"Sorrel": [*enters(), moved, paper, made], "Nuc": [made]}
    keys = Keys(of, season, {}, "seed 1")
    assert [keys.before("Sorrel", day(at))[1] for at in (7, 8, 15)] == ["Home", "Away", "Away"]
    assert keys.before("Nuc", day(15))[1] == "Away"

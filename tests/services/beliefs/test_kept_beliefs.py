"""Beliefs kept between runs: the same answer, only faster, whatever happens to the files."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np
import pytest
from tests.belief.samples import Loose, day, enters, entry, nuc, replay

from combwright.belief.following.followed import Followed
from combwright.belief.following.noted import notes_of_colonies
from combwright.belief.following.replay import Replay
from combwright.kit.catalogue import catalogue
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.kept_beliefs import EVERY, KeptBeliefs, folder_for, version
from combwright.services.beliefs.neighbours import Lessons
from combwright.terms.entries import Noted, TrayCount, Visit


def season_of(visits: int) -> list[Noted]:
    seen: list[Loose] = [
        entry(Visit, 4 * number, frames_of_bees=6.0, frames_of_brood=3.0, stores_kg=5.0)
        for number in range(1, visits)
    ]
    return [*enters(), entry(TrayCount, 4, mites=2, days=3), *seen]


def followed(
    notes: list[Noted], folder: Path, colony: str = "Sorrel", **more: Loose
) -> tuple[Followed, KeptBeliefs]:
    kept = KeptBeliefs(folder, catalogue())
    found = replay(notes, kept=kept, version=version(), **more).follow(colony, day(110))
    assert found is not None
    return found, kept


def same(one: Followed, other: Followed) -> bool:
    pairs = [(one.belief.colonies, other.belief.colonies), (one.belief.shared, other.belief.shared)]
    arrays = all(a.tobytes() == b.tobytes() for a, b in pairs)
    scores = [
        np.array_equal(a.ladder, b.ladder) for a, b in zip(one.scored, other.scored, strict=True)
    ]
    plain = (one.notes, one.notices, one.standing, one.yard, one.last_visit)
    others = (
        other.notes,
        other.notices,
        other.standing,
        other.yard,
        other.last_visit,
    )
    return arrays and all(scores) and plain == others and one.belief.chances == other.belief.chances


def test_nothing_is_done_again_for_an_unchanged_book(tmp_path: Path) -> None:
    notes = season_of(20)
    first, kept = followed(notes, tmp_path)
    assert kept.found == 0
    again, kept = followed(notes, tmp_path)
    assert (kept.found, kept.made) == (1, 0)
    plain = replay(notes).follow("Sorrel", day(110))
    assert plain is not None
    assert same(first, again)
    assert same(plain, again)


def test_a_new_note_costs_itself_only(tmp_path: Path) -> None:
    notes = season_of(20)
    followed(notes, tmp_path)
    more = [*notes, entry(Visit, 90, frames_of_bees=7.0)]
    found, kept = followed(more, tmp_path)
    assert kept.made == 1
    plain = replay(more).follow("Sorrel", day(110))
    assert plain is not None
    assert same(plain, found)


def test_a_changed_old_note_is_followed_from_there(tmp_path: Path) -> None:
    notes = season_of(20)
    followed(notes, tmp_path)
    place = EVERY + 4
    changed = [*notes]
    changed[place] = notes[place].model_copy(update={"frames_of_bees": 8.0})
    found, kept = followed(changed, tmp_path)
    assert 0 < kept.made < len(notes) - EVERY + 1
    plain = replay(changed).follow("Sorrel", day(110))
    assert plain is not None
    assert same(plain, found)


def test_a_nuc_is_followed_anew_when_its_parents_past_changes(tmp_path: Path) -> None:
    notes = [*season_of(8), nuc(30), entry(Visit, 40, "Nuc", frames_of_bees=3.0)]
    followed(notes, tmp_path, "Nuc")
    _, kept = followed(notes, tmp_path, "Nuc")
    assert kept.made == 0
    changed = [
        each.model_copy(update={"stores_kg": 9.0}) if each is notes[4] else each for each in notes
    ]
    found, kept = followed(changed, tmp_path, "Nuc")
    assert kept.made > 0
    plain = replay(changed).follow("Nuc", day(110))
    assert plain is not None
    assert same(plain, found)


@pytest.mark.parametrize("change", [{"seed": 2}, {"members": 30}])
def test_another_seed_or_size_is_another_belief(tmp_path: Path, change: dict[str, Loose]) -> None:
    followed(season_of(5), tmp_path)
    _, kept = followed(season_of(5), tmp_path, **change)
    assert kept.found == 0


@pytest.mark.parametrize("damage", [b"", b"{} not a file", b"\x00" * 500, None])
def test_damaged_files_cost_time_only(tmp_path: Path, damage: bytes | None) -> None:
    notes = season_of(5)
    first, _ = followed(notes, tmp_path)
    for path in tmp_path.rglob("*.belief"):
        path.write_bytes(path.read_bytes()[:-9] if damage is None else damage)
    again, kept = followed(notes, tmp_path)
    assert kept.found == 0
    assert same(first, again)


def test_not_a_sign_can_be_changed_unnoticed(tmp_path: Path) -> None:
    notes = season_of(5)
    first, _ = followed(notes, tmp_path)
    for path in tmp_path.rglob("*.belief"):
        assert path.stat().st_mode & 0o077 == 0
        path.write_bytes(path.read_bytes().replace(b'"has_ended": false', b'"has_ended": 0    '))
    again, kept = followed(notes, tmp_path)
    assert kept.found == 0
    assert same(first, again)


def test_no_room_to_keep_anything_is_no_failure(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    found, _ = followed(season_of(5), tmp_path / "file")
    assert found.belief.members == 20


def test_few_files_of_a_colony_are_kept(tmp_path: Path) -> None:
    for visits in range(3, 22):
        followed(season_of(visits), tmp_path)
    assert len(list(tmp_path.rglob("*.belief"))) <= 12
    assert not list(tmp_path.rglob("*.part"))


def test_a_colony_without_a_second_visit_is_kept_too(tmp_path: Path) -> None:
    followed(enters(), tmp_path)
    assert followed(enters(), tmp_path)[1].found == 1


def test_each_book_has_its_folder(tmp_path: Path) -> None:
    assert folder_for(Book(tmp_path / "a.book")) != folder_for(Book(tmp_path / "b.book"))


def test_neighbours_are_asked_once(tmp_path: Path) -> None:
    notes = [each for name in ("A", "B", "C", "D", "E") for each in enters(name)]
    notes += [entry(Visit, 7, name, frames_of_bees=7.0) for name in ("A", "B", "C", "D", "E")]
    on = day(20)
    folder = tmp_path / "lessons"
    asked: list[str] = []

    class Counted(Replay):
        def follow(self, colony: str, on: Loose) -> Followed | None:
            asked.append(colony)
            return super().follow(colony, on)

    from tests.belief.samples import season

    def lessons(notes: list[Noted]) -> Lessons:
        kept = KeptBeliefs(tmp_path, catalogue())
        alone = Counted(
            notes_of_colonies(notes), season, catalogue(), members=20, seed=1, kept=kept
        )
        return Lessons(alone, notes, on, folder)

    first = lessons(notes)["Home"]
    assert sorted(asked) == ["A", "B", "C", "D", "E"]
    assert lessons(notes)["Home"] == first
    assert len(asked) == 5
    more = [*notes, entry(Visit, 8, "C", frames_of_bees=7.5)]
    lessons(more)["Home"]
    assert asked[5:] == ["C"]
    later = [*more, entry(Visit, 15, "D", frames_of_bees=3.0)]
    assert lessons(later)["Home"] == lessons(more)["Home"]  # until the first of the month
    assert asked[6:] == []


def test_many_threads_may_read_at_once(tmp_path: Path) -> None:
    """Python 3.11's parser fails in threads, so that nothing here may go through it."""
    notes = season_of(4)
    followed(notes, tmp_path)
    with ThreadPoolExecutor(8) as workers:
        found = list(workers.map(lambda _: followed(notes, tmp_path)[1].found, range(200)))
    assert found == [1] * 200
